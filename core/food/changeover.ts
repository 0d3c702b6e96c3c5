import { inRange, wholeInRange } from '../check.ts';
import { addDays, dayNumber, type IsoDay } from '../day.ts';
import type { Provenance } from '../figure.ts';
import { from } from '../origin.ts';
import { FOOD_KCAL_RANGE } from './foodChoice.ts';

/** Days over which one food replaces another (M): usual, and the range to choose from. */
export const CHANGEOVER_DAYS = { usual: 10, min: 7, max: 10 } as const;

export const CHANGEOVER_PROVENANCE: Provenance = from('D', 'M', 'commonPractice');

export interface ChangeoverInput {
  readonly startDay: IsoDay;
  /** 7–10; 10 if absent, the gentler end. */
  readonly days?: number;
  /** Energy the two foods give together each day, kcal/day. */
  readonly kcalPerDay: number;
  readonly oldFood: { readonly name: string; readonly kcalPer100g: number };
  readonly newFood: { readonly name: string; readonly kcalPer100g: number };
}

export interface ChangeoverStep {
  readonly day: IsoDay;
  /** Share of the day's energy from the new food, %. */
  readonly newPercent: number;
  readonly oldGrams: number;
  readonly newGrams: number;
}

export interface ChangeoverCalendar extends Provenance {
  readonly oldFood: string;
  readonly newFood: string;
  /** One step a day, in equal rises; the last is the new food alone. */
  readonly steps: readonly ChangeoverStep[];
}

/**
 * Day by day from one food to another at the same energy: the new food's share of the energy rises
 * in equal steps, so that it is fed alone on the last day.
 *
 * @throws RangeError for days outside 7–10, energy outside 1–20000 kcal/day, or a food outside
 *   5–950 kcal per 100 g
 * @example
 * changeover(sample.changeover).steps[4]
 *   // => { day: '2026-03-06', newPercent: 50, oldGrams: 100, newGrams: 120 }
 * Source: 7–10 days, from memory (M); equal steps are our choice (D).
 */
export function changeover(input: ChangeoverInput): ChangeoverCalendar {
  dayNumber(input.startDay, 'startDay');
  const days = wholeInRange('days', input.days ?? CHANGEOVER_DAYS.usual, 'days', CHANGEOVER_DAYS);
  const kcal = inRange('kcalPerDay', input.kcalPerDay, 'kcal/day', { min: 1, max: 20000 });
  const { oldFood, newFood } = input;
  inRange('oldFood.kcalPer100g', oldFood.kcalPer100g, 'kcal per 100 g', FOOD_KCAL_RANGE);
  inRange('newFood.kcalPer100g', newFood.kcalPer100g, 'kcal per 100 g', FOOD_KCAL_RANGE);
  const steps = Array.from({ length: days }, (_, index): ChangeoverStep => {
    const share = (index + 1) / days;
    return {
      day: addDays(input.startDay, index),
      newPercent: 100 * share,
      oldGrams: (100 * kcal * (1 - share)) / oldFood.kcalPer100g,
      newGrams: (100 * kcal * share) / newFood.kcalPer100g,
    };
  });
  return { oldFood: oldFood.name, newFood: newFood.name, steps, ...CHANGEOVER_PROVENANCE };
}
