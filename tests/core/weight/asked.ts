import { addDays } from '../../../core/day.ts';
import {
  adjustFood,
  estimateMaintenance,
  maintenanceEnergy,
  weightTrend,
  type AdjustFoodInput,
} from '../../../core/nutrition.ts';

export const START = '2026-03-01';
/** A trend over `weights`, one every two weeks. */
export const trendOf = (weights: readonly number[]) =>
  weightTrend(weights.map((weightKg, index) => ({ day: addDays(START, 14 * index), weightKg })));
export const falling = (percentPerWeek: number, count: number, from = 30) =>
  trendOf(Array.from({ length: count }, (_, i) => from * (1 - (percentPerWeek * 2 * i) / 100)));

export const MAINTENANCE = maintenanceEnergy({ weightKg: 30 });

/** A dog of 30 kg on a plan to lose 5 kg. */
export const base: AdjustFoodInput = {
  day: '2026-06-01',
  goal: 'lose',
  weightKg: 30,
  initialWeightKg: 30,
  targetWeightKg: 25,
  bcs: 7,
  onPlan: true,
  currentKcal: 780,
  maintenance: MAINTENANCE,
};
export const ask = (changes: Partial<AdjustFoodInput>) => adjustFood({ ...base, ...changes });
export const codes = (list: readonly { readonly code: string }[]) => list.map(({ code }) => code);

/** The record of a dog that needs `need` kcal a day and was fed 780: weighed every two weeks. */
export function record(need: number, fed = 780) {
  const weighings = Array.from({ length: 9 }, (_, index) => ({
    day: addDays(START, 14 * index),
    weightKg: 30 + ((fed - need) * 14 * index) / 7920,
  }));
  return {
    trend: weightTrend(weighings),
    own: estimateMaintenance({
      prior: maintenanceEnergy({ weightKg: 30 }),
      weighings,
      intakes: [{ fromDay: START, kcalPerDay: fed }],
    }),
  };
}
