import { addDays, dayFromNumber, dayNumber, daysBetween, type IsoDay } from '../day.ts';
import { firstPlace, FRESH, returnMinutes, type Place } from './course.ts';
import {
  courseOf,
  isRecovery,
  keptRuns,
  isLight,
  startsAnew,
  weekLimit,
  type Course,
  type Load,
} from './limits.ts';
import { rungAt } from './ladder.ts';
import { sessionLevel } from './level.ts';
import { settingOf } from './request.ts';
import { isDue, outingDays, returnTo, type Slot, type SlotKind } from './slots.ts';
import type { Ramp, RampSession, RampWeek, RecentRun } from './types.ts';

/** What stands before a week of a plan, edited by hand or not. */
export interface Before extends Load, Pick<Place, 'last'> {
  /** Where on the bout path the sessions so far have come; its length = continuous. */
  readonly stepIndex: number;
  readonly sessionsOnStep: number;
  /** Run-minutes of the fullest session of bouts so far. */
  readonly fullest: number;
  /** True once the dog ran without a break. */
  readonly continuous: boolean;
}

/** On the bout path before the first run. */
const AT_START = { stepIndex: 0, sessionsOnStep: 0, fullest: 0, continuous: false } as const;

/** A week of a plan with what stood before it. */
export interface WalkedWeek {
  readonly week: RampWeek;
  readonly slot: Slot;
  readonly before: Before;
  /** The most run-minutes the rules allow, after what came before. */
  readonly limit: number;
  readonly recovery: boolean;
}

export interface Walk extends Course {
  readonly weeks: readonly WalkedWeek[];
}

/** Follows a plan week by week as it stands, and tells what the rules allow in each. */
export function walkRamp(ramp: Ramp): Walk {
  const setting = settingOf({ ...ramp.request, rules: ramp.rules, capPercent: ramp.capPercent });
  const course = courseOf(setting);
  const walked: WalkedWeek[] = [];
  let before = beginning(course, ramp);
  let lastRun = ramp.request.resume?.lastRunDay ?? null;
  ramp.weeks.forEach((week, index) => {
    const slot = slotOf(ramp, index, week, lastRun, course);
    const recovery = isRecovery(before, slot);
    walked.push({ week, slot, before, limit: allowed(course, before, slot, recovery), recovery });
    before = afterWeek(course, before, walked.at(-1)!);
    lastRun = lastRunningDay(ramp, index, course, lastRun);
  });
  return { ...course, weeks: walked };
}

/**
 * The last day a week with runs has room for: where a light week leaves days out, none was missed.
 */
function lastRunningDay(
  ramp: Ramp,
  index: number,
  { setting }: Course,
  lastRun: IsoDay | null,
): IsoDay | null {
  const { startDay, sessions } = ramp.weeks[index]!;
  const run = sessions.at(-1)?.day;
  if (run === undefined) return lastRun;
  const before = lastRun === null ? null : dayNumber(lastRun);
  const length = daysBetween(startDay, weekEnd(ramp, index));
  const offered = outingDays(setting, dayNumber(startDay), before, length).at(-1) ?? 0;
  return dayFromNumber(Math.max(dayNumber(run), offered));
}

function beginning(course: Course, { request }: Ramp): Before {
  const { resume } = request;
  const place = firstPlace(course, request);
  const { path } = course.setting;
  if (resume === undefined || place.last < 0) {
    return { ...place, ...AT_START };
  }
  const rung = rungAt(course.ladder, place.last);
  const ofPlan = resume.rung !== undefined;
  const stepIndex = ofPlan ? rung.stepIndex : resume.stepIndex;
  return {
    ...place,
    stepIndex,
    sessionsOnStep: ofPlan ? rung.sessions.length : resume.sessionsOnStep,
    fullest: Math.max(rung.longest, resume.fullestMinutes ?? 0),
    continuous: stepIndex === path.length,
  };
}

/** The limit of a whole week; of the few days before an easy week, their part of it. */
function allowed(course: Course, before: Before, slot: Slot, recovery: boolean): number {
  if (slot.days.length === 0) return 0;
  const limit = weekLimit(course, before, slot, recovery);
  if (slot.kind !== 'bridge' || startsAnew(before, slot)) return limit;
  return (limit * Math.min(slot.days.length, course.rhythm.sessions)) / course.rhythm.sessions;
}

/** The day after the last of a week. */
export function weekEnd(ramp: Ramp, index: number): IsoDay {
  const next = ramp.weeks[index + 1]?.startDay;
  return next ?? addDays(ramp.weeks[index]!.startDay, 7);
}

function slotOf(
  ramp: Ramp,
  index: number,
  week: RampWeek,
  lastRun: IsoDay | null,
  { rhythm, setting }: Course,
): Slot {
  const first = week.sessions[0]?.day;
  const gap = lastRun === null || first === undefined ? 0 : daysBetween(lastRun, first) - 1;
  return {
    number: week.number,
    first: dayNumber(week.startDay),
    days: week.sessions.map(({ day }) => dayNumber(day)),
    kind: kindOf(ramp, index, week),
    recovery: isDue(setting, week.number),
    return: returnTo(setting, week.number, gap - rhythm.restDays),
  };
}

function kindOf(ramp: Ramp, index: number, week: RampWeek): SlotKind {
  if (!week.easyBeforeEvent) return 'build';
  const { eventDay } = ramp.request;
  const end = ramp.weeks[index + 1]?.startDay ?? eventDay ?? weekEnd(ramp, index);
  return daysBetween(week.startDay, end) < 7 ? 'bridge' : 'event';
}

const asRun = ({ day, runMinutes }: RampSession): RecentRun => ({
  day,
  minutes: runMinutes,
  response: 'clean',
});

function afterWeek(
  course: Course,
  before: Before,
  { week, slot, recovery, limit }: WalkedWeek,
): Before {
  const { sessions, runMinutes } = week;
  if (sessions.length === 0) return { ...before, light: true };
  const state: Before = startsAnew(before, slot) ? { ...FRESH, ...AT_START } : before;
  const recent = keptRuns([...state.recent, ...sessions.map(asRun)]);
  const light = isLight(course, state, runMinutes);
  const whole = sessions.length >= course.rhythm.sessions;
  const peak = whole ? Math.max(state.peak, runMinutes) : state.peak;
  if (slot.kind !== 'build' || recovery) return { ...state, recent, light, peak };
  const lower = slot.return.kind === 'less' || slot.return.kind === 'repeat';
  const back = week.returning === true || (lower && week.rung === undefined);
  // As it was drawn up, a week that came back counts whole, where the sessions' own cap cut it too.
  const cut = back && week.edited !== true;
  // A plan of an older release names no rung that it comes back to.
  const came = week.returning === true ? returnMinutes(course, state, slot, limit) : limit;
  return {
    ...alongPath(course, state, sessions),
    recent,
    light,
    returning: back || (!whole && state.returning),
    peak,
    previous: whole && !cut ? runMinutes : back ? came : state.previous,
    last: week.rung ?? state.last,
  };
}

/** Takes the sessions of a week along the bout path, one after another. */
export function alongPath(
  { setting }: Course,
  before: Before,
  sessions: readonly RampSession[],
): Before {
  return sessions.reduce((state, session) => {
    const level = sessionLevel(setting.path, session);
    const higher = level > state.stepIndex;
    const bouts = session.kind === 'bouts';
    return {
      ...state,
      stepIndex: Math.max(level, state.stepIndex),
      sessionsOnStep: higher ? 1 : state.sessionsOnStep + Number(level === state.stepIndex),
      fullest: bouts ? Math.max(state.fullest, session.runMinutes) : state.fullest,
      continuous: state.continuous || !bouts,
    };
  }, before);
}
