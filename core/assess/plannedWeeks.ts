import type { IsoDay } from '../day.ts';
import type { Ramp, RampSession, RampWeek } from '../ramp/types.ts';

/** A version of a plan, as far as its weeks are concerned. */
export interface PlanVersion {
  readonly version: number;
  readonly madeOn: IsoDay;
  readonly ramp: Pick<Ramp, 'weeks'>;
}

/**
 * The first day a version speaks for; earlier days belong to the version before it.
 * @example firstDayOf({ ramp: { weeks: [] }, madeOn: '2026-03-01' }) // => '2026-03-01'
 */
export function firstDayOf({ ramp, madeOn }: Omit<PlanVersion, 'version'>): IsoDay {
  return ramp.weeks[0]?.startDay ?? madeOn;
}

/**
 * The weeks as they stood: those of the version in force, before its first day those of the version
 * it took over from, and so on. A week that was broken off keeps the sessions before the change.
 * @example plannedWeeks(sample.plans).length // => 14
 */
export function plannedWeeks(plans: readonly PlanVersion[]): readonly RampWeek[] {
  const newestFirst = [...plans].sort((a, b) => b.version - a.version);
  const found: RampWeek[] = [];
  let until: IsoDay | null = null;
  for (const plan of newestFirst) {
    const limit: IsoDay | null = until;
    found.push(...plan.ramp.weeks.flatMap((week) => (limit === null ? week : cutAt(week, limit))));
    const first = firstDayOf(plan);
    if (until === null || first < until) until = first;
  }
  return found.sort((a, b) => (a.startDay < b.startDay ? -1 : 1));
}

function cutAt(week: RampWeek, until: IsoDay): RampWeek[] {
  const sessions = week.sessions.filter(({ day }) => day < until);
  if (sessions.length === 0) return [];
  if (sessions.length === week.sessions.length) return [week];
  const runMinutes = sessions.reduce((sum, session) => sum + session.runMinutes, 0);
  return [{ ...week, sessions, runMinutes }];
}

/**
 * Every session as it stood on its own day, oldest first.
 * @example
 * plannedSessions(sample.plans).slice(0, 2).map(({ day }) => day)
 *   // => ['2026-03-02', '2026-03-04']
 */
export function plannedSessions(plans: readonly PlanVersion[]): readonly RampSession[] {
  return plannedWeeks(plans).flatMap(({ sessions }) => sessions);
}

/**
 * The week of a plan that `day` falls into; null before it starts and after it ends.
 * @example
 * weekAt(sample.ramp, '2026-03-12')?.number // => 2
 * weekAt(sample.ramp, '2026-03-01') // => null
 */
export function weekAt(ramp: Pick<Ramp, 'weeks'>, day: IsoDay): RampWeek | null {
  const begun = ramp.weeks.filter((week) => week.startDay <= day);
  const week = begun.at(-1);
  if (week === undefined) return null;
  const last = week.sessions.at(-1)?.day ?? week.startDay;
  return begun.length === ramp.weeks.length && day > last ? null : week;
}
