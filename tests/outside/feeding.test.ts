import { describe, expect, it } from 'vitest';
import {
  adjustFood,
  changeover,
  chooseFoodEnergy,
  foodEnergy,
  maintenanceEnergy,
  nitrogenFreeExtract,
  nutrientFloor,
  ration,
  referralFloor,
  restingEnergy,
  STEP_PERCENT,
} from '../../core/nutrition.ts';

// Marks: S read in the source, M from memory, C our arithmetic from a stated formula, D ours.

const dry = { proteinPct: 26, fatPct: 15, fibrePct: 3, moisturePct: 9, ashPct: 7 };
const light = { proteinPct: 30, fatPct: 9, fibrePct: 13, moisturePct: 9, ashPct: 6 };

describe('food energy against the published equations', () => {
  // FEDIAF 2017 p. 118, four steps (S); modified Atwater 3.5 / 8.5 / 3.5 (S); worked out (C).
  it('26/15/3/9/7: NFE 40, 375.55 by the four steps, 358.5 by Atwater (C)', () => {
    expect(nitrogenFreeExtract(dry)).toBeCloseTo(40, 9);
    expect(foodEnergy(dry).predictive).toBeCloseTo(375.55, 2);
    expect(foodEnergy(dry).atwater).toBeCloseTo(358.5, 9);
  });

  it('30/9/13/9/6: 283.17 and 297.0 (C)', () => {
    expect(foodEnergy(light).predictive).toBeCloseTo(283.17, 2);
    expect(foodEnergy(light).atwater).toBeCloseTo(297, 9);
  });

  // Declared first, then the four steps; both shown where they differ by more than 10 % (D).
  it('prefers the declared energy and warns beyond 10 % (D)', () => {
    expect(chooseFoodEnergy({ declaredKcalPer100g: 370, label: dry })).toMatchObject({
      kcalPer100g: 370,
      method: 'declared',
      warning: null,
    });
    const far = chooseFoodEnergy({ declaredKcalPer100g: 320, label: dry });
    expect(far.warning?.text).toContain('four steps 376');
    expect(chooseFoodEnergy({ label: dry }).kcalPer100g).toBeCloseTo(375.55, 2);
  });
});

describe('adjusting food against the handbook', () => {
  const heavy = { day: '2026-03-01', weightKg: 40, targetWeightKg: 31, bcs: 8 } as const;
  const maintenance = maintenanceEnergy({ weightKg: 40 });

  // Hand et al. 2010, p. 532 (S): 1.0 × RER at target weight.
  it('starts a loss plan at 1.0 × RER of the target weight (S)', () => {
    const proposal = adjustFood({ ...heavy, goal: 'lose', maintenance });
    expect(proposal.verdict).toBe('start');
    expect(proposal.kcalPerDay).toBeCloseTo(restingEnergy(31), 9);
  });

  // Linder et al. 2012, Vet Q 32:123 (S): below 79 kcal/kg^0.75 of target ordinary diets fell short.
  it('warns below 79 kcal/kg^0.75 of target, as resting energy itself already is (S)', () => {
    expect(nutrientFloor(31)).toBeCloseTo(79 * 31 ** 0.75, 9);
    const proposal = adjustFood({ ...heavy, goal: 'lose', maintenance });
    expect(proposal.warnings.map(({ code }) => code)).toContain('nutrient-floor');
    const diet = adjustFood({ ...heavy, goal: 'lose', maintenance, weightLossDiet: true });
    expect(diet.warnings.map(({ code }) => code)).not.toContain('nutrient-floor');
  });

  // Below 0.8 × RER at target nothing is proposed (D).
  it('proposes nothing below 0.8 × RER of the target weight (D)', () => {
    expect(referralFloor(31)).toBeCloseTo(0.8 * 70 * 31 ** 0.75, 9);
  });

  // German et al. 2015, BMC Vet Res 11:253 (S): median 61 (44–74); Wakshlag et al. 2012 (S): 53.6, 42.2.
  it('sets beside it what dogs needed in fact to lose (S)', () => {
    const { references } = adjustFood({ ...heavy, goal: 'lose', maintenance });
    const perKg075 = references.slice(0, 3).map(({ kcalPerDay }) => kcalPerDay / 31 ** 0.75);
    expect(perKg075.map((value) => Math.round(value * 10) / 10)).toEqual([61, 53.6, 42.2]);
  });

  // Usual step 10 %, range 5–20 % (M); one handbook case cut 920 to 725 kcal, 21 % (S).
  it('steps by 10 %, within 5–20 % (M); the handbook case lies at the far end (S)', () => {
    expect(STEP_PERCENT).toEqual({ usual: 10, min: 5, max: 20 });
    expect(100 * (1 - 725 / 920)).toBeCloseTo(21, 0);
  });

  // Intake at or below the computed loss ration: diet history again, then the vet (S).
  it('sends a dog that already eats so little to the vet (S)', () => {
    const proposal = adjustFood({ ...heavy, goal: 'lose', maintenance, currentKcal: 900 });
    expect(proposal.verdict).toBe('refer');
    expect(proposal.kcalPerDay).toBeNull();
  });

  // Treats at most 10 % of daily kcal (S).
  it('keeps treats to 10 % of the day (S)', () => {
    const bowl = ration({
      kcalPerDay: 700,
      foods: [
        { name: 'Dry food', kcalPer100g: 360, gramsPerDay: 200 },
        { name: 'Biscuit', kcalPer100g: 400, gramsPerDay: 40, treat: true },
      ],
    });
    expect(bowl.treatAllowanceKcal).toBeCloseTo(70, 9);
    expect(bowl.treatKcal).toBeCloseTo(70, 9);
  });

  // Food change over 7–10 days (M).
  it('changes a food over 7–10 days (M)', () => {
    const food = (name: string) => ({ name, kcalPer100g: 360 });
    const plan = { startDay: '2026-03-01', kcalPerDay: 720 };
    const both = { oldFood: food('Old'), newFood: food('New') };
    expect(changeover({ ...plan, ...both }).steps).toHaveLength(10);
    expect(changeover({ ...plan, ...both, days: 7 }).steps).toHaveLength(7);
    expect(() => changeover({ ...plan, ...both, days: 6 })).toThrow(/days must be .* 7 to 10/);
    expect(() => changeover({ ...plan, ...both, days: 11 })).toThrow(RangeError);
  });
});
