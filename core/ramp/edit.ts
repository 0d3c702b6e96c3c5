import { ArgumentError, inRange, oneOf, wholeInRange } from '../check.ts';
import { dayNumber, type IsoDay } from '../day.ts';
import { datedSession, stagesOf, stepsOf } from './dated.ts';
import type { RampEdit, SessionChange } from './editTypes.ts';
import { EPSILON } from './load.ts';
import { goalDayOf, withinReachOf } from './outcome.ts';
import { settingOf, type Setting } from './request.ts';
import { givenWeek, type SessionPlan } from './sessions.ts';
import type { Ramp, RampSession, RampWeek } from './types.ts';
import { walkRamp } from './walk.ts';

const MINUTES = { min: 0.5, max: 240 } as const;

/**
 * Puts edits by hand into a plan, in order, and adds up its weeks and dates again. No rule is
 * enforced: `checkRamp` says which are broken. Weeks and sessions that were touched say so.
 *
 * @throws RangeError naming the argument: a day with no session, or already taken; repeats 1–40,
 *   runMin 0.5–240 min, walkMin 0–30 min; days outside the plan's weeks.
 * @example
 * editRamp(sample.ramp, [{ kind: 'remove', day: '2026-03-04' }]).weeks[0]?.runMinutes // => 8
 */
export function editRamp(ramp: Ramp, edits: readonly RampEdit[]): Ramp {
  const setting = settingOf({ ...ramp.request, rules: ramp.rules, capPercent: ramp.capPercent });
  const weeks = edits.reduce<readonly RampWeek[]>(
    (current, edit) => applied(setting, current, edit),
    ramp.weeks,
  );
  return summed(setting, ramp, weeks);
}

function applied(setting: Setting, weeks: readonly RampWeek[], edit: RampEdit): RampWeek[] {
  if (edit.kind === 'week') return scaled(setting, weeks, edit.number, edit.runMinutes);
  if (edit.kind === 'remove') return without(weeks, sessionOn(weeks, edit.day).day);
  if (edit.kind === 'add') return withSession(weeks, madeSession(setting, null, edit.session));
  const old = sessionOn(weeks, edit.day);
  return withSession(without(weeks, old.day), madeSession(setting, old, edit.to));
}

function sessionOn(weeks: readonly RampWeek[], day: IsoDay): RampSession {
  const session = weeks.flatMap(({ sessions }) => sessions).find((entry) => entry.day === day);
  if (session !== undefined) return session;
  throw new ArgumentError(
    'day',
    'YYYY-MM-DD',
    undefined,
    `day must be that of a session, but ${day} has none`,
  );
}

function madeSession(
  setting: Setting,
  old: RampSession | null,
  change: SessionChange,
): RampSession {
  const kind = oneOf('kind', change.kind ?? old!.kind, ['bouts', 'continuous', 'walk']);
  const repeats = kind === 'bouts' ? (change.repeats ?? old!.repeats) : 1;
  const walkMin = kind === 'bouts' ? (change.walkMin ?? old!.walkMin) : 0;
  const day = change.day ?? old!.day;
  dayNumber(day, 'day');
  const plan: SessionPlan = {
    kind,
    repeats: wholeInRange('repeats', repeats, 'bouts', { min: 1, max: 40 }),
    runMin: inRange('runMin', change.runMin ?? old!.runMin, 'min', MINUTES),
    walkMin: inRange('walkMin', walkMin, 'min', { min: 0, max: 30 }),
    effort: old?.effort ?? 'medium',
  };
  return { ...datedSession(setting, plan, day, old ?? undefined), edited: true };
}

function without(weeks: readonly RampWeek[], day: IsoDay): RampWeek[] {
  return weeks.map((week) => {
    const sessions = week.sessions.filter((session) => session.day !== day);
    return sessions.length === week.sessions.length ? week : { ...week, sessions, edited: true };
  });
}

function withSession(weeks: readonly RampWeek[], session: RampSession): RampWeek[] {
  const { day } = session;
  if (weeks.some(({ sessions }) => sessions.some((entry) => entry.day === day))) {
    const text = `day must be free, but ${day} already has a session`;
    throw new ArgumentError('day', 'YYYY-MM-DD', undefined, text);
  }
  const target = weeks.findLastIndex((week) => week.startDay <= day);
  if (target === -1) {
    const text = `day must not lie before the first week of the plan, but is ${day}`;
    throw new ArgumentError('day', 'YYYY-MM-DD', undefined, text);
  }
  return weeks.map((week, index) => {
    if (index !== target) return week;
    const sessions = [...week.sessions, session].sort((a, b) => (a.day < b.day ? -1 : 1));
    return { ...week, sessions, edited: true };
  });
}

function scaled(
  setting: Setting,
  weeks: readonly RampWeek[],
  number: number,
  minutes: number,
): RampWeek[] {
  const target = weeks.find((week) => week.number === number);
  if (target === undefined || target.sessions.length === 0) {
    const text = `number must be that of a week with sessions, but is ${number}`;
    throw new ArgumentError('number', '', undefined, text);
  }
  inRange('runMinutes', minutes, 'min', { min: 1, max: 960 });
  const step = setting.path[target.stepIndex] ?? null;
  const plans = givenWeek(step, minutes, target.sessions.length, setting.rules);
  const sessions = plans.map((plan, index) => {
    const old = target.sessions[index]!;
    return { ...datedSession(setting, plan, old.day, old), edited: true };
  });
  return weeks.map((week) => (week === target ? { ...week, sessions, edited: true } : week));
}

/** Whole minutes, as a plan shows them; a walking programme has no cap. */
const capOf = ({ runMinutes }: RampWeek, limit: number): number =>
  limit === Infinity ? runMinutes : Math.floor(limit + EPSILON);

/** Adds the weeks up again, and what the rules now allow in each. */
function summed(setting: Setting, ramp: Ramp, weeks: readonly RampWeek[]): Ramp {
  const added = weeks.map((week): RampWeek => {
    if (week.edited !== true) return week;
    return {
      ...week,
      ...(week.sessions.length === 0 ? {} : stepsOf(setting, week.sessions)),
      runMinutes: week.sessions.reduce((sum, { runMinutes }) => sum + runMinutes, 0),
    };
  });
  const limits = walkRamp({ ...ramp, weeks: added }).weeks.map(({ limit }) => limit);
  const capped = added.map((week, index) => ({ ...week, capMinutes: capOf(week, limits[index]!) }));
  const goalReachedOn = goalDayOf(capped, setting.goal);
  return {
    ...ramp,
    weeks: capped,
    goalReachedOn,
    stages: stagesOf(capped, goalReachedOn),
    withinReach: ramp.withinReach === null ? null : withinReachOf(capped, setting.pace),
  };
}
