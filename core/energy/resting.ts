import { weightInRange } from '../check.ts';
import { figure, type Figure } from '../figure.ts';
import { from } from '../origin.ts';

/** kcal per kg^0.75 and day. */
export const RESTING_COEFFICIENT = 70;
/** Exponent of metabolic body size. */
export const METABOLIC_EXPONENT = 0.75;

/**
 * Metabolic body size, kg^0.75.
 * @example metabolicWeight(16) // => 8
 */
export function metabolicWeight(weightKg: number): number {
  return weightInRange('weightKg', weightKg) ** METABOLIC_EXPONENT;
}

/**
 * Resting energy requirement (RER), kcal/day: `70 × kg^0.75`, any body weight.
 *
 * The linear form `30 × kg + 70` is up to 16.8 % high at 45 kg and is not used.
 *
 * @param weightKg body weight, 0.1–150 kg
 * @throws RangeError when the weight is out of range
 * @example restingEnergy(20) // => 662.0
 * Source: Hand et al. 2010, Table 5-2 (S); Kleiber and NRC 2006 alike (from memory).
 */
export function restingEnergy(weightKg: number): number {
  return RESTING_COEFFICIENT * metabolicWeight(weightKg);
}

/**
 * `restingEnergy` as a figure that explains itself.
 * @example
 * restingEnergyFigure(20) // => { value: 662.0, unit: 'kcal/day', formula: '70 × kg^0.75', … }
 */
export function restingEnergyFigure(weightKg: number): Figure {
  return figure(restingEnergy(weightKg), {
    id: 'restingEnergy',
    label: 'Resting energy requirement',
    unit: 'kcal/day',
    formula: '70 × kg^0.75',
    inputs: [{ label: 'Body weight', value: weightKg, unit: 'kg' }],
    ...from('C', 'S', 'hand2010', 'kleiber1961', 'nrc2006'),
    notes: [
      'The energy a resting dog spends in a day. A real dog eats more: see maintenance energy.',
    ],
  });
}
