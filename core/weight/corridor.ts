import { addDays, type IsoDay } from '../day.ts';
import { weightInRange } from '../check.ts';

/** Loss aimed at and allowed, % of the initial weight per week (Hand 5th ed.; Clinician's Brief, S). */
export const LOSS_AIM_PERCENT = 1;
export const LOSS_MIN_PERCENT = 0.5;
export const LOSS_MAX_PERCENT = 2;
/** Typical at home, % per week (SciELO 2005, S). */
export const LOSS_TYPICAL_PERCENT = 0.75;

/** The weights between which a weight-loss plan should run on a day, kg. */
export interface CorridorPoint {
  readonly day: IsoDay;
  /** Losing at the slowest allowed rate. */
  readonly high: number;
  readonly aim: number;
  /** Losing at the fastest allowed rate. */
  readonly low: number;
}

/**
 * The corridor of a weight-loss plan, week by week, from its first weighing until the slowest rate
 * meets the target: 0.5–2 % of the *initial* weight per week, aim 1 %.
 * @throws RangeError for weights outside 0.1–150 kg
 * @example lossCorridor({ startDay: '2026-03-02', initialKg: 40, targetKg: 34 })[1]
 *   // => { day: '2026-03-09', high: 39.8, aim: 39.6, low: 39.2 }
 * Source: Hand et al. 2010 pp. 522, 532 (S); no dog trial stands behind the 2 %.
 */
export function lossCorridor(plan: {
  readonly startDay: IsoDay;
  readonly initialKg: number;
  readonly targetKg: number;
}): CorridorPoint[] {
  const { startDay, initialKg, targetKg } = plan;
  weightInRange('initialKg', initialKg);
  weightInRange('targetKg', targetKg);
  const slowest = weeksToTarget(initialKg, targetKg, LOSS_MIN_PERCENT);
  const weeks = Math.max(0, Math.ceil(slowest));
  const at = (percent: number, week: number): number =>
    Math.max(targetKg, initialKg * (1 - (percent * week) / 100));
  return Array.from({ length: weeks + 1 }, (_, week) => ({
    day: addDays(startDay, week * 7),
    high: at(LOSS_MIN_PERCENT, week),
    aim: at(LOSS_AIM_PERCENT, week),
    low: at(LOSS_MAX_PERCENT, week),
  }));
}

/**
 * Weeks to the target at a rate in % of the initial weight per week (Hand Box 27-12, S).
 * @example weeksToTarget(40, 34, 1) // => 15
 */
export function weeksToTarget(initialKg: number, targetKg: number, percentPerWeek: number): number {
  return Math.max(0, (initialKg - targetKg) / ((percentPerWeek / 100) * initialKg));
}
