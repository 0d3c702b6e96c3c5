import { describe, expect, it } from 'vitest';
import { bowlsOf, changeover, ration } from '../../../core/index.ts';

const dry = { name: 'Dry', kcalPer100g: 360, gramsPerDay: 200 };
const fed = ration({
  kcalPerDay: 720,
  mealsPerDay: 2,
  foods: [
    dry,
    { name: 'Carrots', kcalPer100g: 36, gramsPerDay: 50, fixedGrams: true },
    { name: 'Treats', kcalPer100g: 300, gramsPerDay: 10, treat: true },
  ],
});
const [first] = fed.items;
const change = changeover({
  startDay: '2026-03-02',
  days: 7,
  kcalPerDay: first!.kcalPerDay,
  oldFood: { name: 'Old', kcalPer100g: 400 },
  newFood: dry,
});
const sum = (of: readonly number[]): number => of.reduce((total, each) => total + each, 0);

describe('the bowls of a ration', () => {
  it('are one without a change of food, treats left out, meals in whole grams', () => {
    const [only, ...others] = bowlsOf(fed, null);
    expect(others).toEqual([]);
    expect(only!.day).toBeNull();
    expect(only!.foods.map(({ name }) => name)).toEqual(['Dry', 'Carrots']);
    expect(only!.foods[1]!.gramsByMeal).toEqual([25, 25]);
  });

  it('are one a day while two foods are mixed, the energy of the bowl staying the same', () => {
    const bowls = bowlsOf(fed, change);
    expect(bowls.map(({ day }) => day)).toEqual([
      ...change.steps.slice(0, 6).map(({ day }) => day),
      null,
    ]);
    for (const { foods } of bowls.slice(0, -1)) {
      expect(foods.map(({ name }) => name)).toEqual(['Old', 'Dry', 'Carrots']);
      const kcal = sum(foods[0]!.gramsByMeal) * 4 + sum(foods[1]!.gramsByMeal) * 3.6;
      expect(Math.abs(kcal - first!.kcalPerDay)).toBeLessThan(4);
    }
  });
});
