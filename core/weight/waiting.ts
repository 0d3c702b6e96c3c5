import { Z90 } from '../energy/maintenance.ts';
import { fitLine } from './line.ts';
import type { WeightTrend } from './trend.ts';
import { toObservation } from './weighing.ts';

/** Days between the weighings looked ahead to (S: every two weeks until the rate is set). */
const DAYS_APART = 14;
/** Beyond this many weighings nobody should be told a number (D). */
const MOST_WEIGHINGS = 6;

/**
 * How many more weighings, two weeks apart, the rate's 90 % interval needs to shrink to
 * ±`halfWidth` % per week; null when six do not suffice. If the rate stays as it is, that is when a
 * corridor bound that far away is cleared.
 */
export function weighingsUntil(trend: WeightTrend, halfWidth: number): number | null {
  const { fit, points, line } = trend;
  if (fit === null) return null;
  const observations = points.map(toObservation);
  const last = observations.at(-1)!;
  for (let count = 1; count <= MOST_WEIGHINGS; count += 1) {
    observations.push({ x: last.x + count * DAYS_APART, y: last.y, sd: last.sd });
    const longer = fitLine(observations)!;
    // What will be weighed is not known: the scatter so far is taken to go on.
    const slopeSd = (longer.slopeSd / longer.widened) * fit.widened;
    if ((Z90 * slopeSd * 700) / line[0]!.kg < halfWidth) return count;
  }
  return null;
}
