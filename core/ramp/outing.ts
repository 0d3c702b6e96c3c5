import type { Programme, Ramp, RampSession, RampWeek } from './types.ts';

/**
 * What a plan trains; plans of older releases hold running only.
 * @example programmeOf(sample.walks) // => 'walking'
 */
export function programmeOf({ request }: Pick<Ramp, 'request'>): Programme {
  return request.programme ?? 'running';
}

/**
 * Outings a week: as asked for; of a walking programme, those of its rule.
 * @example
 * sessionsAWeek(sample.ramp) // => 3
 * sessionsAWeek(sample.walks) // => 5
 */
export function sessionsAWeek(ramp: Pick<Ramp, 'request' | 'rules'>): number {
  return programmeOf(ramp) === 'walking' ? ramp.rules.walkDays : ramp.request.sessionsPerWeek;
}

/**
 * Minutes of the whole outing: warm-up, bouts with the walks after them, cool-down.
 * @example outingMinutes(sample.session) // => 36
 */
export function outingMinutes(session: RampSession): number {
  const { warmUpMin, repeats, runMin, walkMin, coolDownMin } = session;
  return warmUpMin + repeats * (runMin + walkMin) + coolDownMin;
}

/**
 * The week that a step back from a week leads to, as `reviewRamp` takes it: the last building week
 * before the present one that asks for no more. Null where the plan does not hold it, and in plans of
 * older releases.
 * @param weeks of a plan, oldest first
 * @example stepBackWeek(sample.ramp.weeks, 4) // => 3
 */
export function stepBackWeek(weeks: readonly RampWeek[], index: number): number | null {
  const last = weeks.slice(0, index + 1).findLast(({ rung }) => rung !== undefined);
  if (last === undefined) return null;
  const back = weeks.findLast(
    (week) =>
      week.rung !== undefined &&
      week.rung < last.rung! &&
      week.runMinutes <= last.runMinutes &&
      longestOf(week) <= longestOf(last),
  );
  return back?.number ?? null;
}

const longestOf = ({ sessions }: RampWeek): number =>
  Math.max(0, ...sessions.map(({ runMinutes }) => runMinutes));

/** What the days between the runs hold: walks a week and their minutes, days with strength (CP). */
export const BETWEEN_RUNS = {
  walks: 2,
  walkMinutes: { low: 20, high: 30 },
  strengthDays: { low: 2, high: 3 },
} as const;
