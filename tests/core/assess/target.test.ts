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
});
