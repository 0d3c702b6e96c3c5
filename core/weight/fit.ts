import { lineFrom, momentsOf } from './moments.ts';

export { chiSquare95 } from './moments.ts';

/** One observation on a line, with the standard deviation of its own error. */
export interface Observation {
  readonly x: number;
  readonly y: number;
  readonly sd: number;
  /** Observations of the same group share one unknown offset (a second scale, a harness). */
  readonly group?: string | null;
  /** Standard deviation of that offset. */
  readonly groupSd?: number;
}

/** A straight line through observations, each weighted by its own error. */
export interface LineFit {
  readonly slope: number;
  readonly slopeSd: number;
  /** The line's pivot, where height and slope are independent of one another. */
  readonly meanX: number;
  readonly meanY: number;
  readonly meanSd: number;
  /** Factor by which the errors were widened because the points scatter more than they explain. */
  readonly widened: number;
}

/**
 * Generalised least squares with known errors: independent errors, plus one shared offset for each
 * group. Where the points scatter more than their errors explain (chi-square beyond its 95 %
 * point), the errors are widened by the square root of the reduced chi-square, the usual treatment
 * of inconsistent measurements; they are never narrowed. Widening for less would make the interval
 * of honest weighings hold more than it says. Null when fewer than two different x are given.
 */
export function fitLine(observations: readonly Observation[]): LineFit | null {
  return lineFrom(momentsOf(observations));
}

/** The line's height at `x` and the standard deviation of that height. */
export function lineAt(fit: LineFit, x: number): { readonly y: number; readonly sd: number } {
  const distance = x - fit.meanX;
  const bySlope = fit.slopeSd * distance;
  return {
    y: fit.meanY + fit.slope * distance,
    // Not Math.hypot: these are never near the ends of the number range, and it is many times slower.
    sd: Math.sqrt(fit.meanSd * fit.meanSd + bySlope * bySlope),
  };
}
