import { addDays, daysBetween, type IsoDay } from '../day.ts';
import { collisionsOf } from './collisions.ts';
import { fillWeek, firstPlace, type FilledWeek, type Place } from './course.ts';
import { courseOf, type Course } from './limits.ts';
import { datedWeek, stagesOf } from './dated.ts';
import { EPSILON } from './load.ts';
import { goalDayOf, withinReachOf } from './outcome.ts';
import { reasonsFor } from './reasons.ts';
import { settingOf, stagesInOrder } from './request.ts';
import { sessionMinutes } from './sessions.ts';
import {
  eventSlots,
  keepEveFree,
  MOST_WEEKS,
  weeksBeforeEvent,
  weekSlots,
  type Slot,
} from './slots.ts';
import type { Ramp, RampRequest, RampWeek, StageId } from './types.ts';

/**
 * Builds a dated return-to-running ramp, or a walking programme, from the start's first week to
 * the goal, as early as the rules allow.
 *
 * First no session is more than 10 % or 2 min over the longest run of the last 30 days, whichever
 * is more; then no week rises by more than the cap over the highest whole week. Bouts follow the
 * path run/walk 1/2, 2/2, 3/2, 4/2, 4/1, continuous, each step at least two sessions. The runs of
 * a continuous week are alike up to 20 min, then 100/75/75 % of the longest. Every fourth week
 * holds 70 % of the highest, unless the week before was light already. Running days are never
 * consecutive; time away lowers the week after it, and the load comes back by 25 % a week. Every
 * figure is in whole minutes; half minutes occur only in the first bouts after injury.
 *
 * With an event the last seven days before it (and the days that do not fill a week before those)
 * are easy. Where the goal is out of reach by then, `goalReachedOn` is null, `earliestGoalDay` and
 * `earliestEventDay` say when it could be, `withinReach` what is. `collisions` names rules whose
 * values leave no way on. A walking programme ends on the second full walk of its last week.
 *
 * @throws RangeError naming the argument: sessionsPerWeek 2–4, capPercent 5–30 %, continuousMinutes
 *   1–240 min, distanceKm 0.2–100 km, paceMinPerKm 2–20 min/km (240 min together at most),
 *   ownerMinutes 0–600 min, walkMinutesNow 1–240 min, eventDay at least 7 days after the start,
 *   weekdays that leave no two running days a week, laterStages together with an event.
 * @example buildRamp(sample.request) // => { goalReachedOn: '2026-06-05', capPercent: 20, … }
 * Sources: see `RAMP_RULES`.
 */
export function buildRamp(request: RampRequest): Ramp {
  const course = courseOf(settingOf(request));
  const { setting, rhythm } = course;
  const open = fillOpen(course);
  const toWeeks = (list: readonly FilledWeek[]): RampWeek[] =>
    list.map((week) => datedWeek(setting, week, 'time'));
  const openWeeks = toWeeks(open);
  const reached = goalDayOf(openWeeks, setting.goal);
  const { eventDay } = request;
  const filled = eventDay === undefined ? open : fillToEvent(course, eventDay);
  const toGoal = eventDay === undefined ? openWeeks : toWeeks(filled);
  const goalReachedOn = goalDayOf(toGoal, setting.goal);
  const weeks = [...toGoal, ...laterWeeks(course, filled, goalReachedOn)];
  const earliestEventDay =
    reached === null ? null : addDays(setting.startDay, (open.length + 1) * 7);
  return {
    request,
    version: 1,
    rules: setting.rules,
    capPercent: setting.capPercent,
    weeks,
    stages: stagesOf(weeks, goalReachedOn),
    goalReachedOn,
    earliestGoalDay: reached,
    earliestEventDay,
    withinReach: eventDay === undefined ? null : withinReachOf(weeks, setting.pace),
    collisions: collisionsOf(course, reached),
    reasons: reasonsFor(setting, rhythm, filled, { goalReachedOn, reached, earliestEventDay }),
  };
}

/** Fills the weeks in order, each from where the one before it left the plan. */
function fill(course: Course, slots: readonly Slot[], from: Place, until: Ends): FilledWeek[] {
  const weeks: FilledWeek[] = [];
  let place = from;
  for (const slot of slots) {
    const week = fillWeek(course, place, slot);
    weeks.push(week);
    place = week.after;
    if (until(week)) break;
  }
  return weeks;
}

type Ends = (week: FilledWeek) => boolean;
const NEVER: Ends = () => false;

/** Without an event: up to the week that meets the goal. */
function fillOpen(course: Course): FilledWeek[] {
  const { setting, rhythm } = course;
  const slots = weekSlots(setting, rhythm, MOST_WEEKS);
  const met: Ends = ({ sessions }) =>
    sessions.filter(
      (plan) => plan.kind !== 'bouts' && sessionMinutes(plan) >= setting.goal - EPSILON,
    ).length >= (setting.programme === 'walking' ? 2 : 1);
  return fill(course, slots, firstPlace(course, setting.request), met);
}

function fillToEvent(open: Course, eventDay: IsoDay): FilledWeek[] {
  const setting = keepEveFree(open.setting, eventDay);
  const course = { ...open, setting };
  const before = weekSlots(setting, open.rhythm, weeksBeforeEvent(setting, eventDay));
  const easy = eventSlots(setting, open.rhythm, before, eventDay);
  return fill(course, [...before, ...easy], firstPlace(course, setting.request), NEVER);
}

/** The stages after the goal: the minutes stay, one new thing comes in at a time. */
function laterWeeks(
  course: Course,
  filled: readonly FilledWeek[],
  goalReachedOn: IsoDay | null,
): RampWeek[] {
  const { setting, rhythm } = course;
  const stages = stagesInOrder(setting.request);
  const last = filled.at(-1);
  if (stages.length === 0 || goalReachedOn === null || last === undefined) return [];
  const { stageWeeks } = setting.rules;
  // Enough weeks for all stages with their recovery weeks, then cut to those needed.
  const most = filled.length + Math.ceil(stages.length * stageWeeks * 2);
  const slots = weekSlots(setting, rhythm, most).slice(filled.length);
  const weeks: RampWeek[] = [];
  let building = 0;
  for (const week of fill(course, slots, last.after, NEVER)) {
    const due = stages[Math.floor(building / stageWeeks)];
    if (due === undefined) break;
    // Nothing new comes in in a recovery week: it belongs to the stage before.
    const before: StageId = stages[Math.floor((building - 1) / stageWeeks)] ?? 'time';
    const stage = week.recovery ? before : due;
    // In a recovery week the dose is that of the week before.
    const nth = (week.recovery ? building - 1 : building) % stageWeeks;
    weeks.push(datedWeek(setting, week, stage, Math.max(0, nth)));
    if (!week.recovery) building += 1;
  }
  return weeks;
}

/**
 * Days from `day` to the event of a plan; null without one.
 * @example
 * daysToEvent(sample.ramp, '2026-03-09') // => null
 * daysToEvent(buildRamp({ ...sample.request, eventDay: '2026-06-01' }), '2026-05-25') // => 7
 */
export function daysToEvent(ramp: Ramp, day: IsoDay): number | null {
  return ramp.request.eventDay === undefined ? null : daysBetween(day, ramp.request.eventDay);
}
