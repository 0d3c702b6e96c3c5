import { inRange, weightInRange } from '../check.ts';
import { estimate, type Estimate } from '../figure.ts';
import { metabolicWeight } from './resting.ts';

/** kcal per kg^0.75 and day of an active adult in the growth equation. */
const ADULT_COEFFICIENT = 130;

/** Multiple of adult energy at the share `p` of adult weight: `3.2 × (e^(−0.87 p) − 0.1)`. */
export function growthMultiple(p: number): number {
  inRange('p', p, 'of adult weight', { min: 0.001, max: 1 });
  return 3.2 * (Math.exp(-0.87 * p) - 0.1);
}

/**
 * Energy of a growing dog, kcal/day: `130 × W^0.75 × 3.2 × (e^(−0.87 p) − 0.1)`, p = weight / adult
 * weight. A puppy above its expected adult weight counts as grown (p = 1).
 *
 * @throws RangeError for weights outside 0.1–150 kg (adult from 0.5 kg)
 * @example growthEnergy({ weightKg: 9, adultWeightKg: 30 }) // 1449, multiple 2.145
 * Source: NRC 2006 growth equation (S); FEDIAF 2021 prints its multiples 2.1, 1.6, 1.3 (S).
 */
export function growthEnergy(dog: { weightKg: number; adultWeightKg: number }): number {
  weightInRange('weightKg', dog.weightKg);
  inRange('adultWeightKg', dog.adultWeightKg, 'kg', { min: 0.5, max: 150 });
  const p = Math.min(1, dog.weightKg / dog.adultWeightKg);
  return ADULT_COEFFICIENT * metabolicWeight(dog.weightKg) * growthMultiple(p);
}

/** `growthEnergy` as an estimate; the range is the spread between dogs, see maintenance energy. */
export function growthEstimate(
  dog: { weightKg: number; adultWeightKg: number },
  spread: number,
): Estimate {
  const mid = growthEnergy(dog);
  return estimate(mid, mid / spread, mid * spread, {
    id: 'growthEnergy',
    label: 'Energy while growing',
    unit: 'kcal/day',
    rangeMeaning: '90 of 100 dogs, taking the spread measured in adult pets',
    formula: '130 × kg^0.75 × 3.2 × (e^(−0.87 p) − 0.1), p = weight / adult weight',
    inputs: [
      { label: 'Body weight', value: dog.weightKg, unit: 'kg' },
      { label: 'Expected adult weight', value: dog.adultWeightKg, unit: 'kg' },
    ],
    evidence: 'C',
    mark: 'S',
    sources: ['nrcGrowth', 'fediaf2021', 'lmuThesis'],
    notes: ['Growth rate and body condition decide, not this number: weigh often.'],
  });
}
