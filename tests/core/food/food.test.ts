import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  changeover,
  chooseFoodEnergy,
  foodEnergy,
  intakeEnergy,
  nutrientFloorFigure,
  nutrientFloorWarning,
  ration,
  weighOut,
  type FedFood,
} from '../../../core/nutrition.ts';
import { holds } from '../../support/laws.ts';

const RUNS = { seed: 1, numRuns: 500 };
const share = fc.double({ min: 0, max: 30, noNaN: true });
const label = fc.record({
  proteinPct: share,
  fatPct: share,
  fibrePct: fc.double({ min: 0, max: 15, noNaN: true }),
  moisturePct: fc.double({ min: 0, max: 15, noNaN: true }),
  ashPct: fc.double({ min: 0, max: 10, noNaN: true }),
});
const food = (kind: Partial<FedFood>) =>
  fc.record({
    name: fc.constantFrom('Dry food', 'Wet food', 'Broth'),
    kcalPer100g: fc.double({ min: 30, max: 900, noNaN: true }),
    gramsPerDay: fc.double({ min: 5, max: 300, noNaN: true }),
    ...Object.fromEntries(Object.entries(kind).map(([key, value]) => [key, fc.constant(value)])),
  }) as fc.Arbitrary<FedFood>;
const bowl = fc.record({
  kcalPerDay: fc.double({ min: 300, max: 4000, noNaN: true }),
  mealsPerDay: fc.integer({ min: 1, max: 6 }),
  foods: fc
    .tuple(
      fc.array(food({}), { minLength: 1, maxLength: 4 }),
      fc.array(food({ treat: true }), { maxLength: 3 }),
      fc.array(food({ fixedGrams: true }), { maxLength: 2 }),
    )
    .map((lists) => lists.flat()),
});
const hasRoom = ({ kcalPerDay, foods }: { kcalPerDay: number; foods: readonly FedFood[] }) =>
  intakeEnergy(foods.filter(({ fixedGrams }) => fixedGrams === true)) < 0.85 * kcalPerDay;

describe('energy of a food', () => {
  it('is a number above nothing by both methods, and at most that of fat', () => {
    holds(
      fc.property(label, (analysis) => {
        for (const kcal of Object.values(foodEnergy(analysis))) {
          expect(kcal).toBeGreaterThanOrEqual(0);
          expect(kcal).toBeLessThan(950);
        }
      }),
      RUNS,
    );
  });

  it('refuses shares that sum to more than 100 %, naming the sum', () => {
    const wrong = { proteinPct: 50, fatPct: 30, fibrePct: 10, moisturePct: 10, ashPct: 10 };
    expect(() => foodEnergy(wrong)).toThrow(/sum to 110 %/);
    expect(() => foodEnergy({ ...wrong, fatPct: -1 })).toThrow(/fatPct must be from 0 to 100 %/);
  });

  it('takes the declared energy, else the four steps, and refuses to guess', () => {
    const analysis = { proteinPct: 26, fatPct: 15, fibrePct: 3, moisturePct: 9, ashPct: 7 };
    expect(chooseFoodEnergy({ declaredKcalPer100g: 380 })).toMatchObject({
      method: 'declared',
      predictive: null,
      warning: null,
    });
    expect(chooseFoodEnergy({ label: analysis }).method).toBe('four steps');
    expect(() => chooseFoodEnergy({})).toThrow(/declaredKcalPer100g must be from 5 to 950/);
  });

  it('warns where any two of the known values differ by more than 10 % of the one used', () => {
    const fibrous = { proteinPct: 20, fatPct: 10, fibrePct: 22, moisturePct: 9, ashPct: 6 };
    const { predictive, atwater } = foodEnergy(fibrous);
    expect(Math.abs(atwater / predictive - 1)).toBeGreaterThan(0.1);
    const warned = chooseFoodEnergy({ label: fibrous });
    expect(warned.warning?.params).toEqual({
      predictive: Math.round(predictive),
      atwater: Math.round(atwater),
    });
    expect(warned.figure.notes).toHaveLength(1);
  });
});

describe('a ration', () => {
  it('sums to the energy asked for', () => {
    holds(
      fc.property(bowl, (asked) => {
        fc.pre(hasRoom(asked));
        const { items } = ration(asked);
        const kcal = items.reduce((sum, item) => sum + item.kcalPerDay, 0);
        expect(kcal).toBeCloseTo(asked.kcalPerDay, 6);
        for (const item of items) {
          expect(item.gramsPerDay).toBeGreaterThanOrEqual(0);
          expect(item.kcalPerDay).toBeCloseTo((item.gramsPerDay * item.kcalPer100g) / 100, 9);
          expect(item.gramsPerMeal * asked.mealsPerDay).toBeCloseTo(item.gramsPerDay, 9);
        }
      }),
      RUNS,
    );
  });

  it('keeps treats to 10 %, fixed grams fixed, and the proportion of the others', () => {
    holds(
      fc.property(bowl, (asked) => {
        fc.pre(hasRoom(asked));
        const result = ration(asked);
        expect(result.treatKcal).toBeLessThanOrEqual(0.1 * asked.kcalPerDay + 1e-9);
        const free: number[] = [];
        asked.foods.forEach((fed, index) => {
          const grams = result.items[index]!.gramsPerDay;
          if (fed.treat === true) expect(grams).toBeLessThanOrEqual(fed.gramsPerDay + 1e-9);
          else if (fed.fixedGrams === true) expect(grams).toBe(fed.gramsPerDay);
          else free.push(grams / fed.gramsPerDay);
        });
        for (const factor of free) expect(factor / free[0]!).toBeCloseTo(1, 9);
      }),
      RUNS,
    );
  });

  it('gives cups only with the owner’s own weighed cup', () => {
    const foods = [
      { name: 'Dry food', kcalPer100g: 400, gramsPerDay: 100, gramsPerCup: 80 },
      { name: 'Wet food', kcalPer100g: 100, gramsPerDay: 100, gramsPerCup: null },
    ];
    const { items } = ration({ kcalPerDay: 500, foods });
    expect(items.map(({ cupsPerDay }) => cupsPerDay)).toEqual([1.25, null]);
    const cup = [{ ...foods[0]!, gramsPerCup: 0 }];
    expect(() => ration({ kcalPerDay: 500, foods: cup })).toThrow(/gramsPerCup must be from 1/);
  });

  it('says what is wrong when nothing may change or nothing is left', () => {
    const fixed = { name: 'Liver', kcalPer100g: 130, gramsPerDay: 500, fixedGrams: true };
    const dry = { name: 'Dry food', kcalPer100g: 400, gramsPerDay: 100 };
    expect(() => ration({ kcalPerDay: 600, foods: [fixed] })).toThrow(
      /not fixed and .* not a treat/,
    );
    expect(() => ration({ kcalPerDay: 600, foods: [fixed, dry] })).toThrow(/leave energy/);
    expect(() => ration({ kcalPerDay: 0, foods: [dry] })).toThrow(/kcalPerDay must be from 1/);
    expect(() => ration({ kcalPerDay: 600, foods: [dry], mealsPerDay: 1.5 })).toThrow(
      /whole number/,
    );
  });
});

describe('a ration on the kitchen scale', () => {
  it('comes in whole grams and keeps the energy within 1 g of the food that takes up the rest', () => {
    holds(
      fc.property(bowl, (asked) => {
        fc.pre(hasRoom(asked));
        const exact = ration(asked);
        const weighed = weighOut(exact);
        const free = exact.items.filter(({ treat, fixedGrams }) => !treat && !fixedGrams);
        const largest = free.reduce((a, b) => (b.gramsPerDay > a.gramsPerDay ? b : a));
        fc.pre(largest.gramsPerDay > 20);
        expect(Math.abs(weighed.kcalPerDay - asked.kcalPerDay)).toBeLessThanOrEqual(
          largest.kcalPer100g / 100,
        );
        weighed.items.forEach((item) => {
          expect(Number.isInteger(item.gramsPerDay)).toBe(true);
          if (item.treat) expect(item.gramsByMeal).toEqual([]);
          else expect(item.gramsByMeal.reduce((a, b) => a + b, 0)).toBe(item.gramsPerDay);
        });
      }),
      RUNS,
    );
  });

  it('puts the gram that is left over into the first meal', () => {
    const foods = [{ name: 'Dry food', kcalPer100g: 100, gramsPerDay: 100 }];
    const { items } = weighOut(ration({ kcalPerDay: 255, foods, mealsPerDay: 2 }));
    expect(items[0]!.gramsByMeal).toEqual([128, 127]);
  });

  it('follows a coarser scale', () => {
    const foods = [{ name: 'Dry food', kcalPer100g: 100, gramsPerDay: 100 }];
    const { items } = weighOut(ration({ kcalPerDay: 253, foods, mealsPerDay: 2 }), 5);
    expect(items[0]!.gramsPerDay).toBe(255);
    expect(() => weighOut(ration({ kcalPerDay: 253, foods }), 0)).toThrow(/scaleStepG/);
  });
});

describe('changing from one food to another', () => {
  const plan = {
    startDay: '2026-03-01',
    kcalPerDay: 720,
    oldFood: { name: 'Old', kcalPer100g: 360 },
    newFood: { name: 'New', kcalPer100g: 300 },
  };

  it('keeps the energy every day and ends with the new food alone', () => {
    holds(
      fc.property(fc.integer({ min: 7, max: 10 }), (days) => {
        const { steps } = changeover({ ...plan, days });
        expect(steps).toHaveLength(days);
        for (const { oldGrams, newGrams } of steps) {
          expect(oldGrams * 3.6 + newGrams * 3).toBeCloseTo(720, 9);
        }
        expect(steps[0]!.oldGrams).toBeGreaterThan(0);
        expect(steps.at(-1)).toMatchObject({ oldGrams: 0, newPercent: 100 });
      }),
      RUNS,
    );
  });

  it('counts the days from the first', () => {
    const { steps } = changeover({ ...plan, days: 7 });
    expect([steps[0]!.day, steps.at(-1)!.day]).toEqual(['2026-03-01', '2026-03-07']);
  });
});

describe('the nutrient floor', () => {
  it('warns below it on ordinary food only', () => {
    const at = (kcalPerDay: number, weightLossDiet: boolean) =>
      nutrientFloorWarning({ kcalPerDay, targetWeightKg: 16, weightLossDiet });
    expect(at(631, false)?.code).toBe('nutrient-floor');
    expect(at(633, false)).toBeNull();
    expect(at(500, true)).toBeNull();
    expect(nutrientFloorFigure(16).value).toBeCloseTo(632, 9);
  });
});
