import { inRange, weightInRange } from '../check.ts';
import { metabolicWeight, restingEnergy } from '../energy/resting.ts';
import { figure, type Figure, type Reason } from '../figure.ts';
import { from } from '../origin.ts';
import { saying } from '../quantityText.ts';

/**
 * kcal per kg^0.75 of target weight below which some nutrient fell short in every ordinary diet
 * tested (Linder 2012, S). Resting energy itself (70) lies below it.
 */
export const NUTRIENT_FLOOR_PER_KG075 = 79;
/** Below this share of RER at target weight nothing is proposed and the dog is referred (D). */
export const REFER_BELOW_RER = 0.8;

/**
 * The nutrient floor of ordinary food, kcal/day. @throws RangeError outside 0.1–150 kg
 * @example nutrientFloor(16) // => 632
 */
export function nutrientFloor(targetWeightKg: number): number {
  weightInRange('targetWeightKg', targetWeightKg);
  return NUTRIENT_FLOOR_PER_KG075 * metabolicWeight(targetWeightKg);
}

/**
 * Least energy the program itself proposes, kcal/day. @throws RangeError outside 0.1–150 kg
 * @example referralFloor(16) // => 448
 */
export function referralFloor(targetWeightKg: number): number {
  weightInRange('targetWeightKg', targetWeightKg);
  return REFER_BELOW_RER * restingEnergy(targetWeightKg);
}

/**
 * `nutrientFloor` as a figure.
 * @example nutrientFloorFigure(16) // => { value: 632, formula: '79 × target kg^0.75', … }
 */
export function nutrientFloorFigure(targetWeightKg: number): Figure {
  return figure(nutrientFloor(targetWeightKg), {
    id: 'nutrientFloor',
    label: 'Nutrient floor of ordinary food',
    unit: 'kcal/day',
    formula: '79 × target kg^0.75',
    inputs: [{ label: 'Target weight', value: targetWeightKg, unit: 'kg' }],
    ...from('A', 'S', 'linder2012'),
    notes: [
      'Below it some nutrient fell short in every ordinary diet tested. A complete diet made for weight loss carries more nutrients for the same energy.',
    ],
  });
}

/**
 * The warning for a ration on ordinary food below the nutrient floor; null when it lies above, or
 * when the food is a complete diet made for weight loss.
 *
 * @throws RangeError for energy outside 0–20000 kcal/day or a weight outside 0.1–150 kg
 * @example
 * nutrientFloorWarning({ kcalPerDay: 600, targetWeightKg: 16 })?.params // => { kcal: 632 }
 * nutrientFloorWarning({ kcalPerDay: 640, targetWeightKg: 16 }) // => null
 * Source: Linder et al. 2012 (S).
 */
export function nutrientFloorWarning(ration: {
  readonly kcalPerDay: number;
  readonly targetWeightKg: number;
  readonly weightLossDiet?: boolean;
}): Reason | null {
  inRange('kcalPerDay', ration.kcalPerDay, 'kcal/day', { min: 0, max: 20000 });
  const floor = nutrientFloor(ration.targetWeightKg);
  if (ration.weightLossDiet === true || ration.kcalPerDay >= floor) return null;
  const kcal = Math.round(floor);
  return {
    code: 'nutrient-floor',
    ...saying(
      `Below {${kcal} kcal} a day ({79 kcal}/kg^0.75 of target weight) ordinary food fell short of some nutrient in every diet tested: use a complete diet made for weight loss, through the vet.`,
    ),
    params: { kcal },
    change: 'A complete diet made for weight loss.',
    ...from('A', 'S', 'linder2012'),
  };
}
