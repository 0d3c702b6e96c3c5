import { inRange, wholeInRange } from '../check.ts';
import { addDays, type IsoDay } from '../day.ts';
import type { RampRuleValues } from '../rules/ramp.ts';
import type { RecentRun } from './types.ts';

/** Room for rounding in floating point, minutes. */
export const EPSILON = 1e-9;

/**
 * The most run-minutes of one session: 10 % over the longest of the last 30 days, or 2 min over
 * it, whichever is more.
 * Source: Frandsen et al. 2025 (S, runners) for the 10 % and the 30 days; the 2 min are ours (D).
 * @example sessionCap(30, rampRuleValues()) // => 33
 */
export function sessionCap(longest: number, rules: RampRuleValues): number {
  const byPercent = longest * (1 + rules.sessionRisePercent / 100);
  return Math.max(byPercent, longest + rules.sessionStepMinutes);
}

/**
 * Run-minutes of the longest run in the days up to, not including, `day`; 0 where there is none.
 * @example
 * longestBefore(
 *   [{ day: '2026-03-02', minutes: 12, response: 'clean' }],
 *   '2026-03-04',
 *   rampRuleValues(),
 * ) // => 12
 */
export function longestBefore(
  runs: readonly RecentRun[],
  day: IsoDay,
  { sessionWindowDays }: RampRuleValues,
): number {
  const since = addDays(day, -sessionWindowDays);
  const within = runs.filter((run) => run.day >= since && run.day < day);
  return Math.max(0, ...within.map(({ minutes }) => minutes));
}

/**
 * The most run-minutes of a building week: `capPercent` over the highest earlier whole week. While
 * that week is short, a small step more is allowed even where it exceeds the cap, as long as it
 * leads no further than the end of the short range.
 * @example weekCap(40, 10, rampRuleValues()) // => 44
 */
export function weekCap(peak: number, capPercent: number, rules: RampRuleValues): number {
  const byPercent = peak * (1 + capPercent / 100);
  if (peak >= rules.shortWeekMinutes) return byPercent;
  const smallStep = Math.min(peak + rules.smallStepMinutes, rules.shortWeekMinutes);
  return Math.max(byPercent, smallStep);
}

/**
 * The plain weekly progression, run-minutes a week, without bouts: each week rises by `capPercent`
 * over the highest earlier one; every `recoveryEvery`th holds `recoveryPercent` of the week before,
 * then it goes on from the earlier peak. Not rounded.
 *
 * @throws RangeError for startMinutes outside 1–600 min, capPercent 5–30 %, weeks 1–520,
 *   recoveryEvery 2–12 weeks, recoveryPercent 10–100 %.
 * @example
 * weeklyMinutes({ startMinutes: 20, capPercent: 10, weeks: 5 }) // => [20, 22, 24.2, 16.94, 26.62]
 */
export function weeklyMinutes(input: {
  readonly startMinutes: number;
  readonly capPercent: number;
  readonly weeks: number;
  readonly recoveryEvery?: number;
  readonly recoveryPercent?: number;
}): number[] {
  const { recoveryEvery = 4, recoveryPercent = 70 } = input;
  inRange('startMinutes', input.startMinutes, 'min', { min: 1, max: 600 });
  inRange('capPercent', input.capPercent, '%', { min: 5, max: 30 });
  wholeInRange('weeks', input.weeks, 'weeks', { min: 1, max: 520 });
  wholeInRange('recoveryEvery', recoveryEvery, 'weeks', { min: 2, max: 12 });
  inRange('recoveryPercent', recoveryPercent, '%', { min: 10, max: 100 });
  const minutes = [input.startMinutes];
  let peak = input.startMinutes;
  for (let number = 2; number <= input.weeks; number += 1) {
    const recovery = number % recoveryEvery === 0;
    const next = recovery
      ? (minutes.at(-1)! * recoveryPercent) / 100
      : peak * (1 + input.capPercent / 100);
    peak = Math.max(peak, next);
    minutes.push(next);
  }
  return minutes;
}
