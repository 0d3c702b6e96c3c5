import { whyOutOfLine } from './flagWeighings.ts';
import { measured, toObservation, type Weighing } from './weighing.ts';

/** Weighings looked at on either side: a line is a fair picture of some months, not of a life (D). */
const BESIDE = 6;

/**
 * Why a weighing may be a slip of pen or unit, held against those beside it by the rule of the trend;
 * null where it fits. `weighings` of one dog, oldest first.
 * @throws RangeError when a weight, step, method or day is out of range
 * @example slipAt([...sample.weighings, { day: '2026-04-06', weightKg: 3.8 }], 5)
 *   // => 'far from the other weighings: check for a slip'
 */
export function slipAt(weighings: readonly Weighing[], index: number): string | null {
  const from = Math.max(0, index - BESIDE);
  const points = measured(weighings.slice(from, index + BESIDE + 1));
  return whyOutOfLine(points, points.map(toObservation)).get(index - from) ?? null;
}
