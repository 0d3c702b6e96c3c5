import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../core/index.ts';
import { grouped } from '../../../core/quantityText.ts';
import {
  adjustFood,
  aimContradiction,
  aimState,
  maintenanceEnergy,
  type FoodGoal,
} from '../../../core/nutrition.ts';
import { grownDog, visit } from '../assess/visits.ts';
import { holds } from '../../support/laws.ts';

const DAY = '2026-06-01';
const kg = fc.integer({ min: 20, max: 700 }).map((tenths) => tenths / 10);
const aimed = fc.record({
  goal: fc.constantFrom<FoodGoal>('lose', 'hold', 'gain'),
  weightKg: kg,
  targetWeightKg: kg,
  earlierKg: fc.array(kg, { maxLength: 4 }),
});

describe('aim and target', () => {
  it.each([
    ['lose', 30, 25, [], 'ahead'],
    ['lose', 30, 30, [], 'contradictory'],
    ['lose', 30, 32, [29], 'contradictory'],
    ['lose', 24.9, 25, [27, 26], 'reached'],
    ['lose', 25, 25, [25], 'contradictory'],
    ['gain', 20, 23, [], 'ahead'],
    ['gain', 23, 23, [], 'contradictory'],
    ['gain', 23.2, 23, [20], 'reached'],
    ['hold', 30, 25, [], 'ahead'],
  ] as const)(
    '%s from %d kg to %d kg after %j: %s',
    (goal, weightKg, targetWeightKg, earlierKg, is) => {
      expect(aimState({ goal, weightKg, targetWeightKg, earlierKg })).toBe(is);
    },
  );

  it('names field, unit and bound where they contradict each other', () => {
    const problem = aimContradiction({ goal: 'lose', weightKg: 28, targetWeightKg: 31.5 })!;
    expect(problem.code).toBe('target-not-below');
    expect(problem.text).toMatch(/^Target weight must be below .* 28\.0 kg .* 31\.5 kg/);
    expect(problem.params).toEqual({ weightKg: 28, targetWeightKg: 31.5 });
  });

  it('never make a ration while they contradict each other', () => {
    holds(
      fc.property(aimed, fc.integer({ min: 0, max: 2500 }), (asked, currentKcal) => {
        const proposal = adjustFood({ ...asked, day: DAY, bcs: 6, currentKcal });
        if (aimState(asked) !== 'contradictory') return;
        expect(proposal).toMatchObject({ verdict: 'refer', kcalPerDay: null, ration: null });
      }),
      { seed: 1, numRuns: 400 },
    );
  });
});

describe('a target reached by gaining', () => {
  const reached = {
    day: DAY,
    goal: 'gain',
    weightKg: 23.2,
    targetWeightKg: 23,
    earlierKg: [20],
    bcs: 5,
    onPlan: true,
  } as const;

  it('is held: food goes down by 10 % at most, not below the need, and never up', () => {
    const rich = adjustFood({ ...reached, currentKcal: 2000 });
    expect(rich.reasons[0]!.code).toBe('gain-target-reached');
    expect(rich).toMatchObject({ verdict: 'change', kcalPerDay: expect.closeTo(1800, 6) });
    expect(adjustFood({ ...reached, currentKcal: 900 })).toMatchObject({
      verdict: 'keep',
      kcalPerDay: 900,
    });
  });

  it('is held by the need and the running together', () => {
    const need = maintenanceEnergy({ weightKg: 23.2 }).mid;
    const at = (currentKcal: number, runningKcalPerDay: number) =>
      adjustFood({ ...reached, currentKcal, runningKcalPerDay }).kcalPerDay;
    expect(at(need + 60, 40)).toBeCloseTo(need + 40, 9);
    expect(at(need + 60, 0)).toBeCloseTo(need, 9);
    expect(at(need + 30, 40)).toBe(need + 30);
    expect(at(0, 40)).toBeCloseTo(need + 40, 9);
  });

  it('says which way the ration goes, with what, and whether running is in it', () => {
    const reason = (currentKcal: number, runningKcalPerDay = 0) =>
      adjustFood({ ...reached, currentKcal, runningKcalPerDay });
    const need = Math.round(maintenanceEnergy({ weightKg: 23.2 }).mid);
    const down = reason(2000, 40);
    expect(down.reasons[0]!.text).toContain(`go down in steps of 10 %`);
    expect(down.reasons[0]!.text).toContain(
      `(${grouped(need + 40)} kcal a day, the planned running in it)`,
    );
    expect(down.reasons[0]!.params).toEqual({ kcal: need + 40 });
    expect(down.figure!.formula).toContain('present ration − 10 %');
    const kept = reason(900);
    expect(kept.reasons[0]!.text).toContain('keep the ration');
    expect(kept.reasons[0]!.text).toContain(`(${grouped(need)} kcal a day)`);
  });

  it('takes nothing from a dog that is thin all the same', () => {
    expect(adjustFood({ ...reached, bcs: 3, currentKcal: 2000 }).kcalPerDay).toBe(2000);
  });
});

describe('a record', () => {
  const aim = { foodGoal: 'lose', targetWeightKg: 25, bcs: 6 } as const;

  it('tells an intake that contradicts itself from a target that was reached', () => {
    const at = (visits: Parameters<typeof assess>[0]['visits']) =>
      assess({ dog: grownDog, visits, foodDecisions: [], day: DAY })!;
    const intake = at([visit(DAY, 24.9, aim)]);
    expect(intake.aimProblem?.code).toBe('target-not-below');
    expect(intake.food).toMatchObject({ verdict: 'refer', kcalPerDay: null });
    const reached = at([visit('2026-01-05', 28, aim), visit(DAY, 24.9, aim)]);
    expect(reached.aimProblem).toBeNull();
    expect(reached.food.reasons[0]!.code).toBe('target-reached');
  });
});
