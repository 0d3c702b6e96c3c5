import { addDays, daysBetween, type IsoDay } from '../day.ts';
import type { RampDiff, RampDifference } from './reviewTypes.ts';
import type { Ramp, RampSession } from './types.ts';

/** A session moved by no more days than this is shown as moved, not as removed and added. */
const MOVED_WITHIN_DAYS = 6;

const inWords = ({ kind, repeats, runMin, walkMin }: RampSession): string => {
  const run = `${Number(runMin.toFixed(1))} min`;
  return kind === 'continuous'
    ? `${run} without a break`
    : `${repeats} × (${run} run, ${Number(walkMin.toFixed(1))} min walk)`;
};

function sessionsFrom(ramp: Ramp, fromDay: IsoDay): RampSession[] {
  return ramp.weeks.flatMap(({ sessions }) => sessions).filter(({ day }) => day >= fromDay);
}

/**
 * What differs between two versions of a plan, from the newer one's first day on: sessions added,
 * removed, changed or moved; run-minutes by calendar week; goal day, cap and rules.
 * @example
 * diffRamps(
 *   sample.ramp,
 *   editRamp(sample.ramp, [{ kind: 'remove', day: '2026-03-04' }]),
 * ).sessions[0] // => { day: '2026-03-04', kind: 'removed', before: '4 × (1 min run, 3 min walk)', … }
 */
export function diffRamps(before: Ramp, after: Ramp, fromDay?: IsoDay): RampDiff {
  const first = fromDay ?? after.request.startDay;
  const old = sessionsFrom(before, first);
  const recent = sessionsFrom(after, first);
  return {
    fromDay: first,
    sessions: sessionDifferences(old, recent),
    goalReachedOn: { before: before.goalReachedOn, after: after.goalReachedOn },
    capPercent: { before: before.capPercent, after: after.capPercent },
    weeks: weekTotals(old, recent, first),
    rules: ruleDifferences(before, after),
  };
}

/** A plan kept by an older release may lack a rule; it then shows as unchanged. */
function ruleDifferences(before: Ramp, after: Ramp): RampDiff['rules'] {
  const old: Readonly<Record<string, number | undefined>> = before.rules;
  return Object.entries(after.rules).flatMap(([id, value]) => {
    const earlier = old[id];
    return earlier === undefined || earlier === value
      ? []
      : [{ id, before: earlier, after: value }];
  });
}

function sessionDifferences(
  old: readonly RampSession[],
  recent: readonly RampSession[],
): RampDifference[] {
  const oldByDay = new Map(old.map((session) => [session.day, session]));
  const recentByDay = new Map(recent.map((session) => [session.day, session]));
  const removed = old.filter(({ day }) => !recentByDay.has(day));
  const added = recent.filter(({ day }) => !oldByDay.has(day));
  const differences: RampDifference[] = [];
  for (const session of recent) {
    const earlier = oldByDay.get(session.day);
    if (earlier === undefined || inWords(earlier) === inWords(session)) continue;
    differences.push(difference('changed', session.day, earlier, session));
  }
  for (const session of added) {
    const index = removed.findIndex(
      (other) =>
        inWords(other) === inWords(session) &&
        Math.abs(daysBetween(other.day, session.day)) <= MOVED_WITHIN_DAYS,
    );
    const [origin] = index === -1 ? [] : removed.splice(index, 1);
    if (origin === undefined) differences.push(difference('added', session.day, null, session));
    else {
      const moved = difference('moved', session.day, origin, session);
      differences.push({ ...moved, fromDay: origin.day });
    }
  }
  for (const session of removed) {
    differences.push(difference('removed', session.day, session, null));
  }
  return differences.sort((a, b) => (a.day < b.day ? -1 : 1));
}

function difference(
  kind: RampDifference['kind'],
  day: IsoDay,
  before: RampSession | null,
  after: RampSession | null,
): RampDifference {
  return {
    day,
    kind,
    before: before === null ? null : inWords(before),
    after: after === null ? null : inWords(after),
    minutesBefore: before?.runMinutes ?? 0,
    minutesAfter: after?.runMinutes ?? 0,
  };
}

function weekTotals(
  old: readonly RampSession[],
  recent: readonly RampSession[],
  fromDay: IsoDay,
): RampDiff['weeks'] {
  const days = [...old, ...recent].map(({ day }) => daysBetween(fromDay, day));
  const count = days.length === 0 ? 0 : Math.floor(Math.max(...days) / 7) + 1;
  const total = (sessions: readonly RampSession[], index: number): number =>
    sessions
      .filter(({ day }) => Math.floor(daysBetween(fromDay, day) / 7) === index)
      .reduce((sum, { runMinutes }) => sum + runMinutes, 0);
  return Array.from({ length: count }, (_, index) => ({
    startDay: addDays(fromDay, index * 7),
    before: total(old, index),
    after: total(recent, index),
  }));
}
