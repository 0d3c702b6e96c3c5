import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/assess/assess.ts';
import type { AssessedVisit } from '../../../core/assess/types.ts';
import { addDays } from '../../../core/day.ts';
import { grownDog, visit } from './visits.ts';

const START = '2026-01-05';
const after = (weeks: number) => addDays(START, 7 * weeks);
const of = (visits: readonly AssessedVisit[], day = visits.at(-1)!.day) =>
  assess({ dog: grownDog, visits, foodDecisions: [], day })!;

describe('the target in force', () => {
  const lose = { foodGoal: 'lose', kcal: 900 } as const;

  it('is frozen when the aim begins: a later score only proposes another', () => {
    const visits = [
      visit(START, 40, { ...lose, bcs: 8 }),
      visit(after(6), 38, { ...lose, bcs: null }),
      visit(after(12), 36, { ...lose, bcs: 6 }),
    ];
    // 40 kg at 8 of 9 is 30.77 kg (AAHA toolkit, S, our arithmetic).
    for (const count of [1, 2, 3]) {
      expect(of(visits.slice(0, count)).targetWeightKg).toBeCloseTo(30.77, 2);
    }
    const { target } = of(visits);
    expect(target).toMatchObject({ basis: 'score', sinceDay: START });
    expect(target.proposed).toMatchObject({ bcs: 6, day: after(12) });
    expect(target.proposed!.kg).toBeCloseTo(36 / 1.1, 6);
  });

  it('is the one the practitioner set, and set anew from the day it was', () => {
    const visits = [
      visit(START, 40, { ...lose, bcs: 8 }),
      visit(after(2), 39.5, { ...lose, bcs: null, targetWeightKg: 32 }),
      visit(after(4), 39, { ...lose, bcs: null, targetWeightKg: 32 }),
    ];
    expect(of(visits).target).toMatchObject({ kg: 32, basis: 'chosen', sinceDay: after(2) });
  });

  it('begins anew with another aim, and holding keeps the target the plan ended at', () => {
    const visits = [
      visit(START, 28, { ...lose, bcs: 7 }),
      visit(after(20), 23.5, { foodGoal: 'hold', bcs: 5 }),
    ];
    expect(of(visits).targetWeightKg).toBeCloseTo(28 / 1.2, 6);
    const far = [visits[0]!, visit(after(4), 27.5, { foodGoal: 'hold', bcs: null })];
    expect(of(far)).toMatchObject({ targetWeightKg: 27.5, target: { basis: 'weight' } });
  });

  it('says when the score behind it is older than 60 days, or the weight 5 % away (D)', () => {
    const visits = [visit(START, 40, { ...lose, bcs: 8 })];
    expect(of(visits, addDays(START, 60)).target.stale).toBeNull();
    expect(of(visits, addDays(START, 61)).target.stale!.code).toBe('score-old');
    const lighter = [...visits, visit(after(6), 38, { ...lose, bcs: null })];
    expect(of(lighter).target.stale).toMatchObject({
      code: 'score-weight-apart',
      params: { percent: 5 },
    });
  });

  it('counts a thin dog from 4, since 4 and 5 are both ideal: 9 kg at 3 of 9 is 10 kg (M)', () => {
    const thin = visit(START, 9, { foodGoal: 'gain', bcs: 3, kcal: 500 });
    expect(of([thin]).targetWeightKg).toBeCloseTo(10, 9);
  });
  it('is judged by the newest score alone from 5 % on, and by none taken before it was set', () => {
    const later = (bcs: number, weightKg: number) =>
      of([visit(START, 40, { ...lose, bcs: 8 }), visit(after(6), weightKg, { ...lose, bcs })])
        .target.proposed;
    // 40 kg at 8 of 9 is 30.77 kg: 34 kg at 6 comes to 30.9 kg, 36 kg to 32.7 kg (S).
    expect(later(6, 34)).toBeNull();
    expect(later(6, 36)).not.toBeNull();
    expect(
      of([visit(START, 40, { ...lose, bcs: 8, targetWeightKg: 25 })]).target.proposed,
    ).toBeNull();
    const set = [
      visit(START, 40, { ...lose, bcs: 8 }),
      visit(after(2), 39.5, { ...lose, bcs: null, targetWeightKg: 25 }),
    ];
    expect(of(set).target.proposed).toBeNull();
  });

  it('that is only held is judged by no score; one that was set to be held is', () => {
    const held = (targetWeightKg: number | null) =>
      of([
        visit(START, 27, { targetWeightKg, bcs: null }),
        visit(after(4), 27, { targetWeightKg, bcs: 7 }),
      ]).target.proposed;
    expect(held(null)).toBeNull();
    expect(held(27)).toMatchObject({ bcs: 7, day: after(4) });
  });

  it('rests on a score given before the aim began where none was given with it', () => {
    const before = visit(START, 40, { bcs: 8 });
    const begun = visit(after(4), 41, { ...lose, bcs: null });
    const { target } = of([before, begun]);
    // The score belongs to the weight it was given at: 40 kg at 8 of 9.
    expect(target).toMatchObject({ basis: 'score', sinceDay: after(4) });
    expect(target.kg).toBeCloseTo(30.77, 2);
    // A score given with it counts instead, and a later one where no earlier is known.
    const scored = of([before, { ...begun, bcs: 7 }]).target;
    expect(scored.kg).toBeCloseTo(41 / 1.2, 6);
    const late = of([{ ...before, bcs: null }, begun, visit(after(6), 40.5, { ...lose, bcs: 8 })]);
    expect(late.target).toMatchObject({ basis: 'score', sinceDay: after(6) });
    expect(late.target.kg).toBeCloseTo(40.5 / 1.3, 6);
    const unknown = of([{ ...before, bcs: null }, begun]).target;
    expect(unknown).toMatchObject({ kg: 41, basis: 'weight', proposed: null, stale: null });
  });

  it('takes the weight weighed before a visit that has none, never one weighed after', () => {
    const weighings = [
      { day: addDays(START, -1), weightKg: 40 },
      { day: addDays(START, 1), weightKg: 50 },
    ];
    const unweighed = visit(START, null, { ...lose, bcs: 8 });
    const at = (list: typeof weighings) =>
      assess({
        dog: grownDog,
        visits: [unweighed],
        weighings: list,
        foodDecisions: [],
        day: after(1),
      })!.targetWeightKg;
    expect(at(weighings)).toBeCloseTo(30.77, 2);
    expect(at([{ day: START, weightKg: 40 }, weighings[1]!])).toBeCloseTo(30.77, 2);
    // Weighed only later: that is all there is.
    expect(at(weighings.slice(1))).toBeCloseTo(50 / 1.3, 6);
  });

  it('of a plan that ended is held up to 5 % from it, and once', () => {
    const ended = 28 / 1.2;
    const held = (kg: number) =>
      of([visit(START, 28, { ...lose, bcs: 7 }), visit(after(20), kg, { bcs: 5 })]).target;
    expect(held(ended * 1.049)).toMatchObject({ basis: 'score', sinceDay: START });
    expect(held(ended * 0.951)).toMatchObject({ basis: 'score' });
    expect(held(ended * 1.051)).toMatchObject({ basis: 'weight', sinceDay: after(20) });
    expect(held(ended * 0.949)).toMatchObject({ basis: 'weight' });
  });

  it('set back to what it was counts from the day it was set back', () => {
    const set = [25, null, 26, 25].map((targetWeightKg, index) =>
      visit(after(2 * index), 30, { ...lose, targetWeightKg }),
    );
    expect(of(set).target).toMatchObject({ kg: 25, sinceDay: after(6) });
    expect(of(set.slice(0, 2)).target).toMatchObject({ kg: 25, sinceDay: START });
  });
});
