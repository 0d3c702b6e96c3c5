import { OWN_RULE, PRACTICE_RULE, valuesOf, type RuleTable } from './rule.ts';

const age = {
  evidence: 'C',
  mark: 'CP',
  sources: ['commonPractice', 'sportRules', 'plateClosure'],
} as const;

/** Every number of the screening before running. */
export const READINESS_RULES = {
  ageSmallMonths: {
    id: 'ageSmallMonths',
    name: 'Lowest age for running in harness',
    value: 12,
    unit: 'months',
    min: 9,
    max: 24,
    ...age,
    note: 'Sport rules ask for 12 to 18 months.',
  },
  ageLargeMonths: {
    id: 'ageLargeMonths',
    name: 'Lowest age for running in harness, larger dogs',
    value: 18,
    unit: 'months',
    min: 12,
    max: 30,
    ...age,
    note: 'The bones of larger dogs mature later.',
  },
  largeFromKg: {
    id: 'largeFromKg',
    name: 'A dog counts as larger from an adult weight of',
    value: 20,
    unit: 'kg',
    min: 10,
    max: 40,
    evidence: 'D',
    mark: 'D',
    sources: ['hart2020', 'ownDecision'],
    note: 'Size classes from the study; that the line is drawn here is our choice.',
  },
  giantFromKg: {
    id: 'giantFromKg',
    name: 'Waiting longer is advised from an adult weight of',
    value: 40,
    unit: 'kg',
    min: 30,
    max: 70,
    ...OWN_RULE,
    note: 'Advice, not a gate.',
  },
  ageGiantAdvisedMonths: {
    id: 'ageGiantAdvisedMonths',
    name: 'Advised age, very large dogs',
    value: 24,
    unit: 'months',
    min: 18,
    max: 36,
    ...OWN_RULE,
    note: 'Advice, not a gate.',
  },
  earlyNeuterBeforeMonths: {
    id: 'earlyNeuterBeforeMonths',
    name: 'Neutering counts as early before',
    value: 12,
    unit: 'months',
    min: 4,
    max: 24,
    ...OWN_RULE,
    note: 'Growth plates close later after early neutering.',
  },
  earlyNeuterExtraMonths: {
    id: 'earlyNeuterExtraMonths',
    name: 'Advised extra wait after early neutering',
    value: 6,
    unit: 'months',
    min: 0,
    max: 12,
    evidence: 'D',
    mark: 'D',
    sources: ['salmeri1991', 'ownDecision'],
    note: 'At most to the advised age of very large dogs.',
  },
  bcsWalkOnlyFrom: {
    id: 'bcsWalkOnlyFrom',
    name: 'Walking only from a body condition of',
    value: 8,
    unit: 'of 9',
    min: 7,
    max: 9,
    whole: true,
    ...PRACTICE_RULE,
    note: 'Running would load joints and heart too much.',
  },
  bcsVetUpTo: {
    id: 'bcsVetUpTo',
    name: 'Vet first up to a body condition of',
    value: 2,
    unit: 'of 9',
    min: 1,
    max: 3,
    whole: true,
    ...PRACTICE_RULE,
    note: 'The cause has to be found.',
  },
  seniorFromPercent: {
    id: 'seniorFromPercent',
    name: 'Senior from this share of the expected life span',
    value: 75,
    unit: '%',
    min: 60,
    max: 90,
    evidence: 'C',
    mark: 'S',
    sources: ['aahaLifeStages', 'mcmillan2024'],
    note: 'The last quarter. Median life spans: 12.7 years small, 11.9 large, 9.8 short-nosed (told of one breed); 10 from 40 kg on is our own. Set it lower where dogs age sooner.',
  },
  walkBaseMinutes: {
    id: 'walkBaseMinutes',
    name: 'Walk base: a brisk walk of',
    value: 30,
    unit: 'min',
    min: 15,
    max: 60,
    ...OWN_RULE,
    note: 'Twice in a week, sound, and clear the next day, before any running.',
  },
  afterInjuryMonths: {
    id: 'afterInjuryMonths',
    name: 'A dog counts as after an injury or surgery for',
    value: 12,
    unit: 'months',
    min: 6,
    max: 24,
    ...OWN_RULE,
    note: 'From its day; longer ago it is history. Without a day it counts as recent.',
  },
} as const satisfies RuleTable;

export type ReadinessRuleId = keyof typeof READINESS_RULES;
export type ReadinessRuleValues = Readonly<Record<ReadinessRuleId, number>>;

/** The published values, with `changes` put over them. */
export function readinessRuleValues(
  changes: Readonly<Record<string, number | undefined>> = {},
): ReadinessRuleValues {
  return valuesOf(READINESS_RULES, changes);
}
