import type { IsoDay } from '../day.ts';
import type { RuleChanges } from '../rules/all.ts';
import { readinessRuleValues } from '../rules/readiness.ts';
import { EPSILON } from './load.ts';
import { goalMinutes } from './request.ts';
import { isClean, readDone, type Done } from './done.ts';
import { programmeOf } from './outing.ts';
import type { SessionResult } from './reviewTypes.ts';
import type { Ramp, RampWeek, WithinReach } from './types.ts';

/** Walks of the full length in one week that make the walk base (D). */
const WALK_BASE_TIMES = 2;

/**
 * The day of the first run without a break that meets the goal; of a walking programme the day of
 * the second full walk of a week.
 */
export function goalDayOf(weeks: readonly RampWeek[], goal: number): IsoDay | null {
  for (const { sessions } of weeks) {
    const walks = sessions.filter(
      ({ kind, runMinutes }) => kind === 'walk' && runMinutes >= goal - EPSILON,
    );
    const tested = walks[WALK_BASE_TIMES - 1];
    if (tested !== undefined) return tested.day;
    const met = sessions.find(
      ({ kind, runMinutes }) => kind === 'continuous' && runMinutes >= goal - EPSILON,
    );
    if (met !== undefined) return met.day;
  }
  return null;
}

/**
 * What a walking programme builds up to: the minutes of the walk base.
 * @example walkBaseGoal() // => { continuousMinutes: 30 }
 */
export function walkBaseGoal(rules: RuleChanges = {}): { readonly continuousMinutes: number } {
  return { continuousMinutes: readinessRuleValues(rules).walkBaseMinutes };
}

/** The days of the walks that make the walk base: of full length, in one week, sound and clear after. */
export function walkBaseOf({ due }: Done, goal: number): readonly [IsoDay, IsoDay] | null {
  const full = due.filter(
    (entry) => entry.session.kind === 'walk' && entry.minutes >= goal - EPSILON && isClean(entry),
  );
  for (const [index, { weekIndex, session }] of full.entries()) {
    const next = full[index + WALK_BASE_TIMES - 1];
    if (next?.weekIndex === weekIndex) return [session.day, next.session.day];
  }
  return null;
}

/**
 * The days of the two walks by which a walking programme passed the walk base; null while it did
 * not, and for a running plan. Results of days that the plan does not hold are left aside.
 * @throws RangeError for words that are not on the lists
 * @example walkBaseWalked(sample.walks, [
 *   { day: '2026-03-30', outcome: 'done', nextDay: 'normal' },
 *   { day: '2026-03-31', outcome: 'done', nextDay: 'normal' },
 * ]) // => ['2026-03-30', '2026-03-31']
 */
export function walkBaseWalked(
  ramp: Ramp,
  results: readonly SessionResult[],
): readonly [IsoDay, IsoDay] | null {
  if (programmeOf(ramp) !== 'walking') return null;
  const days = new Set(ramp.weeks.flatMap(({ sessions }) => sessions.map(({ day }) => day)));
  const told = results.filter(({ day }) => days.has(day));
  return walkBaseOf(readDone({ ramp, results: told }), goalMinutes(ramp.request.goal));
}

/** What the longest session of a plan comes to. */
export function withinReachOf(weeks: readonly RampWeek[], pace: number | null): WithinReach {
  const sessions = weeks.flatMap((week) => week.sessions);
  const longest = (minutes: readonly number[]): number => Math.max(0, ...minutes);
  const km = (minutes: number): number | null => (pace === null ? null : minutes / pace);
  const continuousMinutes = longest(
    sessions.filter(({ kind }) => kind === 'continuous').map(({ runMinutes }) => runMinutes),
  );
  const sessionMinutes = longest(sessions.map(({ runMinutes }) => runMinutes));
  return {
    continuousMinutes,
    distanceKm: km(continuousMinutes),
    sessionMinutes,
    sessionKm: km(sessionMinutes),
  };
}
