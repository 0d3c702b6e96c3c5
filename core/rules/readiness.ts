import { from, OWN, PRACTICE } from '../origin.ts';
import { valuesOf, ruleTable } from './rule.ts';

const age = from('C', 'CP', 'commonPractice', 'sportRules', 'plateClosure');

/** Every number of the screening before running. */
export const READINESS_RULES = ruleTable({
  ageSmallMonths: {
    name: 'Lowest age for running in harness',
    value: 12,
    unit: 'months',
    range: [9, 24],
    ...age,
    note: 'Sport rules ask for 12 to 18 months.',
  },
  ageLargeMonths: {
    name: 'Lowest age for running in harness, larger dogs',
    value: 18,
    unit: 'months',
    range: [12, 30],
    ...age,
    note: 'The bones of larger dogs mature later.',
  },
  largeFromKg: {
    name: 'A dog counts as larger from an adult weight of',
    value: 20,
    unit: 'kg',
    range: [10, 40],
    ...from('D', 'D', 'hart2020', 'ownDecision'),
    note: 'Size classes from the study; that the line is drawn here is our choice.',
  },
  giantFromKg: {
    name: 'Waiting longer is advised from an adult weight of',
    value: 40,
    unit: 'kg',
    range: [30, 70],
    ...OWN,
    note: 'Advice, not a gate.',
  },
  ageGiantAdvisedMonths: {
    name: 'Advised age, very large dogs',
    value: 24,
    unit: 'months',
    range: [18, 36],
    ...OWN,
    note: 'Advice, not a gate.',
  },
  earlyNeuterBeforeMonths: {
    name: 'Neutering counts as early before',
    value: 12,
    unit: 'months',
    range: [4, 24],
    ...OWN,
    note: 'Growth plates close later after early neutering.',
  },
  earlyNeuterExtraMonths: {
    name: 'Advised extra wait after early neutering',
    value: 6,
    unit: 'months',
    range: [0, 12],
    ...from('D', 'D', 'salmeri1991', 'ownDecision'),
    note: 'At most to the advised age of very large dogs.',
  },
  bcsWalkOnlyFrom: {
    name: 'Walking only from a body condition of',
    value: 8,
    unit: 'of 9',
    range: [7, 9],
    whole: true,
    ...PRACTICE,
    note: 'Running would load joints and heart too much.',
  },
  bcsVetUpTo: {
    name: 'Vet first up to a body condition of',
    value: 2,
    unit: 'of 9',
    range: [1, 3],
    whole: true,
    ...PRACTICE,
    note: 'The cause has to be found.',
  },
  seniorFromPercent: {
    name: 'Senior from this share of the expected life span',
    value: 75,
    unit: '%',
    range: [60, 90],
    ...from('C', 'S', 'aahaLifeStages', 'mcmillan2024'),
    note: 'The last quarter. Median life spans: 12.7 years small, 11.9 large, 9.8 short-nosed (told of one breed); 10 from {40 kg} on is our own. Set it lower where dogs age sooner.',
  },
  walkBaseMinutes: {
    name: 'Walk base: a brisk walk of',
    value: 30,
    unit: 'min',
    range: [15, 60],
    ...OWN,
    note: 'Twice in a week, sound, and clear the next day, before any running.',
  },
  goalShortMinutes: {
    name: 'Longest goal of a short-nosed or heavy dog',
    value: 30,
    unit: 'min',
    range: [10, 60],
    ...OWN,
    note: 'Without a break. A plan beyond it needs a written reason.',
  },
  goalHeavyFromBcs: {
    name: 'The short goal holds from a body condition of',
    value: 6,
    unit: 'of 9',
    range: [6, 8],
    whole: true,
    ...OWN,
    note: 'At 5 and lower only a short nose limits the goal.',
  },
  goalLongMinutes: {
    name: 'Longest goal without the vet’s written yes',
    value: 90,
    unit: 'min',
    range: [60, 120],
    ...OWN,
    note: 'Without a break. No written reason stands in for the vet.',
  },
  afterInjuryMonths: {
    name: 'A dog counts as after an injury or surgery for',
    value: 12,
    unit: 'months',
    range: [6, 24],
    ...OWN,
    note: 'From its day; longer ago it is history. Without a day it counts as recent.',
  },
});

export type ReadinessRuleId = keyof typeof READINESS_RULES;
export type ReadinessRuleValues = Readonly<Record<ReadinessRuleId, number>>;

/** The published values, with `changes` put over them. */
export function readinessRuleValues(
  changes: Readonly<Record<string, number | undefined>> = {},
): ReadinessRuleValues {
  return valuesOf(READINESS_RULES, changes);
}
