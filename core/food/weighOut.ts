import { inRange } from '../check.ts';
import type { Ration, RationItem } from './ration.ts';

/** One food as the kitchen scale shows it. */
export interface WeighedItem {
  readonly name: string;
  readonly treat: boolean;
  readonly gramsPerDay: number;
  /** What goes into each bowl, in whole steps of the scale, the larger first; treats have none. */
  readonly gramsByMeal: readonly number[];
  readonly kcalPerDay: number;
}

export interface WeighedRation {
  readonly items: readonly WeighedItem[];
  readonly kcalPerDay: number;
}

/**
 * A ration in whole steps of the kitchen scale. Each food is rounded, then the largest free one
 * takes up what rounding left, so that the energy stays within one step of that food.
 *
 * @param scaleStepG step of the kitchen scale, 0.1–10 g (default 1)
 * @throws RangeError for a step outside 0.1–10 g
 * @example weighOut(sample.ration).items.map(({ gramsPerDay }) => gramsPerDay) // => [224, 23]
 */
export function weighOut(ration: Ration, scaleStepG = 1): WeighedRation {
  inRange('scaleStepG', scaleStepG, 'g', { min: 0.1, max: 10 });
  const steps = ration.items.map(({ gramsPerDay }) => Math.round(gramsPerDay / scaleStepG));
  const energyOf = (index: number): number =>
    (steps[index]! * scaleStepG * ration.items[index]!.kcalPer100g) / 100;
  const total = (): number => steps.reduce((sum, _, index) => sum + energyOf(index), 0);
  const taker = largestFree(ration.items);
  if (taker !== -1) {
    const perStep = (scaleStepG * ration.items[taker]!.kcalPer100g) / 100;
    const missing = Math.round((ration.kcalPerDay - total()) / perStep);
    steps[taker] = Math.max(0, steps[taker]! + missing);
  }
  const items = ration.items.map((item, index) => ({
    name: item.name,
    treat: item.treat,
    gramsPerDay: tidy(steps[index]! * scaleStepG),
    gramsByMeal: item.treat ? [] : gramsByMeal(steps[index]!, ration.mealsPerDay, scaleStepG),
    kcalPerDay: energyOf(index),
  }));
  return { items, kcalPerDay: total() };
}

function largestFree(items: readonly RationItem[]): number {
  let largest = -1;
  items.forEach((item, index) => {
    if (item.treat || item.fixedGrams) return;
    if (largest === -1 || item.gramsPerDay > items[largest]!.gramsPerDay) largest = index;
  });
  return largest;
}

/**
 * Steps of the scale shared over the meals, in grams, the larger meals first.
 * @example gramsByMeal(225, 2) // => [113, 112]
 */
export function gramsByMeal(steps: number, meals: number, scaleStepG = 1): number[] {
  const each = Math.floor(steps / meals);
  const larger = steps - each * meals;
  return Array.from({ length: meals }, (_, meal) =>
    tidy((meal < larger ? each + 1 : each) * scaleStepG),
  );
}

/** Takes the dust off products such as 3 × 0.1. */
function tidy(grams: number): number {
  return Math.round(grams * 1000) / 1000;
}
