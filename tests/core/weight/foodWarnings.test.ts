import { describe, expect, it } from 'vitest';
import {
  adjustFood,
  maintenanceEnergy,
  restingEnergy,
  type FoodGoal,
} from '../../../core/nutrition.ts';
import { ask, base, codes, falling } from './asked.ts';

describe('what to watch with a ration', () => {
  const first = { onPlan: false, currentKcal: 1400 };

  it.each<[FoodGoal, number, string | null]>([
    ['gain', 8, 'heavy-to-gain'],
    ['gain', 6, 'heavy-to-gain'],
    ['gain', 4, null],
    ['hold', 6, 'heavy-to-hold'],
    ['hold', 7, 'heavy-to-hold'],
    ['hold', 3, 'thin-to-hold'],
    ['hold', 5, null],
    ['lose', 7, null],
    ['gain', 3, null],
  ])('warns when the aim does not fit the score: %s at %i', (goal, bcs, code) => {
    const targetWeightKg = { gain: 31, hold: 30, lose: 25 }[goal];
    const { warnings } = ask({ ...first, goal, bcs, targetWeightKg, currentKcal: 1200 });
    const found = codes(warnings).filter((entry) => /^(heavy|thin)-to-/.test(entry));
    expect(found).toEqual(code === null ? [] : [code]);
  });

  it('warns of a target to gain above the range for the score', () => {
    const gain = { ...first, goal: 'gain', bcs: 4 } as const;
    expect(codes(ask({ ...gain, targetWeightKg: 82 }).warnings)).toContain('target-above-range');
    expect(codes(ask({ ...gain, targetWeightKg: 32 }).warnings)).not.toContain(
      'target-above-range',
    );
  });

  it('warns of muscle already lost, and of treats beyond 10 %', () => {
    const foods = [
      { name: 'Dry food', kcalPer100g: 360, gramsPerDay: 300 },
      { name: 'Biscuit', kcalPer100g: 400, gramsPerDay: 60, treat: true },
    ];
    const proposal = ask({ ...first, muscle: 'mild loss', foods });
    expect(codes(proposal.warnings)).toEqual(
      expect.arrayContaining(['muscle-mild-loss', 'treats', 'nutrient-floor']),
    );
    expect(proposal.ration!.treatKcal).toBeCloseTo(proposal.treatAllowanceKcal!, 9);
  });

  it('does not call its own treats too many once they are weighed out in whole grams', () => {
    const dry = { name: 'Dry food', kcalPer100g: 360, gramsPerDay: 300 };
    for (let kcalPer100g = 300; kcalPer100g <= 500; kcalPer100g += 7) {
      const fed = (gramsPerDay: number) =>
        ask({ ...first, foods: [dry, { name: 'Biscuit', kcalPer100g, gramsPerDay, treat: true }] });
      const grams = Math.round((fed(60).treatAllowanceKcal! / kcalPer100g) * 100);
      expect(codes(fed(grams).warnings)).not.toContain('treats');
      expect(codes(fed(grams + 1).warnings)).toContain('treats');
    }
  });

  it('says when no grams can be given', () => {
    const foods = [{ name: 'Raw mince', kcalPer100g: 200, gramsPerDay: 700, fixedGrams: true }];
    const proposal = ask({ ...first, foods });
    expect(proposal.ration).toBeNull();
    expect(codes(proposal.warnings)).toContain('no-free-food');
  });

  it('is none of muscle, fixed foods, medicine or the floor where all is well', () => {
    const foods = [{ name: 'Dry food', kcalPer100g: 360, gramsPerDay: 300 }];
    const well = { ...first, foods, weightLossDiet: true };
    expect(codes(ask({ ...well, muscle: 'normal' }).warnings)).toEqual([]);
    expect(codes(ask({ ...well, muscle: 'mild loss' }).warnings)).toEqual(['muscle-mild-loss']);
    const hold = { ...well, goal: 'hold', bcs: 5, targetWeightKg: 30 } as const;
    expect(codes(ask({ ...hold, muscle: 'mild loss' }).warnings)).toEqual([]);
    expect(codes(ask({ ...hold, onMedicine: true }).warnings)).toEqual(['food-on-medicine']);
  });

  it('is no floor of adults for a growing dog', () => {
    // Fed 300 kcal, 9 kg of 30: the next step of a tenth is under 79 × 9^0.75 = 410 kcal a day.
    const puppy = { growing: true, weightKg: 9, adultWeightKg: 30, targetWeightKg: 9, bcs: 5 };
    const proposal = ask({ ...puppy, goal: 'hold', initialWeightKg: 9, currentKcal: 300 });
    expect(proposal.kcalPerDay).toBeCloseTo(330, 9);
    expect(proposal.warnings).toEqual([]);
  });

  it('is a great ration or a high target only where the aim is to gain', () => {
    // 1.8 × resting energy is the end of what is published for gaining (S).
    const gain = { ...first, goal: 'gain', bcs: 4, targetWeightKg: 31 } as const;
    const high = (currentKcal: number, changes = {}) =>
      codes(ask({ ...gain, currentKcal, ...changes }).warnings);
    const bound = 1.8 * restingEnergy(31);
    expect(high(bound / 1.1 + 1)).toEqual(['gain-high']);
    expect(high(bound / 1.1 - 1)).toEqual([]);
    const maintenance = maintenanceEnergy({ weightKg: 30, activity: 'working' });
    const hold = { goal: 'hold', bcs: 5, maintenance, targetWeightKg: 60 } as const;
    expect(high(2000, hold)).toEqual([]);
    const growing = { growing: true, weightKg: 9, adultWeightKg: 30, initialWeightKg: 9 };
    expect(high(1400, { ...growing, targetWeightKg: 29 })).toEqual([]);
  });

  it('is nothing of the score where the dog was not scored', () => {
    const { bcs: _, ...unscored } = { ...base, ...first };
    const warnings = (goal: FoodGoal, targetWeightKg: number) =>
      codes(adjustFood({ ...unscored, goal, targetWeightKg, currentKcal: 1200 }).warnings);
    expect(warnings('gain', 80)).not.toContain('target-above-range');
    expect(warnings('hold', 30)).toEqual([]);
  });

  it('names the score that speaks against the aim', () => {
    const { warnings } = ask({ ...first, goal: 'hold', bcs: 7, trend: falling(0, 8) });
    expect(warnings[0]).toMatchObject({ code: 'heavy-to-hold', params: { bcs: 7 } });
  });
});
