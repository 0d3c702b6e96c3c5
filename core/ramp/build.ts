import { addDays, daysBetween, type IsoDay } from '../day.ts';
import { datedWeek, stagesOf } from './dated.ts';
import { goalDayOf, withinReachOf } from './outcome.ts';
import { collisionsOf, reasonsFor } from './reasons.ts';
import { settingOf, stagesInOrder, type Setting } from './request.ts';
import { fillWeeks, type FilledWeek, type Search } from './search.ts';
import {
  eventSlots,
  keepEveFree,
  MOST_WEEKS,
  rhythmOf,
  weeksBeforeEvent,
  weekSlots,
  type Rhythm,
} from './slots.ts';
import type { Ramp, RampRequest, RampWeek, StageId } from './types.ts';

/**
 * Builds a dated return-to-running ramp from the start's first week to the goal, as early as the
 * rules allow.
 *
 * Run-minutes of a building week never exceed the highest earlier week by more than the cap (while
 * that week is under 20 min, a step of 2 min is allowed); every fourth week is a recovery week of
 * 70 % of the week before. Bouts follow the path run/walk 1/2, 2/2, 3/2, 4/2, 4/1, continuous, each
 * step at least two sessions, changing at the start of a week. Once continuous, sessions run
 * 100/50/75 % of the longest. Running days are never consecutive; time away repeats or lowers the
 * week after it. Bouts are whole or half minutes; a recovery week of bouts is therefore up to a
 * minute under its 70 %. Continuous minutes are not rounded; round for display only.
 *
 * With an event the last seven days before it (and the days that do not fill a week before those)
 * are easy. Where the goal is out of reach by then, `goalReachedOn` is null, `earliestGoalDay` and
 * `earliestEventDay` say when it could be, `withinReach` what is. `collisions` names rules whose
 * values leave no way on.
 *
 * @throws RangeError naming the argument: sessionsPerWeek 2–4, capPercent 5–30 %, continuousMinutes
 *   1–240 min, distanceKm 0.2–100 km, paceMinPerKm 2–20 min/km (240 min together at most), eventDay at least 7 days after the
 *   start, weekdays that leave no two running days a week, laterStages together with an event.
 * Sources: see `RAMP_RULES`.
 */
export function buildRamp(request: RampRequest): Ramp {
  const setting = settingOf(request);
  const rhythm = rhythmOf(setting);
  const open = fillOpen(setting, rhythm);
  const toWeeks = (list: readonly FilledWeek[]): RampWeek[] =>
    list.map((week) => datedWeek(setting, week, 'time'));
  const openWeeks = toWeeks(open);
  const reached = goalDayOf(openWeeks, setting.goal);
  const { eventDay } = request;
  const filled = eventDay === undefined ? open : fillToEvent(setting, rhythm, eventDay);
  const toGoal = eventDay === undefined ? openWeeks : toWeeks(filled);
  const goalReachedOn = goalDayOf(toGoal, setting.goal);
  const weeks = [...toGoal, ...laterWeeks(setting, rhythm, filled, goalReachedOn)];
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
    collisions: collisionsOf(setting, open, reached),
    reasons: reasonsFor(setting, rhythm, filled, { goalReachedOn, reached, earliestEventDay }),
  };
}

/** Without an event: up to the week that meets the goal. */
function fillOpen(setting: Setting, rhythm: Rhythm): FilledWeek[] {
  const slots = weekSlots(setting, rhythm, MOST_WEEKS);
  return fillWeeks({ setting, rhythm, slots, deadline: slots.length }, true);
}

function fillToEvent(open: Setting, rhythm: Rhythm, eventDay: IsoDay): FilledWeek[] {
  const setting = keepEveFree(open, eventDay);
  const before = weekSlots(setting, rhythm, weeksBeforeEvent(setting, eventDay));
  const easy = eventSlots(setting, rhythm, before, eventDay);
  const search: Search = {
    setting,
    rhythm,
    slots: [...before, ...easy],
    deadline: before.length,
  };
  return fillWeeks(search, false);
}

/** The stages after the goal: the minutes stay, one new thing comes in at a time. */
function laterWeeks(
  setting: Setting,
  rhythm: Rhythm,
  filled: readonly FilledWeek[],
  goalReachedOn: IsoDay | null,
): RampWeek[] {
  const stages = stagesInOrder(setting.request);
  if (stages.length === 0 || goalReachedOn === null) return [];
  const { stageWeeks, recoveryEvery } = setting.rules;
  // Enough weeks for all stages with their recovery weeks, then cut to those needed.
  const most = filled.length + Math.ceil(stages.length * stageWeeks * 2);
  const slots = weekSlots(setting, rhythm, most);
  const all = fillWeeks({ setting, rhythm, slots, deadline: filled.length }, false);
  const weeks: RampWeek[] = [];
  let building = 0;
  for (const week of all.slice(filled.length)) {
    const due = stages[Math.floor(building / stageWeeks)];
    if (due === undefined) break;
    const recovery = week.slot.number % recoveryEvery === 0;
    // Nothing new comes in in a recovery week: it belongs to the stage before.
    const before: StageId = stages[Math.floor((building - 1) / stageWeeks)] ?? 'time';
    weeks.push(datedWeek(setting, week, recovery ? before : due));
    if (!recovery) building += 1;
  }
  return weeks;
}

/** Days from `day` to the event of a plan; null without one. */
export function daysToEvent(ramp: Ramp, day: IsoDay): number | null {
  return ramp.request.eventDay === undefined ? null : daysBetween(day, ramp.request.eventDay);
}
