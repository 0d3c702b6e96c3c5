import type { IsoDay } from '../day.ts';
import { EPSILON } from './load.ts';
import type { RampWeek, WithinReach } from './types.ts';

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
