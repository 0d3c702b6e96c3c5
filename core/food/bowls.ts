import type { IsoDay } from '../day.ts';
import type { ChangeoverCalendar } from './changeover.ts';
import type { Ration } from './ration.ts';
import { gramsByMeal, weighOut } from './weighOut.ts';

/** What goes into each bowl of a day, treats left out. */
export interface Bowl {
  /** A day of the changeover; null for the ration that stays. */
  readonly day: IsoDay | null;
  readonly foods: readonly {
    readonly name: string;
    /** Whole grams of each meal, the larger first. */
    readonly gramsByMeal: readonly number[];
  }[];
}

/**
 * The bowls of a ration: one entry for each day on which two foods are mixed, in the order of days,
 * and last the ration itself. In the changeover the new food's part is shared with the old one; the
 * other foods stay, after these two.
 * @example
 * bowlsOf(sample.ration, null)
 *   // => [{ day: null, foods: [{ name: 'Dry food', gramsByMeal: [112, 112] }] }]
 */
export function bowlsOf(ration: Ration, changeover: ChangeoverCalendar | null): Bowl[] {
  const foods = weighOut(ration)
    .items.filter(({ treat }) => !treat)
    .map(({ name, gramsByMeal: each }) => ({ name, gramsByMeal: each }));
  const mixed = (changeover?.steps ?? []).filter(({ newPercent }) => newPercent < 100);
  const days = mixed.map(({ day, oldGrams, newGrams }): Bowl => {
    const meal = (name: string, grams: number) => ({
      name,
      gramsByMeal: gramsByMeal(Math.round(grams), ration.mealsPerDay),
    });
    const { oldFood, newFood } = changeover!;
    return {
      day,
      foods: [
        meal(oldFood, oldGrams),
        meal(newFood, newGrams),
        ...foods.filter(({ name }) => name !== newFood),
      ],
    };
  });
  return [...days, { day: null, foods }];
}
