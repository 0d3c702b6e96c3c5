import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  changeover,
  intakeEnergy,
  nutrientFloor,
  nutrientFloorFigure,
  nutrientFloorWarning,
  ration,
  rationOrNull,
  referralFloor,
  weighOut,
  type FedFood,
} from '../../../core/nutrition.ts';
import { product } from '../../support/captions.ts';
import { evenly, holds } from '../../support/laws.ts';

const RUNS = { seed: 1, numRuns: 500 };
const food = (kind: Partial<FedFood>) =>
  fc.record({
    name: fc.constantFrom('Dry food', 'Wet food', 'Broth'),
    kcalPer100g: evenly(30, 900),
    gramsPerDay: evenly(5, 300),
    ...Object.fromEntries(Object.entries(kind).map(([key, value]) => [key, fc.constant(value)])),
  }) as fc.Arbitrary<FedFood>;
const bowl = fc.record({
  kcalPerDay: evenly(300, 4000),
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

describe('a ration where there may be none', () => {
  const anyBowl = fc.record({
    kcalPerDay: fc.integer({ min: 100, max: 1500 }),
    foods: fc.array(
      fc.record({
        name: fc.constant('Food'),
        kcalPer100g: fc.constantFrom(50, 200, 400),
        gramsPerDay: fc.constantFrom(0, 20, 100, 300),
        treat: fc.boolean(),
        fixedGrams: fc.boolean(),
      }),
      { maxLength: 4 },
    ),
  });

  it('is none where a ration is refused, and else the ration of what is fed at all', () => {
    holds(
      fc.property(anyBowl, (asked) => {
        const fed = asked.foods.filter(({ gramsPerDay }) => gramsPerDay !== 0);
        const found = rationOrNull(asked);
        const asking = () => ration({ ...asked, foods: fed });
        if (found === null) expect(asking).toThrow(RangeError);
        else expect(found).toEqual(asking());
      }),
      RUNS,
    );
  });

  it('is none where what is fixed takes the whole day', () => {
    const dry = { name: 'Dry food', kcalPer100g: 400, gramsPerDay: 100 };
    const liver = { name: 'Liver', kcalPer100g: 100, gramsPerDay: 300, fixedGrams: true };
    const biscuit = { name: 'Biscuit', kcalPer100g: 400, gramsPerDay: 100, treat: true };
    const foods = [dry, liver];
    expect(rationOrNull({ kcalPerDay: 300, foods })).toBeNull();
    expect(() => ration({ kcalPerDay: 300, foods })).toThrow(/leave energy/);
    expect(rationOrNull({ kcalPerDay: 301, foods })!.items[0]!.gramsPerDay).toBeCloseTo(0.25, 9);
    // A tenth of 350 kcal is kept for treats.
    const treated = rationOrNull({ kcalPerDay: 350, foods: [...foods, biscuit] })!;
    expect(treated.items.map(({ kcalPerDay }) => Math.round(kcalPerDay))).toEqual([15, 300, 35]);
    expect(rationOrNull({ kcalPerDay: 330, foods: [...foods, biscuit] })).toBeNull();
  });

  it('takes a treat of fixed grams for a treat', () => {
    const dry = { name: 'Dry food', kcalPer100g: 400, gramsPerDay: 100 };
    const chew = { name: 'Chew', kcalPer100g: 400, gramsPerDay: 50, treat: true, fixedGrams: true };
    const { items } = ration({ kcalPerDay: 400, foods: [dry, chew] });
    expect(items[1]).toMatchObject({ treat: true, fixedGrams: false, gramsPerDay: 10 });
  });

  it('is refused for a food that no food is, or of which nothing is fed', () => {
    const dry = { name: 'Dry food', kcalPer100g: 400, gramsPerDay: 100 };
    const of = (more: Partial<FedFood>) => () =>
      ration({ kcalPerDay: 400, foods: [{ ...dry, ...more }] });
    expect(of({ kcalPer100g: 4 })).toThrow(/kcalPer100g must be from 5 to 950/);
    expect(of({ gramsPerDay: -1 })).toThrow(/gramsPerDay must be from 0/);
    expect(of({ gramsPerDay: 0 })).toThrow(RangeError);
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
    expect(items[0]).toMatchObject({ gramsPerDay: 255, gramsByMeal: [130, 125] });
    const liver = { name: 'Liver', kcalPer100g: 100, gramsPerDay: 22, fixedGrams: true };
    const mixed = weighOut(ration({ kcalPerDay: 253, foods: [...foods, liver] }), 5);
    expect(mixed.items.map(({ gramsPerDay }) => gramsPerDay)).toEqual([235, 20]);
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

  it('rises in equal steps', () => {
    const rises = changeover({ ...plan, days: 10 }).steps.map(({ newPercent }) => newPercent);
    expect(rises.map(Math.round)).toEqual([10, 20, 30, 40, 50, 60, 70, 80, 90, 100]);
  });

  it('refuses by name what is no day or no food', () => {
    const water = { name: 'Water', kcalPer100g: 0 };
    expect(() => changeover({ ...plan, startDay: '2026-02-30' })).toThrow(/startDay/);
    expect(() => changeover({ ...plan, oldFood: water })).toThrow(/oldFood.kcalPer100g/);
    expect(() => changeover({ ...plan, newFood: water })).toThrow(/newFood.kcalPer100g/);
  });
});

describe('the nutrient floor', () => {
  it('warns below it on ordinary food only', () => {
    const at = (kcalPerDay: number, weightLossDiet: boolean) =>
      nutrientFloorWarning({ kcalPerDay, targetWeightKg: 16, weightLossDiet });
    expect(at(631, false)?.code).toBe('nutrient-floor');
    expect(at(632, false)).toBeNull();
    expect(at(500, true)).toBeNull();
    expect(at(631, false)).toMatchObject({ params: { kcal: 632 }, sources: ['linder2012'] });
  });

  it('is what its formula says, and names the target', () => {
    const { value, formula, inputs, sources, notes } = nutrientFloorFigure(16);
    expect(value).toBeCloseTo(product(formula.replace('target ', ''), 16), 9);
    expect(inputs).toEqual([{ label: 'Target weight', value: 16, unit: 'kg' }]);
    expect(sources).toEqual(['linder2012']);
    expect(notes).toHaveLength(1);
  });

  it('asks for a target weight, as the least that is proposed does', () => {
    expect(() => nutrientFloor(0)).toThrow(/targetWeightKg must be from 0.1 to 150 kg/);
    expect(() => referralFloor(151)).toThrow(/targetWeightKg must be from 0.1 to 150 kg/);
  });
});
