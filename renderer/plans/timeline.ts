import { addDays } from '../../core/day.ts';
import { wasRun, type RampSession, type RampWeek } from '../../core/index.ts';
import type { SessionRecord } from '../../electron/contract/contract.ts';
import { sessionFactsOf } from '../../electron/contract/records/facts.ts';
import type { SessionInput } from '../../electron/contract/records.ts';

/** How far back a session without a result is still asked for. */
const DAYS_ASKED = 60;

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
  const ran = wasRun(result.outcome);
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
  return { ...sessionFactsOf(record), signs: [...record.signs] };
}

/** A first result: nothing told beyond how it went. */
export function outcomeOnly(day: string, outcome: SessionInput['outcome']): SessionInput {
  return {
    day,
    outcome,
    runMinutes: null,
    longestRunMinutes: null,
    runKm: null,
    climbedM: null,
    nextDay: null,
    signs: [],
    note: '',
  };
}

/** Run-minutes done of a planned session; null where it was not told. */
export function minutesDone(session: RampSession, result: SessionInput | null): number | null {
  if (result === null) return null;
  if (!wasRun(result.outcome)) return 0;
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
    // A run that was not planned is a load all the same.
    const unplanned = results
      .filter(({ day }) => week.startDay <= day && day < addDays(week.startDay, 7))
      .filter(({ day }) => !week.sessions.some((session) => session.day === day))
      .map(({ runMinutes }) => runMinutes ?? 0)
      .filter((minutes) => minutes > 0);
    const all = [...told, ...unplanned];
    if (all.length > 0) {
      done.set(
        week.startDay,
        all.reduce((sum, minutes) => sum + minutes, 0),
      );
    }
  }
  return done;
}
