import { inRange, weightInRange } from '../check.ts';
import { figure, type Figure } from '../figure.ts';
import { from } from '../origin.ts';

/** Energy in adipose change, kcal/kg (Hand Table 27-15, S). */
export const KCAL_PER_KG_CHANGE = 7920;

export interface BalanceInput {
  readonly intakeKcalPerDay: number;
  /** Weight change over the days, kg; negative for a loss. */
  readonly changeKg: number;
  readonly days: number;
}

/**
 * Energy the dog spent, kcal/day, from what it ate and how its weight changed:
 * `intake − 7920 × change / days`. The bare balance, without any error: two weighings two weeks
 * apart leave it uncertain by about 200 kcal/day in a 25 kg dog (`balanceSd`).
 *
 * @throws RangeError for intake outside 0–20000 kcal/day, a change beyond 150 kg, or days outside
 *   1–3650
 * @example energyBalance({ intakeKcalPerDay: 900, changeKg: -0.2, days: 14 }) // => 1013.1
 * Source: adipose energy Hand et al. 2010, Table 27-15 (S).
 */
export function energyBalance({ intakeKcalPerDay, changeKg, days }: BalanceInput): number {
  inRange('intakeKcalPerDay', intakeKcalPerDay, 'kcal/day', { min: 0, max: 20000 });
  inRange('changeKg', changeKg, 'kg', { min: -150, max: 150 });
  inRange('days', days, 'days', { min: 1, max: 3650 });
  return intakeKcalPerDay - (KCAL_PER_KG_CHANGE * changeKg) / days;
}

/**
 * Standard deviation of `energyBalance` from two weighings with the error `weighingSdKg` each,
 * kcal/day: `7920 × √2 × sd / days` (C).
 *
 * @throws RangeError for an error outside 0–150 kg or days outside 1–3650
 * @example balanceSd({ weighingSdKg: 0.25, days: 14 }) // => 200.0
 */
export function balanceSd(input: { readonly weighingSdKg: number; readonly days: number }): number {
  inRange('weighingSdKg', input.weighingSdKg, 'kg', { min: 0, max: 150 });
  inRange('days', input.days, 'days', { min: 1, max: 3650 });
  return (KCAL_PER_KG_CHANGE * Math.SQRT2 * input.weighingSdKg) / input.days;
}

/**
 * `energyBalance` as a figure that explains itself.
 * @example
 * energyBalanceFigure({ weightKg: 25, intakeKcalPerDay: 900, changeKg: -0.2, days: 14 }).value
 *   // => 1013.1
 */
export function energyBalanceFigure(input: BalanceInput & { readonly weightKg: number }): Figure {
  weightInRange('weightKg', input.weightKg);
  return figure(energyBalance(input), {
    id: 'energyBalance',
    label: 'Energy spent, by the balance',
    unit: 'kcal/day',
    formula: 'eaten − 7920 × weight change / days',
    inputs: [
      { label: 'Body weight', value: input.weightKg, unit: 'kg' },
      { label: 'Eaten', value: input.intakeKcalPerDay, unit: 'kcal/day' },
      { label: 'Weight change', value: input.changeKg, unit: 'kg' },
      { label: 'Days', value: input.days, unit: 'days' },
    ],
    ...from('C', 'C', 'hand2010', 'arithmetic'),
    notes: ['Early weight loss carries water and gut fill, so the first weeks overstate it.'],
  });
}
