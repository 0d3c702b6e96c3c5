import type { IsoDay } from '../day.ts';
import { EPSILON } from './load.ts';
import type { RampWeek, WithinReach } from './types.ts';

/** The day of the first run without a break that meets the goal. */
export function goalDayOf(weeks: readonly RampWeek[], goal: number): IsoDay | null {
  for (const { sessions } of weeks) {
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
