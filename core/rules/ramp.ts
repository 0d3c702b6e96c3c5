import { from, OWN, PRACTICE } from '../origin.ts';
import { RAMP_LIFE_RULES } from './rampLife.ts';
import { valuesOf, ruleTable } from './rule.ts';

/** The weekly rise is the weaker rule: the cohort that bounds the session found no relation to it. */
const weekly = from('D', 'D', 'frandsen2025', 'buist2008', 'nielsen2014', 'ownDecision');

const BUILD_RULES = ruleTable({
  sessionRisePercent: {
    name: 'Longest session over the longest of the last 30 days, at most',
    value: 10,
    unit: '%',
    range: [5, 30],
    ...from('B', 'S', 'frandsen2025'),
    note: 'From runners: an overuse injury was likelier after a session more than 10 % longer than the longest of the last 30 days. No such study in dogs.',
  },
  sessionStepMinutes: {
    name: 'Longest session, step always allowed',
    value: 2,
    unit: 'run-minutes',
    range: [1, 4],
    ...OWN,
    note: 'A tenth of a short session is less than one bout.',
  },
  sessionWindowDays: {
    name: 'A session counts as recent for',
    value: 30,
    unit: 'days',
    range: [14, 60],
    whole: true,
    ...from('B', 'S', 'frandsen2025'),
    note: 'The window of the same study.',
  },
  capConditioned: {
    name: 'Weekly rise, conditioned dog',
    value: 20,
    unit: '%',
    range: [5, 30],
    ...weekly,
    note: 'Weak: in a randomised trial of novice runners a 10 % rule did no better than a faster standard programme.',
  },
  capUnconditioned: {
    name: 'Weekly rise, unconditioned dog',
    value: 20,
    unit: '%',
    range: [5, 30],
    ...weekly,
    note: 'Weak: the session is capped first. Such a dog starts lower, it does not rise more slowly.',
  },
  capPostInjury: {
    name: 'Weekly rise after injury',
    value: 15,
    unit: '%',
    range: [5, 30],
    ...weekly,
    note: 'Weak: the session is capped first. The lowest of the three by our choice.',
  },
  smallStepMinutes: {
    name: 'Smallest step while a week is short',
    value: 2,
    unit: 'min a week',
    range: [0, 4],
    ...OWN,
    note: 'Allowed while the highest week so far is short, even where it exceeds the cap; it never lifts a week out of the short range by itself.',
  },
  shortWeekMinutes: {
    name: 'A week counts as short below',
    value: 20,
    unit: 'min a week',
    range: [10, 40],
    ...OWN,
    note: 'Below this a percentage is smaller than one bout.',
  },
  twoWeekRisePercent: {
    name: 'Note a hand edit that rises in two weeks by more than',
    value: 30,
    unit: '%',
    range: [10, 100],
    ...from('B', 'S', 'nielsen2014'),
    note: 'A note, not a gate: faster rises did worse in a cohort of novice runners, with a wide interval, read second hand.',
  },
  recoveryEvery: {
    name: 'An easy week every',
    value: 4,
    unit: 'weeks',
    range: [3, 6],
    whole: true,
    ...OWN,
    note: 'Afterwards the plan goes on from the earlier peak.',
  },
  recoveryPercent: {
    name: 'Run-minutes of an easy week',
    value: 70,
    unit: '% of the highest week',
    range: [40, 90],
    ...OWN,
    note: 'Never under the start. No trial in dogs compares easy weeks.',
  },
  recoverySkipPercent: {
    name: 'A week counts as light, and an easy week after it falls out, at',
    value: 75,
    unit: '% of the highest week',
    range: [50, 90],
    ...OWN,
    note: 'An easy week comes after three weeks of full load; a light week, as after a break, begins the count anew.',
  },
  easyBeforeEventPercent: {
    name: 'Run-minutes of the last week before an event',
    value: 70,
    unit: '% of the week before',
    range: [30, 90],
    ...OWN,
    note: 'The same as an easy week.',
  },
  boutsConditioned: {
    name: 'Bouts of a first session, conditioned dog',
    value: 6,
    unit: 'bouts of 1 min',
    range: [2, 8],
    whole: true,
    ...OWN,
    note: 'With three sessions a week: 18 run-minutes.',
  },
  boutsUnconditioned: {
    name: 'Bouts of a first session, unconditioned dog',
    value: 4,
    unit: 'bouts of 1 min',
    range: [2, 6],
    whole: true,
    ...from('B', 'D', 'nielsen2014', 'ownDecision'),
    note: 'That heavy or unfit beginners start lower is from a study of novice runners; the number is our choice. 12 run-minutes a week.',
  },
  boutsPostInjury: {
    name: 'Bouts of a first session after injury',
    value: 4,
    unit: 'bouts of half a minute',
    range: [2, 6],
    whole: true,
    ...OWN,
    note: 'With three sessions a week: 6 run-minutes, on soft flat ground.',
  },
  sessionsPerStep: {
    name: 'Clean sessions on a step of the bout path',
    value: 2,
    unit: 'sessions',
    range: [2, 8],
    whole: true,
    ...from('B', 'S', 'trials2023'),
    note: 'The form of the path is that of a military trial table; the number is our choice. A step changes at the start of a week.',
  },
  boutsPerSession: {
    name: 'Go to a longer bout once the week holds',
    value: 2,
    unit: 'bouts a session',
    range: [1, 4],
    ...OWN,
    note: 'Keeps a low week from being one long bout.',
  },
  mostBouts: {
    name: 'Bouts of a session, at most',
    value: 10,
    unit: 'bouts',
    range: [6, 20],
    whole: true,
    ...OWN,
    note: 'Beyond this the outing gets long for dog and owner; longer bouts come instead.',
  },
  leastSharePercent: {
    name: 'Shortest session of bouts, at least',
    value: 60,
    unit: '% of the longest of its week',
    range: [30, 100],
    ...OWN,
    note: 'Keeps the sessions of a week alike.',
  },
  leastContinuousMinutes: {
    name: 'A run without a break, at least',
    value: 5,
    unit: 'min',
    range: [4, 15],
    whole: true,
    ...OWN,
    note: 'Shorter ones are bouts.',
  },
  equalUntilMinutes: {
    name: 'Runs of a week without a break are alike up to',
    value: 20,
    unit: 'min',
    range: [10, 40],
    whole: true,
    ...from('C', 'D', 'zinkVanDyke', 'ownDecision'),
    note: 'Three trots of 20 min a week are a published start of endurance work; that longer runs then alternate with easier ones is our choice.',
  },
  mediumPercent: {
    name: 'The other runs of a week with a longer one',
    value: 75,
    unit: '% of the longest',
    range: [50, 90],
    ...OWN,
    note: 'A 30 min run stands beside two of 22 min.',
  },
  stageWeeks: {
    name: 'Weeks of a later stage (pull, hills, speed)',
    value: 3,
    unit: 'weeks',
    range: [1, 12],
    whole: true,
    ...OWN,
    note: 'One change at a time: the minutes stay where they are while the new thing comes in.',
  },
  warmUpMinutes: {
    name: 'Warm-up walk',
    value: 10,
    unit: 'min',
    range: [5, 20],
    ...PRACTICE,
    note: '5–10 min walk, then moving stretches; not run-minutes.',
  },
  coolDownMinutes: {
    name: 'Cool-down walk',
    value: 10,
    unit: 'min',
    range: [5, 20],
    ...PRACTICE,
    note: '5–10 min walk after; never straight into a warm car.',
  },
});

/** Every number of the ramp, with where it comes from. */
export const RAMP_RULES = { ...BUILD_RULES, ...RAMP_LIFE_RULES } as const;

export type RampRuleId = keyof typeof RAMP_RULES;
/** The values in force, by rule; a plan keeps the ones it was made with. */
export type RampRuleValues = Readonly<Record<RampRuleId, number>>;

/**
 * The published values, with `changes` put over them.
 * @throws RangeError when a change lies outside the rule's range.
 * @example rampRuleValues({ capConditioned: 10 }).capConditioned // => 10
 */
export function rampRuleValues(
  changes: Readonly<Record<string, number | undefined>> = {},
): RampRuleValues {
  return valuesOf(RAMP_RULES, changes);
}
