import { dayFromNumber } from '../day.ts';
import { rungAt, type Rung } from './ladder.ts';
import {
  isLight,
  isRecovery,
  keptRuns,
  sessionLimit,
  startsAnew,
  weekLimit,
  type Course,
  type Load,
} from './limits.ts';
import { EPSILON } from './load.ts';
import type { BoutStep } from './path.ts';
import type { Setting } from './request.ts';
import {
  continuousSession,
  givenWeek,
  longestAt,
  minutesOf,
  sessionMinutes,
  withEfforts,
  type SessionPlan,
} from './sessions.ts';
import type { Slot } from './slots.ts';
import type { RampRequest, RampResume, RecentRun } from './types.ts';

/** Where a plan stands on its ladder. */
export interface Place extends Load {
  /** The rung that comes next. */
  readonly next: number;
  /** The rung that was run last, in part at least; −1 before the first. */
  readonly last: number;
}

export interface FilledWeek {
  readonly slot: Slot;
  readonly sessions: readonly SessionPlan[];
  /** Null in recovery, easy and empty weeks. */
  readonly rung: number | null;
  readonly recovery: boolean;
  /** The most run-minutes the rules allow. */
  readonly cap: number;
  readonly after: Place;
}

export const FRESH: Place = {
  peak: 0,
  previous: 0,
  light: true,
  returning: false,
  recent: [],
  next: 0,
  last: -1,
};

/** Where the first week of a plan begins. */
export function firstPlace({ setting, ladder }: Course, { resume }: RampRequest): Place {
  if (resume === undefined) return FRESH;
  const { peakMinutes: peak, previousMinutes: previous } = resume;
  if (resume.rung !== undefined) {
    const { rung: next, lastRung: last = next - 1, recent = [] } = resume;
    const { returning = false, lightWeekBefore: light = false } = resume;
    return { peak, previous, light, returning, recent, next, last };
  }
  if (peak === 0) return FRESH;
  // A plan of an older release: the rung that its load comes to.
  const longest = Math.max(resume.longestMinutes, resume.fullestMinutes ?? peak / 3);
  const held = heldRung(ladder.rungs, { minutes: peak, longest, stepIndex: resume.stepIndex });
  const given = resume.firstWeekMinutes;
  const next =
    given === null ? held + 1 : heldRung(ladder.rungs.slice(0, held + 1), { minutes: given });
  const day = resume.lastRunDay ?? setting.startDay;
  const recent: RecentRun[] = [{ day, minutes: longest, response: 'clean' }];
  const load = { peak, previous, light: false, returning: false, recent };
  return { ...load, next, last: Math.min(held, next) };
}

/** The highest rung that holds no more than what was run; the first where none does. */
export function heldRung(
  rungs: readonly Rung[],
  {
    minutes,
    longest = Infinity,
    stepIndex = Infinity,
  }: { readonly minutes: number; readonly longest?: number; readonly stepIndex?: number },
): number {
  const index = rungs.findLastIndex(
    (rung) =>
      rung.minutes <= minutes + EPSILON &&
      rung.longest <= longest + EPSILON &&
      rung.stepIndex <= stepIndex,
  );
  return Math.max(0, index);
}

/** Draws up one week, and says where the plan stands after it. */
export function fillWeek(course: Course, place: Place, slot: Slot): FilledWeek {
  const empty = { slot, sessions: [], rung: null, recovery: false };
  if (slot.days.length === 0) return { ...empty, cap: 0, after: { ...place, light: true } };
  const from = startsAnew(place, slot) ? FRESH : place;
  const recovery = isRecovery(from, slot);
  const cap = weekLimit(course, from, slot, recovery);
  if (slot.kind !== 'build' || recovery) return easyWeek(course, from, slot, recovery, cap);
  const rung = rungFor(course, from, slot, cap);
  return rung === null
    ? returnWeek(course, from, slot, cap)
    : rungWeek(course, from, slot, cap, rung);
}

function rungWeek(course: Course, from: Place, slot: Slot, cap: number, rung: number): FilledWeek {
  const sessions = sessionsOf(course, from, slot, rung);
  const minutes = minutesOf(sessions);
  const whole = sessions.length >= course.rhythm.sessions;
  const after: Place = {
    peak: whole ? Math.max(from.peak, minutes) : from.peak,
    previous: whole ? minutes : from.previous,
    light: isLight(course, from, minutes),
    returning: whole ? false : from.returning,
    recent: withRuns(from.recent, slot, sessions),
    next: whole ? rung + 1 : rung,
    last: rung,
  };
  return { slot, sessions, rung, recovery: false, cap, after };
}

/** After a break: the week that was run last, with as many minutes as it may come back to. */
function returnWeek(course: Course, from: Place, slot: Slot, cap: number): FilledWeek {
  const sessions = scaledSessions(course, from, slot, cap);
  const minutes = minutesOf(sessions);
  const after: Place = {
    ...from,
    previous: returnMinutes(course, from, slot, cap),
    light: isLight(course, from, minutes),
    returning: true,
    recent: withRuns(from.recent, slot, sessions),
  };
  return { slot, sessions, rung: null, recovery: false, cap, after };
}

/** As many of the minutes as the session's cap leaves, on the days of the week. */
function scaledSessions(course: Course, from: Place, slot: Slot, cap: number): SessionPlan[] {
  const rung = rungAt(course.ladder, from.last);
  const least = rungAt(course.ladder, 0).minutes;
  const less = slot.return.kind === 'less';
  for (let most = Math.min(cap, rung.minutes); most >= least; most -= 1) {
    const sessions = shapedSessions(course, slot.days.length, rung, most, less);
    if (sessions.length > 0 && withinSessions(course, from, slot, sessions)) return sessions;
  }
  return sessionsOf(course, from, slot, 0);
}

/** What the next rise counts from: the minutes that the whole week would have held. */
export function returnMinutes(
  course: Course,
  { last }: Pick<Place, 'last'>,
  slot: Slot,
  cap: number,
): number {
  const rung = rungAt(course.ladder, last);
  const most = Math.max(rungAt(course.ladder, 0).minutes, Math.min(cap, rung.minutes));
  const less = slot.return.kind === 'less';
  const minutes = minutesOf(shapedSessions(course, course.rhythm.sessions, rung, most, less));
  // Too little for sessions of this kind: what is allowed counts, so that it can grow.
  return minutes > 0 ? minutes : most;
}

/** Recovery, or the last days before an event: the load falls, the place on the ladder stays. */
function easyWeek(
  course: Course,
  place: Place,
  slot: Slot,
  recovery: boolean,
  cap: number,
): FilledWeek {
  const rung = rungAt(course.ladder, place.last);
  const days = slot.days.length;
  const even = easySessions(course, days, rung, cap);
  // A week without a run would be a break, not an easy week.
  const sessions = recovery && even.length === 0 ? shortestRuns(course, days, cap) : even;
  const recent = withRuns(place.recent, slot, sessions);
  const light = isLight(course, place, minutesOf(sessions));
  const after = { ...place, light, recent };
  return { slot, sessions, rung: null, recovery, cap, after };
}

/** Fewer days than usual hold their part of the minutes only. */
const partOf = ({ rhythm }: Course, days: number, minutes: number): number =>
  (minutes * Math.min(days, rhythm.sessions)) / rhythm.sessions;

/** A session on each day; none where each would be too short. */
function easySessions(course: Course, days: number, rung: Rung, minutes: number): SessionPlan[] {
  const { rhythm, setting } = course;
  const count = Math.min(days, rhythm.sessions);
  const part = partOf(course, days, minutes);
  const plans = givenWeek(stepOf(rung), part, count, setting.rules);
  return plans.length === count ? plans : [];
}

/** As many runs of the least length as the minutes hold. */
function shortestRuns(course: Course, days: number, minutes: number): SessionPlan[] {
  const { leastContinuousMinutes: least } = course.setting.rules;
  const length = Math.floor(partOf(course, days, minutes) / least + EPSILON);
  return Array.from({ length }, () => continuousSession(least));
}

/**
 * The week that the load comes back with: runs without a break keep their shape at first; then the
 * long run comes back before the others, which are half of it at least (D).
 */
function shapedSessions(
  course: Course,
  days: number,
  rung: Rung,
  minutes: number,
  less: boolean,
): SessionPlan[] {
  const { equalUntilMinutes, leastContinuousMinutes, mediumPercent } = course.setting.rules;
  const { length } = rung.sessions;
  const shaped = rung.sessions.every(({ kind }) => kind === 'continuous');
  if (!shaped || rung.longest <= equalUntilMinutes) {
    return easySessions(course, days, rung, minutes);
  }
  const part = less ? rung.longest / rung.minutes : 1 / (1 + LEAST_OTHER * (length - 1));
  const longest = Math.min(rung.longest, Math.floor(minutes * part + EPSILON));
  const share = Math.floor((longest * mediumPercent) / 100 + EPSILON);
  const other = Math.min(share, Math.floor((minutes - longest) / (length - 1) + EPSILON));
  if (other < leastContinuousMinutes) return easySessions(course, days, rung, minutes);
  const runs = Array.from({ length: Math.min(days, length) }, (_, index) =>
    continuousSession(index === 0 ? longest : other),
  );
  return withEfforts(runs);
}

/** The other runs of such a week, of its longest. */
const LEAST_OTHER = 0.5;

/** The step of a rung's easier sessions; null for continuous running. */
function stepOf({ sessions }: Rung): BoutStep | null {
  const { kind, runMin, walkMin } = sessions[0]!;
  return kind === 'bouts' ? { runMin, walkMin } : null;
}

/**
 * The rung of a week: the next one, or the highest below it that the caps of week and session hold.
 * Null while a break keeps the load under the rung that was run last.
 */
function rungFor(course: Course, place: Place, slot: Slot, cap: number): number | null {
  const { rungs } = course.ladder;
  const top = Math.min(place.next, rungs.length - 1);
  const held = rungs[Math.min(Math.max(0, place.last), top)]!.minutes;
  if ((slot.return.kind !== 'none' || place.returning) && cap < held - EPSILON) return null;
  const highest = rungs
    .slice(0, top + 1)
    .findLastIndex(
      ({ minutes, sessions }) =>
        minutes <= cap + EPSILON && withinSessions(course, place, slot, sessions),
    );
  return Math.max(0, highest);
}

function withinSessions(
  course: Course,
  place: Place,
  { days }: Slot,
  sessions: readonly SessionPlan[],
): boolean {
  let { recent } = place;
  return sessions.every((session, index) => {
    const day = dayFromNumber(days[Math.min(index, days.length - 1)]!);
    const minutes = sessionMinutes(session);
    if (minutes > sessionLimit(course, recent, day) + EPSILON) return false;
    recent = [...recent, { day, minutes, response: 'clean' }];
    return true;
  });
}

/**
 * The sessions of a rung on the days of a week. A day that falls out is not made up for on the
 * others; a fourth day takes half of one session, it does not add to the week.
 */
function sessionsOf(course: Course, place: Place, slot: Slot, index: number): SessionPlan[] {
  const { sessions } = course.ladder.rungs[index]!;
  const count = slot.days.length;
  const fits = (plans: readonly SessionPlan[]): boolean =>
    withinSessions(course, place, slot, plans);
  if (count <= sessions.length) {
    const last = sessions.slice(-count);
    return withEfforts(isOneStep(sessions) && fits(last) ? last : sessions.slice(0, count));
  }
  const parted = sessions
    .map((_, at) => withHalves(course.setting, sessions, at))
    .find((plans) => plans !== null && fits(plans));
  return withEfforts(parted ?? sessions);
}

/** All alike but for their number of bouts: the fuller ones, which come last, may stand alone. */
const isOneStep = ([first, ...others]: readonly SessionPlan[]): boolean =>
  others.every(({ runMin, walkMin }) => runMin === first!.runMin && walkMin === first!.walkMin);

/** The sessions with one of them parted over two days; null where it is too short for that. */
function withHalves(
  { rules }: Setting,
  sessions: readonly SessionPlan[],
  at: number,
): SessionPlan[] | null {
  const plan = sessions[at]!;
  if (at === longestAt(sessions)) return null;
  const parts = plan.kind === 'bouts' ? plan.repeats : plan.runMin;
  const [more, less] = [Math.ceil(parts / 2), Math.floor(parts / 2)];
  if (plan.kind !== 'bouts' && less < rules.leastContinuousMinutes) return null;
  const part = (size: number): SessionPlan =>
    plan.kind === 'bouts' ? { ...plan, repeats: size } : { ...plan, runMin: size };
  return [...sessions.slice(0, at), part(more), part(less), ...sessions.slice(at + 1)];
}

function withRuns(
  recent: readonly RecentRun[],
  { days }: Slot,
  sessions: readonly SessionPlan[],
): RecentRun[] {
  const runs = sessions.map((session, index): RecentRun => {
    const day = dayFromNumber(days[index]!);
    return { day, minutes: sessionMinutes(session), response: 'clean' };
  });
  return keptRuns([...recent, ...runs]);
}

/** What the first week of a new version goes on from. */
export function resumeOf(
  course: Course,
  place: Place,
  rest: Pick<RampResume, 'weekNumber' | 'lastRunDay' | 'reviewedOn'>,
): RampResume {
  const { ladder, setting } = course;
  const rung = rungAt(ladder, place.last);
  const continuous = rung.stepIndex === setting.path.length;
  return {
    ...rest,
    peakMinutes: place.peak,
    previousMinutes: place.previous,
    lightWeekBefore: place.light,
    returning: place.returning,
    stepIndex: rung.stepIndex,
    sessionsOnStep: 0,
    longestMinutes: continuous ? rung.longest : 0,
    fullestMinutes: rung.longest,
    firstWeekMinutes: null,
    rung: place.next,
    lastRung: place.last,
    recent: place.recent,
  };
}
