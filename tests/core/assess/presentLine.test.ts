import { describe, expect, it } from 'vitest';
import { presentLine, type LineInput } from '../../../core/index.ts';

type Visit = LineInput['visits'][number];

const seen = (day: string, facts: Partial<Visit> = {}): Visit => ({
  day,
  weightKg: 24,
  foodGoal: 'hold',
  bcs: 5,
  targetWeightKg: null,
  weighingMethod: 'same scale',
  scaleStepKg: 0.1,
  consent: { given: true, expiryDay: null },
  ...facts,
});

const line = (visits: Visit[], rest: Partial<LineInput> = {}) =>
  presentLine({
    dog: { birthDay: '2020-05-01', adultWeightKg: null },
    visits,
    foodDecisions: [],
    day: '2026-03-31',
    ...rest,
  });

describe('what lists show of a dog', () => {
  it('knows nothing of a dog that was never seen, and the weight of one only weighed', () => {
    expect(line([])).toMatchObject({ weight: null, aim: null, weighDay: null, bcs: null });
    const weighings = [{ day: '2026-03-10', weightKg: 20 }];
    expect(line([], { weighings })).toMatchObject({
      weight: { kg: 20, day: '2026-03-10', against: 'no target' },
      weighDay: '2026-04-07',
    });
  });

  it('is answered at home where the weight is held, at a visit alone where it is to fall', () => {
    const proposal = { nextWeighInDay: '2026-03-15' };
    const rest = {
      foodDecisions: [{ decidedOn: '2026-03-01', kcalPerDay: 900, proposal }],
      weighings: [
        { day: '2026-03-15', weightKg: 23.9 },
        { day: '2026-03-22', weightKg: 23.8 },
      ],
    };
    const due = (foodGoal: Visit['foodGoal'], more: Visit[] = []) =>
      line([seen('2026-03-01', { foodGoal, targetWeightKg: 20 }), ...more], rest).weighDay;
    expect(due('hold')).toBe('2026-04-19');
    expect(due('lose')).toBe('2026-03-15');
    const again = seen('2026-03-20', { foodGoal: 'lose', targetWeightKg: 20 });
    expect(due('lose', [again])).toBe('2026-04-17');
  });

  it('keeps the score of the last visit that has one', () => {
    expect(line([seen('2026-03-01', { bcs: 7 }), seen('2026-03-20', { bcs: null })]).bcs).toBe(7);
  });

  // Under 1 % over more than 14 days is stable (German et al. 2011; S).
  it.each([
    ['2026-03-15', 24.25, false],
    ['2026-03-16', 24.25, true],
    ['2026-03-16', 24.23, false],
  ])('weighed again on %s at %s kg: gaining is %s', (day, weightKg, gaining) => {
    expect(line([seen('2026-03-01'), seen(day, { weightKg })]).gaining).toBe(gaining);
    const meant = seen(day, { weightKg, foodGoal: 'gain' });
    expect(line([seen('2026-03-01'), meant]).gaining).toBe(false);
  });

  it('does not call the growth of a young dog a gain, nor a drift, but tells its loss', () => {
    const days = ['2026-02-01', '2026-02-22', '2026-03-08', '2026-03-29'];
    const of = (birthDay: string, kg: readonly number[]) => {
      const seenThen = days.map((day, index) => seen(day, { weightKg: kg[index]! }));
      const dog = { birthDay, adultWeightKg: 26 };
      const { gaining, offCourse } = line(seenThen, { dog });
      return [gaining, offCourse?.code ?? null];
    };
    const [up, down] = [
      [14, 15.2, 16.1, 17.2],
      [14, 13.2, 12.6, 11.7],
    ] as const;
    expect(of('2020-05-01', up)).toEqual([true, 'drift-up']);
    expect(of('2025-07-01', up)).toEqual([false, null]);
    expect(of('2025-07-01', down)).toEqual([false, 'drift-vet']);
  });

  it('takes the consent of the latest visit, up to and with its last day', () => {
    const until = (expiryDay: string | null, given = true) =>
      line([seen('2026-03-01'), seen('2026-03-02', { consent: { given, expiryDay } })]).consent;
    expect(until('2026-03-31')).toEqual({ inForce: true, endsOn: '2026-03-31' });
    expect(until('2026-03-30')).toEqual({ inForce: false, endsOn: '2026-03-30' });
    expect(until(null)).toEqual({ inForce: true, endsOn: null });
    expect(until(null, false)).toEqual({ inForce: false, endsOn: null });
  });

  it('counts no visit of a later day', () => {
    const later = seen('2026-04-01', { weightKg: 30, bcs: 9 });
    expect(line([seen('2026-03-01'), later])).toEqual(line([seen('2026-03-01')]));
  });

  it('says how far the weight is from a target that was set', () => {
    const set = (weightKg: number) =>
      line([seen('2026-03-01', { weightKg, targetWeightKg: 25, foodGoal: 'lose' })]).weight;
    expect(set(27)).toMatchObject({ against: 'above', gapKg: 2 });
    expect(set(25.5)).toMatchObject({ against: 'at target' });
    expect(set(24)).toMatchObject({ against: 'below', gapKg: 1 });
  });
});
