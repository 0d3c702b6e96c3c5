import { inRange } from '../check.ts';
import { estimate, type Estimate } from '../figure.ts';
import { metabolicWeight } from './resting.ts';

/** kcal per kg^0.75 and day of an active adult in the growth equation. */
const ADULT_COEFFICIENT = 130;

/**
 * Multiple of adult energy at the share `p` of adult weight: `3.2 × (e^(−0.87 p) − 0.1)`.
 * @example growthMultiple(0.43) // => 1.9
 */
export function growthMultiple(p: number): number {
  inRange('p', p, 'of adult weight', { min: 0.001, max: 1 });
  return 3.2 * (Math.exp(-0.87 * p) - 0.1);
}

/**
 * Energy of a growing dog, kcal/day: `130 × W^0.75 × 3.2 × (e^(−0.87 p) − 0.1)`, p = weight / adult
 * weight. A puppy above its expected adult weight counts as grown (p = 1).
 *
 * @throws RangeError for weights outside 0.1–150 kg (adult from 0.5 kg)
 * @example growthEnergy({ weightKg: 9, adultWeightKg: 30 }) // => 1448.9
 * Source: NRC 2006 growth equation (S); FEDIAF 2021 prints its multiples 2.1, 1.6, 1.3 (S).
 */
export function growthEnergy(dog: { weightKg: number; adultWeightKg: number }): number {
  inRange('adultWeightKg', dog.adultWeightKg, 'kg', { min: 0.5, max: 150 });
  const p = Math.min(1, dog.weightKg / dog.adultWeightKg);
  return ADULT_COEFFICIENT * metabolicWeight(dog.weightKg) * growthMultiple(p);
}

/** kcal per kg^0.75 up to this share of the adult weight (FEDIAF, S). */
const FEDIAF_STEPS = [
  { upTo: 0.5, kcal: 210 },
  { upTo: 0.8, kcal: 175 },
  { upTo: 1, kcal: 140 },
] as const;
/** Adults from this weight on are fed by the NRC equation while they grow, lighter ones by the steps (D). */
const NRC_FROM_ADULT_KG = 23;

/**
 * Energy of a growing dog by FEDIAF's three steps, kcal/day: 210, 175 and 140 kcal/kg^0.75 below half,
 * up to four fifths and over four fifths of its adult weight. Lower than the NRC equation while young.
 * @throws RangeError for weights outside 0.1–150 kg (adult from 0.5 kg)
 * @example growthEnergyBySteps({ weightKg: 4, adultWeightKg: 10 }) // => 594.0
 * Source: FEDIAF, printed in a veterinary nursing journal (S).
 */
export function growthEnergyBySteps(dog: { weightKg: number; adultWeightKg: number }): number {
  inRange('adultWeightKg', dog.adultWeightKg, 'kg', { min: 0.5, max: 150 });
  const share = dog.weightKg / dog.adultWeightKg;
  const [young, middle, late] = FEDIAF_STEPS;
  const step = share < young.upTo ? young : share <= middle.upTo ? middle : late;
  return step.kcal * metabolicWeight(dog.weightKg);
}

/**
 * The energy of a growing dog as an estimate, by the steps for a dog that stays under 23 kg, else by
 * the equation; the range is the spread between dogs, see maintenance energy.
 * @example
 * growthEstimate({ weightKg: 4, adultWeightKg: 10 }, 1.5)
 *   // => { mid: 594.0, low: 396.0, high: 891.0, … }
 */
export function growthEstimate(
  dog: { weightKg: number; adultWeightKg: number },
  spread: number,
): Estimate {
  const bySteps = dog.adultWeightKg < NRC_FROM_ADULT_KG;
  const mid = bySteps ? growthEnergyBySteps(dog) : growthEnergy(dog);
  return estimate(mid, mid / spread, mid * spread, {
    id: 'growthEnergy',
    label: 'Energy while growing',
    unit: 'kcal/day',
    rangeMeaning: '90 of 100 dogs, taking the spread measured in adult pets',
    formula: bySteps
      ? '210 × kg^0.75 below half of the adult weight, 175 up to four fifths, then 140'
      : '130 × kg^0.75 × 3.2 × (e^(−0.87 p) − 0.1), p = weight / adult weight',
    inputs: [
      { label: 'Body weight', value: dog.weightKg, unit: 'kg' },
      { label: 'Expected adult weight', value: dog.adultWeightKg, unit: 'kg' },
    ],
    evidence: 'C',
    mark: 'S',
    sources: bySteps
      ? ['fediafGrowthSteps', 'ownDecision', 'lmuThesis']
      : ['nrcGrowth', 'fediaf2021', 'lmuThesis'],
    notes: ['Growth rate and body condition decide, not this number: weigh often.'],
  });
}
