import { inRange, weightInRange } from '../check.ts';
import { estimate, type Estimate } from '../figure.ts';
import { from } from '../origin.ts';

/**
 * Gross metabolic power of level running at steady speed, W per kg:
 * `10.7 M^−0.316 v + 6.03 M^−0.303` (oxygen uptake `0.533 M^−0.316 v + 0.300 M^−0.303` ml/s/kg at
 * 20.1 J per ml, rounded to the coefficients the cost of distance uses too).
 *
 * @param speedMps 0–20 m/s
 * @throws RangeError when weight or speed is out of range
 * @example runningPower({ weightKg: 20, speedMps: 3 }) // => 14.889
 * Source: Taylor, Heglund & Maloiy 1982 (S): 62 species, 90 % within 25 %.
 */
export function runningPower(run: { weightKg: number; speedMps: number }): number {
  weightInRange('weightKg', run.weightKg);
  inRange('speedMps', run.speedMps, 'm/s', { min: 0, max: 20 });
  return 10.7 * run.weightKg ** -0.316 * run.speedMps + 6.03 * run.weightKg ** -0.303;
}

/**
 * `runningPower` as an estimate: 90 % of species lie within 25 % of it.
 * @example
 * runningPowerFigure({ weightKg: 20, speedMps: 3 })
 *   // => { mid: 14.89, low: 11.17, high: 18.61, … }
 */
export function runningPowerFigure(run: { weightKg: number; speedMps: number }): Estimate {
  const power = runningPower(run);
  return estimate(power, 0.75 * power, 1.25 * power, {
    id: 'runningPower',
    label: 'Power while running',
    unit: 'W per kg',
    rangeMeaning: '90 of 100 species',
    formula: '10.7 × kg^−0.316 × m/s + 6.03 × kg^−0.303',
    inputs: [
      { label: 'Body weight', value: run.weightKg, unit: 'kg' },
      { label: 'Speed', value: run.speedMps, unit: 'm/s' },
    ],
    ...from('A', 'S', 'taylor1982'),
    notes: ['Level ground, steady speed; what the dog spends at rest is in it.'],
  });
}
