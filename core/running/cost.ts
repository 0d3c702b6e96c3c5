import { inRange, weightInRange } from '../check.ts';
import { estimate, type Estimate } from '../figure.ts';
import { from } from '../origin.ts';
import { KJ_PER_KCAL } from '../units.ts';

/** Speed-proportional cost of distance, J/m = 10.7 × kg^0.684 (C from Taylor et al. 1982). */
const COST_COEFFICIENT = 10.7;
const COST_EXPONENT = 0.684;
/** Of 62 species 90 % lay within 25 % of the formula (Taylor et al. 1982, S). */
const FORMULA_SPREAD = 0.25;
/**
 * Net cost measured in dogs over 20 kg, J/kg/m: northern breeds, retrievers, hounds (Bryce &
 * Williams 2017, S). The formula lies above all three in such dogs, so they set the low end.
 */
export const MEASURED_RUNNING_COST = { northern: 2.1, retriever: 3.0, hound: 3.4 } as const;
const MEASURED_FROM_KG = 20;
/** Uphill at the best efficiency of 28 %, J/kg per metre climbed (S/C). */
const CLIMB_J_PER_KG_M = 35;

const kcal = (joule: number): number => joule / (KJ_PER_KCAL * 1000);

/**
 * Energy of a run above rest, kcal: distance by the speed-proportional term plus climbing. The
 * range is the formula's own spread of 25 %, carried down to the least cost measured in dogs where
 * dogs were measured, from 20 kg on.
 *
 * @param distanceKm 0–200 km
 * @param climbM metres climbed, 0–10000 (default 0)
 * @throws RangeError when a number is out of range
 * @example runningCost({ weightKg: 20, distanceKm: 1 }).mid // => 19.8
 * Sources: Taylor et al. 1982 (C from S), Bryce & Williams 2017 (S), uphill efficiency 28 % (S/C).
 */
export function runningCost(run: {
  weightKg: number;
  distanceKm: number;
  climbM?: number;
}): Estimate {
  const { weightKg, distanceKm, climbM = 0 } = run;
  weightInRange('weightKg', weightKg);
  inRange('distanceKm', distanceKm, 'km', { min: 0, max: 200 });
  inRange('climbM', climbM, 'm', { min: 0, max: 10000 });
  const metres = distanceKm * 1000;
  const level = COST_COEFFICIENT * weightKg ** COST_EXPONENT * metres;
  const climb = CLIMB_J_PER_KG_M * weightKg * climbM;
  const measured = ({ northern, hound }: typeof MEASURED_RUNNING_COST) =>
    weightKg < MEASURED_FROM_KG ? [] : [northern, hound].map((cost) => cost * weightKg * metres);
  const costs = [level * (1 - FORMULA_SPREAD), level * (1 + FORMULA_SPREAD)];
  const ends = [...costs, ...measured(MEASURED_RUNNING_COST)];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  return estimate(kcal(level + climb), kcal(low + climb), kcal(high + climb), {
    id: 'runningCost',
    label: 'Energy of the run',
    unit: 'kcal',
    rangeMeaning: 'spread of the formula, and the costs measured in dogs',
    formula: '10.7 × kg^0.684 J per metre + 35 J/kg per metre climbed',
    inputs: [
      { label: 'Body weight', value: weightKg, unit: 'kg' },
      { label: 'Distance', value: distanceKm, unit: 'km' },
      { label: 'Climb', value: climbM, unit: 'm' },
    ],
    ...from('A', 'C', 'taylor1982', 'bryce2017', 'climbEfficiency'),
    notes: ['Above what the dog spends at rest; walking counts as daily activity.'],
  });
}
