import { describe, expect, it } from 'vitest';
import { dogYear, presentState, type PresentState } from '../../../core/index.ts';
import type { AssessedVisit } from '../../../core/assess/types.ts';
import type { Weighing } from '../../../core/weight/weighing.ts';
import { DAY, doneBefore, on, plan, sessions, told } from '../assess/dogOnPlan.ts';
import { grownDog, visit } from '../assess/visits.ts';

type Input = Parameters<typeof dogYear>[0];
type Given = Partial<Pick<Input, 'plans' | 'results'>> & {
  readonly visits?: readonly AssessedVisit[];
  readonly weighings?: readonly Weighing[];
  readonly state?: Partial<PresentState>;
};

function yearOn(day: string, { visits = [], weighings = [], state = {}, ...plans }: Given) {
  const record = {
    dog: grownDog,
    visits: visits.map((seen, index) => ({ ...seen, id: `visit-${index + 1}` })),
    weighings,
    foodDecisions: [],
    day,
  };
  const input: Input = { record, plans: [], results: [], ...plans };
  return dogYear(input, { ...presentState(input)!, ...state });
}

/** Visits `apart` days from one another, with one aim. */
const visits = (
  weights: readonly (number | null)[],
  { from = 0, apart = 14, foodGoal = 'lose' as AssessedVisit['foodGoal'] } = {},
) =>
  weights.map((kg, index) => visit(on(from + apart * index), kg, { foodGoal, targetWeightKg: 25 }));

describe('the loss of a dog in the practice’s year', () => {
  const loss = (given: Given) => yearOn(on(300), given).loss;

  // Of 30 kg in 28 days: 0.2, 0.9 and 3 kg.
  it.each([
    [[30, 29.9, 29.8], 0.167, 'slower'],
    [[30, 29.55, 29.1], 0.75, 'inside'],
    [[30, 28.5, 27], 2.5, 'faster'],
  ] as const)('%j kg a fortnight apart is %d %% a week: %s', (weights, rate, against) => {
    const found = loss({ visits: visits(weights) })!;
    expect(found).toMatchObject({ fromDay: DAY, toDay: on(28), against, flagged: false });
    expect(found.percentPerWeek).toBeCloseTo(rate, 3);
    expect(found.low).toBeLessThan(found.percentPerWeek);
    expect(found.high).toBeGreaterThan(found.percentPerWeek);
    expect(found.percentPerWeek - found.low).toBeCloseTo(found.high - found.percentPerWeek, 9);
  });

  it('is told from two weeks of weighings on, with the aim to lose alone', () => {
    expect(loss({ visits: visits([30, 29.5], { apart: 13 }) })).toBeNull();
    expect(loss({ visits: visits([30, 29.5], { apart: 14 }) })).not.toBeNull();
    expect(loss({ visits: visits([30]) })).toBeNull();
    expect(loss({ visits: visits([30, 29.5, 29], { foodGoal: 'hold' }) })).toBeNull();
  });

  it('ends at the weighing of the visit that changed the aim', () => {
    const kept = visits([29, 30.5], { from: 28, foodGoal: 'hold' });
    const found = loss({ visits: [...visits([30, 29.5]), ...kept] })!;
    expect(found.toDay).toBe(on(28));
    expect(found.percentPerWeek).toBeCloseTo(100 / 30 / 4, 2);
  });

  it('is the latest where the dog was to lose twice, from its first weighing then', () => {
    const all = [
      ...visits([34, 33]),
      ...visits([30], { from: 28, foodGoal: 'hold' }),
      ...visits([null, 31, 30.7, 30.4], { from: 42 }),
    ];
    const found = loss({ visits: all })!;
    expect(found.fromDay).toBe(on(56));
    expect(found.percentPerWeek).toBeCloseTo(60 / 31 / 4, 2);
    expect(yearOn(on(20), { visits: all }).loss).toMatchObject({ fromDay: DAY, toDay: on(14) });
    expect(yearOn(on(14), { visits: all }).loss).toMatchObject({ fromDay: DAY, toDay: on(14) });
    expect(yearOn(on(13), { visits: all }).loss).toBeNull();
  });

  it('counts weighings between the visits, and says where one stands out', () => {
    const even = [2, 5, 9, 11].map((day) => ({ day: on(day), weightKg: 30 - day / 50 }));
    const found = (weighings: readonly Weighing[]) =>
      loss({ visits: visits([30, 29.72, 29.44]), weighings })!;
    expect(found(even)).toMatchObject({ fromDay: DAY, toDay: on(28), flagged: false });
    expect(found([...even, { day: on(20), weightKg: 13 }]).flagged).toBe(true);
    expect(found([...even, { day: on(-7), weightKg: 33 }]).fromDay).toBe(DAY);
    const other = { day: on(21), weightKg: 29.6, method: 'other scale' } as const;
    expect(found([...even, other]).flagged).toBe(false);
  });
});

describe('a dog lost from sight', () => {
  const due = (days: number): Partial<PresentState> => ({
    due: [{ what: 'weigh', day: on(days) }],
  });
  const heavy = { visits: visits([30, 29.5]) };
  const lost = (given: Given) => yearOn(on(200), { ...heavy, ...given }).lostSince;

  it('is one whose weighing is overdue by more than 90 days, since it was last heard of', () => {
    expect(lost({ state: due(110) })).toBeNull();
    expect(lost({ state: due(109) })).toBe(on(14));
    expect(lost({ state: due(109), weighings: [{ day: on(30), weightKg: 29 }] })).toBe(on(30));
    expect(lost({ state: { due: [{ what: 'outing', day: on(20) }] } })).toBeNull();
  });

  it('is none whose aim was met, or that had none', () => {
    const stands = (aim: PresentState['aim'], against: 'above' | 'below' | 'at target') =>
      lost({ state: { ...due(20), aim, weight: { kg: 29, day: DAY, against, gapKg: 2 } } });
    expect(stands('lose', 'above')).toBe(on(14));
    expect(stands('lose', 'below')).toBeNull();
    expect(stands('lose', 'at target')).toBeNull();
    expect(stands('gain', 'below')).toBe(on(14));
    expect(stands('gain', 'above')).toBeNull();
    expect(stands('hold', 'above')).toBeNull();
    expect(stands('hold', 'below')).toBeNull();
  });

  it('is one whose running was not at its end, and none that reached its goal or was stopped', () => {
    const atWeight = { visits: visits([27], { foodGoal: 'hold' }) };
    const runs = (given: Given) =>
      lost({ ...atWeight, plans: [plan()], ...given, state: { ...due(20), ...given.state } });
    expect(runs({ results: [told(sessions[0]!.day)] })).toBe(sessions[0]!.day);
    expect(runs({ results: doneBefore(on(300)) })).toBeNull();
    const stopped = { kind: 'stopped', since: on(9), plan: plan(), reasons: [] } as const;
    expect(runs({ state: { programme: stopped } })).toBeNull();
    expect(lost({ ...atWeight, state: due(20) })).toBeNull();
    const early = (programme: PresentState['programme']) =>
      yearOn(on(8), { ...atWeight, plans: [plan()], state: { ...due(-90), programme } }).lostSince;
    expect(early({ kind: 'waiting', for: 'vet', plan: plan(), reasons: [] })).toBe(DAY);
    expect(early({ kind: 'running', plan: plan(), week: null, lastWeek: 9, next: null })).toBe(DAY);
    expect(early(stopped)).toBeNull();
  });

  it('was heard of by what is told of its outings, up to the day looked at', () => {
    const atWeight = { visits: visits([27], { foodGoal: 'hold' }), plans: [plan()] };
    const results = [told(sessions[1]!.day), told(sessions[0]!.day), told(on(250))];
    expect(lost({ ...atWeight, results, state: due(20) })).toBe(sessions[1]!.day);
  });
});
