import { addDays } from '../../core/day.ts';
import type { RampSession, RampWeek } from '../../core/index.ts';
import type { Plan, SessionRecord } from '../../electron/contract/contract.ts';
import type { SessionInput } from '../../electron/contract/records.ts';

/** How far back a session without a result is still asked for. */
const DAYS_ASKED = 60;

/** The first day a version speaks for; earlier days belong to the version before it. */
export function firstDayOf(plan: Pick<Plan, 'ramp' | 'madeOn'>): string {
  return plan.ramp.weeks[0]?.startDay ?? plan.madeOn;
}

/**
 * The weeks as they stood: those of the version in force, before its first day those of the version
 * it took over from, and so on. A week that was broken off keeps the sessions before the change.
 */
export function plannedWeeks(plans: readonly Plan[]): readonly RampWeek[] {
  const newestFirst = [...plans].sort((a, b) => b.version - a.version);
  const found: RampWeek[] = [];
  let until: string | null = null;
  for (const plan of newestFirst) {
    const limit: string | null = until;
    found.push(...plan.ramp.weeks.flatMap((week) => (limit === null ? week : cutAt(week, limit))));
    const first = firstDayOf(plan);
    if (until === null || first < until) until = first;
  }
  return found.sort((a, b) => (a.startDay < b.startDay ? -1 : 1));
}

function cutAt(week: RampWeek, until: string): RampWeek[] {
  const sessions = week.sessions.filter(({ day }) => day < until);
  if (sessions.length === 0) return [];
  if (sessions.length === week.sessions.length) return [week];
  const runMinutes = sessions.reduce((sum, session) => sum + session.runMinutes, 0);
  return [{ ...week, sessions, runMinutes }];
}

/** Every session as it stood on its own day, oldest first. */
export function plannedSessions(plans: readonly Plan[]): readonly RampSession[] {
  return plannedWeeks(plans).flatMap(({ sessions }) => sessions);
}

/** A session and what was told of it. */
export interface ToldSession {
  readonly session: RampSession;
  readonly result: SessionInput | null;
}

/** What still has to be asked of a session: how it went, or how the next day was. */
export type Asked = 'outcome' | 'next day' | null;

export function askedOf({ session, result }: ToldSession, today: string): Asked {
  if (session.day > today) return null;
  if (result === null) return 'outcome';
  const ran = result.outcome !== 'missed';
  return ran && result.nextDay === null && session.day < today ? 'next day' : null;
}

/** Sessions up to today with their results, oldest first, as far back as it is of use to ask. */
export function toldSessions(
  planned: readonly RampSession[],
  results: readonly SessionInput[],
  today: string,
): readonly ToldSession[] {
  const byDay = new Map(results.map((result) => [result.day, result]));
  const earliest = addDays(today, -DAYS_ASKED);
  return planned
    .filter(({ day }) => day <= today && (day >= earliest || byDay.has(day)))
    .map((session) => ({ session, result: byDay.get(session.day) ?? null }));
}

/** The part of a stored result that is sent back when it is changed. */
export function inputOf(record: SessionInput | SessionRecord): SessionInput {
  const { day, outcome, runMinutes, nextDay, signs, note } = record;
  return { day, outcome, runMinutes, nextDay, signs: [...signs], note };
}

/** A first result: nothing told beyond how it went. */
export function outcomeOnly(day: string, outcome: SessionInput['outcome']): SessionInput {
  return { day, outcome, runMinutes: null, nextDay: null, signs: [], note: '' };
}

/** Run-minutes done of a planned session; null where it was not told. */
export function minutesDone(session: RampSession, result: SessionInput | null): number | null {
  if (result === null) return null;
  if (result.outcome === 'missed') return 0;
  if (result.runMinutes !== null) return result.runMinutes;
  return result.outcome === 'done' ? session.runMinutes : null;
}

/** Run-minutes done in each week, by its first day; weeks without any result are left out. */
export function doneByWeek(
  weeks: readonly RampWeek[],
  results: readonly SessionInput[],
): ReadonlyMap<string, number> {
  const byDay = new Map(results.map((result) => [result.day, result]));
  const done = new Map<string, number>();
  for (const week of weeks) {
    const told = week.sessions
      .map((session) => minutesDone(session, byDay.get(session.day) ?? null))
      .filter((minutes) => minutes !== null);
    if (told.length > 0) {
      done.set(
        week.startDay,
        told.reduce((sum, minutes) => sum + minutes, 0),
      );
    }
  }
  return done;
}
