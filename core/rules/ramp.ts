import { ArgumentError, inRange } from '../check.ts';
import type { Provenance } from '../figure.ts';

/** A number the practice may change inside its range; everything else about it is fixed. */
export interface Rule extends Provenance {
  readonly id: string;
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly note: string;
}

const own = { evidence: 'D', mark: 'D', sources: ['ownDecision'] } as const;

/** Every number of the ramp, with where it comes from. */
export const RAMP_RULES = {
  capConditioned: {
    id: 'capConditioned',
    name: 'Weekly rise, conditioned dog',
    value: 20,
    unit: '%',
    min: 5,
    max: 30,
    evidence: 'B',
    mark: 'S',
    sources: ['buist2008', 'nielsen2014'],
    note: 'Weak: in a randomised trial of novice runners a 10 % rule did no better than a faster standard programme.',
  },
  capUnconditioned: {
    id: 'capUnconditioned',
    name: 'Weekly rise, unconditioned dog',
    value: 15,
    unit: '%',
    min: 5,
    max: 30,
    evidence: 'B',
    mark: 'S',
    sources: ['buist2008', 'nielsen2014'],
    note: 'Weak: carried over from novice runners, kept lower than for a conditioned dog by our choice.',
  },
  capPostInjury: {
    id: 'capPostInjury',
    name: 'Weekly rise after injury',
    value: 10,
    unit: '%',
    min: 5,
    max: 30,
    evidence: 'B',
    mark: 'S',
    sources: ['buist2008', 'nielsen2014'],
    note: 'Weak: carried over from novice runners, the lowest of the three by our choice.',
  },
  smallStepMinutes: {
    id: 'smallStepMinutes',
    name: 'Smallest step while a week is short',
    value: 2,
    unit: 'min a week',
    min: 0,
    max: 4,
    ...own,
    note: 'Allowed while the highest week so far has under 20 run-minutes, even where it exceeds the cap.',
  },
  shortWeekMinutes: {
    id: 'shortWeekMinutes',
    name: 'A week counts as short below',
    value: 20,
    unit: 'min a week',
    min: 10,
    max: 40,
    ...own,
    note: 'Below this a percentage is smaller than one bout.',
  },
  recoveryEvery: {
    id: 'recoveryEvery',
    name: 'A recovery week every',
    value: 4,
    unit: 'weeks',
    min: 3,
    max: 6,
    ...own,
    note: 'Afterwards the plan goes on from the earlier peak.',
  },
  recoveryPercent: {
    id: 'recoveryPercent',
    name: 'Run-minutes of a recovery week',
    value: 70,
    unit: '% of the week before',
    min: 40,
    max: 90,
    ...own,
    note: 'No trial in dogs compares recovery weeks.',
  },
  easyBeforeEventPercent: {
    id: 'easyBeforeEventPercent',
    name: 'Run-minutes of the last week before an event',
    value: 70,
    unit: '% of the week before',
    min: 30,
    max: 90,
    ...own,
    note: 'The same as a recovery week.',
  },
  warmUpMinutes: {
    id: 'warmUpMinutes',
    name: 'Warm-up walk',
    value: 10,
    unit: 'min',
    min: 5,
    max: 20,
    evidence: 'D',
    mark: 'CP',
    sources: ['commonPractice'],
    note: '5–10 min walk, then moving stretches; not run-minutes.',
  },
  coolDownMinutes: {
    id: 'coolDownMinutes',
    name: 'Cool-down walk',
    value: 10,
    unit: 'min',
    min: 5,
    max: 20,
    evidence: 'D',
    mark: 'CP',
    sources: ['commonPractice'],
    note: '5–10 min walk after; never straight into a warm car.',
  },
} as const satisfies Record<string, Rule>;

export type RampRuleId = keyof typeof RAMP_RULES;
/** The values in force, by rule; a plan keeps the ones it was made with. */
export type RampRuleValues = Readonly<Record<RampRuleId, number>>;

/**
 * The published values, with `changes` put over them.
 * @throws RangeError when a change lies outside the rule's range.
 */
export function rampRuleValues(changes: Partial<Record<RampRuleId, number>> = {}): RampRuleValues {
  for (const [id, value] of Object.entries(changes)) {
    if (!Object.hasOwn(RAMP_RULES, id)) {
      throw new ArgumentError(id, '', undefined, `${id} is not a rule of the ramp`);
    }
    const rule: Rule = RAMP_RULES[id as RampRuleId];
    inRange(id, value, rule.unit, rule);
  }
  const values = Object.fromEntries(
    Object.values(RAMP_RULES).map((rule) => [rule.id, changes[rule.id] ?? rule.value]),
  );
  return values as RampRuleValues;
}
