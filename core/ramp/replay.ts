import { daysBetween } from '../day.ts';
import { FRESH, firstPlace, heldRung, resumeOf, type Place } from './course.ts';
import { keptRuns, sessionLimit, isLight, type Course } from './limits.ts';
import { lastDueWeek, type Done, type DueSession } from './done.ts';
import { rungAt } from './ladder.ts';
import { EPSILON } from './load.ts';
import type { UnplannedRun } from './reviewTypes.ts';
import type { Ramp, RampResume, RampWeek, RecentRun, RunResponse } from './types.ts';

/** A reviewed plan: what it asked for, what was done, and where that leaves the dog. */
export interface Followed {
  readonly ramp: Ramp;
  readonly done: Done;
  readonly course: Course;
  /** After what was really run. */
  readonly place: Place;
}

/** How the dog was after a run, as later reviews look back on it. */
export function responseOf({ result }: DueSession): RunResponse {
  if (result === null || (result.signs ?? []).length > 0) return 'other';
  const { nextDay } = result;
  if (nextDay === 'mild stiffness gone within 24 h') return 'mild';
  if (nextDay !== null && nextDay !== undefined && nextDay !== 'normal') return 'setback';
  return result.outcome === 'done' && nextDay === 'normal' ? 'clean' : 'other';
}

export function runsOf(due: readonly DueSession[]): RecentRun[] {
  return due
    .filter(({ minutes }) => minutes > 0)
    .map((entry) => ({
      day: entry.session.day,
      // Of several outings in a day the longest counts for the cap.
      minutes: entry.result?.longestRunMinutes ?? entry.minutes,
      response: responseOf(entry),
    }));
}

/** Sessions of a week that did not come to what was planned. */
export function undoneIn(due: readonly DueSession[]): number {
  return due.filter(({ session, minutes }) => minutes < session.runMinutes - EPSILON).length;
}

/** A week with one session missed goes on; with more it is run again (D). */
export const MOST_UNDONE = 1;

/**
 * Where the weeks before `until` leave the dog: a week run goes up a rung, one of which two
 * sessions or more were not run in full stays, whatever held them back.
 */
export function placeAfter(
  course: Course,
  ramp: Ramp,
  done: Done,
  until: number,
  unplanned: readonly UnplannedRun[] = [],
): Place {
  const from = firstPlace(course, ramp.request);
  const place = ramp.weeks.slice(0, until).reduce((at, week, index) => {
    const due = done.due.filter(({ weekIndex }) => weekIndex === index);
    return afterWeek(course, at, week, due);
  }, from);
  if (unplanned.length === 0) return place;
  const extra = unplanned.map((run): RecentRun => ({ ...run, response: 'other' }));
  const recent = [...place.recent, ...extra].sort((a, b) => (a.day < b.day ? -1 : 1));
  return { ...place, recent: keptRuns(recent) };
}

function afterWeek(
  course: Course,
  place: Place,
  week: RampWeek,
  due: readonly DueSession[],
): Place {
  const minutes = due.reduce((sum, entry) => sum + entry.minutes, 0);
  const recent = keptRuns([...place.recent, ...runsOf(due)]);
  const light = isLight(course, place, minutes);
  if (week.recovery || week.easyBeforeEvent || week.sessions.length === 0) {
    return { ...place, recent, light };
  }
  const whole = week.sessions.length >= course.rhythm.sessions;
  const left = week.sessions.length - due.length + undoneIn(due);
  const done = whole && left <= MOST_UNDONE;
  const counted = left === 0 ? minutes : week.runMinutes;
  if (isReturnWeek(week)) {
    const previous = done ? counted : Math.min(place.previous, week.runMinutes);
    return { ...place, recent, light, returning: true, previous };
  }
  const rung = rungOf(course, week);
  if (!done) {
    const next = Math.min(rung, place.next);
    return { ...place, recent, light, last: minutes > 0 ? next : place.last, next };
  }
  const last = rung;
  const peak = Math.max(place.peak, counted);
  return { peak, previous: counted, recent, light, returning: false, last, next: rung + 1 };
}

/** A week of a new plan that stands for no rung: the load comes back after a break in it. */
const isReturnWeek = (week: RampWeek): boolean =>
  week.rung === undefined && week.returning === true;

/** Which rung a week stands for; of weeks by hand or of older plans, the one it comes to. */
function rungOf({ ladder }: Course, week: RampWeek): number {
  if (week.rung !== undefined && week.edited !== true) return week.rung;
  const { runMinutes: minutes, stepIndex, sessions } = week;
  const longest = Math.max(0, ...sessions.map(({ runMinutes }) => runMinutes));
  return heldRung(ladder.rungs, { minutes, longest, stepIndex });
}

/** The last week once more. */
export function repeated(place: Place): Place {
  const next = Math.max(0, Math.min(place.next, place.last));
  return { ...place, next };
}

/** The last week once more, but no session longer than those that were run in it. */
export function repeatedCalmly({ ladder }: Course, place: Place): Place {
  const { next } = repeated(place);
  const rung = rungAt(ladder, next);
  const runs = place.recent.slice(-rung.sessions.length * 2).map(({ minutes }) => minutes);
  const longest = Math.max(0, ...runs);
  const held = heldRung(ladder.rungs.slice(0, next + 1), { minutes: rung.minutes, longest });
  return { ...place, next: held };
}

/** So many rungs back, to none that holds more than the last one. */
export function steppedBack({ ladder }: Course, place: Place, steps: number): Place {
  const at = rungAt(ladder, place.last);
  const below = ladder.rungs.slice(0, Math.max(1, place.last - steps + 1));
  const next = heldRung(below, { minutes: at.minutes, longest: at.longest });
  return { ...place, next, last: next };
}

/** After an illness: so much less than the last whole week, then back as after a break. */
export function lowered(place: Place, lessPercent: number): Place {
  const previous = (place.previous * (100 - lessPercent)) / 100;
  return { ...place, previous, returning: true };
}

/** The resume of a new version that begins after the weeks already begun. */
export function resumeAt({ course, ramp, done }: Followed, place: Place): RampResume {
  const begun = ramp.weeks[lastDueWeek(done)]?.number;
  const weekNumber = (begun ?? (ramp.request.resume?.weekNumber ?? 1) - 1) + 1;
  const { lastRunDay, day: reviewedOn } = done;
  return resumeOf(course, place, { weekNumber, lastRunDay, reviewedOn });
}

/** From the start's first week: after a long break, or when nothing was run yet. */
export function restartAt({ course, done }: Followed): RampResume {
  const { lastRunDay, day: reviewedOn } = done;
  return resumeOf(course, FRESH, { weekNumber: 1, lastRunDay, reviewedOn });
}

/** True where what is left of a plan holds its sessions against what was really run. */
export function restFits(followed: Followed, from: number, recent: readonly RecentRun[]): boolean {
  const { ramp, done, course } = followed;
  let runs = recent;
  return ramp.weeks.slice(from).every(({ sessions }) =>
    sessions.every(({ day, runMinutes }) => {
      if (day < done.day) return true;
      if (runMinutes > sessionLimit(course, runs, day) + EPSILON) return false;
      runs = [...runs, { day, minutes: runMinutes, response: 'clean' }];
      return true;
    }),
  );
}

/** Days since the last run beyond the ordinary rest. */
export function missedBefore({ done, course }: Followed): number {
  const { lastRunDay, day } = done;
  if (lastRunDay === null) return 0;
  return daysBetween(lastRunDay, day) - 1 - course.rhythm.restDays;
}
