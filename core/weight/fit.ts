import type { MeasuredWeight } from './weighing.ts';

/** A straight line through weighings, each weighted by its own error. */
export interface LineFit {
  /** kg per day. */
  readonly slope: number;
  readonly slopeSd: number;
  /** Weighted mean day and weight, the line's pivot. */
  readonly meanDay: number;
  readonly meanKg: number;
  readonly meanSd: number;
  /** Residual of each weighing in units of its own standard deviation. */
  readonly scaledResiduals: readonly number[];
}

/**
 * Weighted least squares with known errors. Where the points scatter more than their errors
 * explain, the errors are widened by the square root of the reduced chi-square (the usual
 * treatment of inconsistent measurements); they are never narrowed.
 * Null when fewer than two different days are given.
 */
export function fitLine(points: readonly MeasuredWeight[]): LineFit | null {
  let weightSum = 0;
  let daySum = 0;
  let kgSum = 0;
  for (const { dayNumber, weightKg, sdKg } of points) {
    const weight = 1 / (sdKg * sdKg);
    weightSum += weight;
    daySum += weight * dayNumber;
    kgSum += weight * weightKg;
  }
  const meanDay = daySum / weightSum;
  const meanKg = kgSum / weightSum;
  let squares = 0;
  let products = 0;
  for (const { dayNumber, weightKg, sdKg } of points) {
    const weight = 1 / (sdKg * sdKg);
    squares += weight * (dayNumber - meanDay) ** 2;
    products += weight * (dayNumber - meanDay) * (weightKg - meanKg);
  }
  if (!(squares > 1e-12)) return null;
  const slope = products / squares;
  const scaledResiduals = points.map(
    ({ dayNumber, weightKg, sdKg }) => (weightKg - meanKg - slope * (dayNumber - meanDay)) / sdKg,
  );
  const chiSquare = scaledResiduals.reduce((sum, residual) => sum + residual * residual, 0);
  const freedom = points.length - 2;
  const widen = freedom > 0 ? Math.max(1, Math.sqrt(chiSquare / freedom)) : 1;
  return {
    slope,
    slopeSd: widen / Math.sqrt(squares),
    meanDay,
    meanKg,
    meanSd: widen / Math.sqrt(weightSum),
    scaledResiduals,
  };
}

/** The line's weight on a day, kg, and the standard deviation of that value. */
export function lineAt(fit: LineFit, dayNumber: number): { kg: number; sd: number } {
  const distance = dayNumber - fit.meanDay;
  return {
    kg: fit.meanKg + fit.slope * distance,
    sd: Math.hypot(fit.meanSd, fit.slopeSd * distance),
  };
}
