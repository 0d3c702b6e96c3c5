import { changeover, type ChangeoverCalendar, type Ration } from '../../../core/index.ts';
import type { DietItem, FoodSwitch } from '../records.ts';

/** The diet with the new food in the old one's place, in grams of the same energy. */
export function switchedDiet(diet: readonly DietItem[], change: FoodSwitch | null): DietItem[] {
  return diet.map((item) => {
    if (change === null || item.treat || item.name !== change.replaces) return item;
    return {
      ...item,
      name: change.name,
      kcalPer100g: change.kcalPer100g,
      gramsPerDay: (item.gramsPerDay * item.kcalPer100g) / change.kcalPer100g,
      gramsPerCup: null,
      energyFrom: 'declared',
      label: null,
    };
  });
}

/** Day by day from the old food to the new one inside a ration; null where it is not in it. */
export function changeoverFor(
  diet: readonly DietItem[],
  change: FoodSwitch | null,
  ration: Ration | null,
): ChangeoverCalendar | null {
  const oldFood = diet.find((item) => !item.treat && item.name === change?.replaces);
  const fed = ration?.items.find((item) => !item.treat && item.name === change?.name);
  if (change === null || oldFood === undefined || fed === undefined || fed.kcalPerDay < 1) {
    return null;
  }
  return changeover({
    startDay: change.startDay,
    days: change.days,
    kcalPerDay: fed.kcalPerDay,
    oldFood,
    newFood: change,
  });
}
