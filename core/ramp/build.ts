import { ArgumentError, inRange, oneOf, wholeInRange } from '../check.ts';
import { addDays, dayNumber, daysBetween, type IsoDay, type Weekday } from '../day.ts';
import type { Reason } from '../figure.ts';
import { RAMP_RULES, rampRuleValues, type RampRuleId, type RampRuleValues } from '../rules/ramp.ts';
import { boutPath, stepText, type BoutStep } from './path.ts';
import { runningDays } from './schedule.ts';
import type { Ramp, RampGoal, RampRequest, RampSession, RampWeek, StartLevel } from './types.ts';
import {
  buildingWeek,
  firstWeek,
  FRESH,
  lighterWeek,
  weekCap,
  type RampState,
  type SessionPlan,
} from './week.ts';

/** Weeks the search for a goal goes on; three years of building is no plan any more (D). */
export const MOST_WEEKS = 156;

const STARTS: readonly StartLevel[] = ['conditioned', 'unconditioned', 'post-injury'];
const EVERY_DAY: readonly Weekday[] = [0, 1, 2, 3, 4, 5, 6];
const CAP_RULE: Readonly<Record<StartLevel, RampRuleId>> = {
  conditioned: 'capConditioned',
  unconditioned: 'capUnconditioned',
  'post-injury': 'capPostInjury',
};

/** Minutes without a break that meet the goal. */
export function goalMinutes(goal: RampGoal): number {
  return 'continuousMinutes' in goal ? goal.continuousMinutes : goal.distanceKm * goal.paceMinPerKm;
}

/**
 * Builds a dated return-to-running ramp from the start's first week to the goal.
 *
 * Run-minutes of a building week never exceed the highest earlier week by more than the cap (while
 * that week is under 20 min, a step of 2 min is allowed); every fourth week is a recovery week of
 * 70 % of the week before. Bouts follow the path run/walk 1/2, 2/2, 3/2, 4/2, 4/1, continuous, each
 * step at least two sessions. Once continuous, sessions run 100/50/75 % of the longest.
 * Running days are never consecutive. Minutes are not rounded; round for display only.
 *
 * With an event the last seven days before it are easy. Where the goal is out of reach by then,
 * `goalReachedOn` is null, `earliestEventDay` says when it could be, `withinReach` what is.
 *
 * @throws RangeError naming the argument: sessionsPerWeek 2–4, capPercent 5–30 %, continuousMinutes
 *   1–240 min, distanceKm 0.2–100 km, paceMinPerKm 2–20 min/km, eventDay at least 7 days after the
 *   start, weekdays that leave no running day.
 * Sources: see `RAMP_RULES`.
 */
export function buildRamp(request: RampRequest): Ramp {
  const rules = rampRuleValues(request.rules);
  checkRequest(request);
  const capPercent = request.capPercent ?? rules[CAP_RULE[request.start]];
  const setting: Setting = {
    request,
    rules,
    capPercent,
    path: boutPath(request.start),
    goal: goalMinutes(request.goal),
    weekdays: request.weekdays ?? EVERY_DAY,
    startDay: laterOf(request.startDay, request.notBeforeDay),
  };
  const open = runWeeks(setting, MOST_WEEKS, false);
  const reached = goalDay(open, setting.goal);
  const earliestEventDay =
    reached === null ? null : addDays(setting.startDay, (open.length + 1) * 7);
  const weeks =
    request.eventDay === undefined ? open : runWeeks(setting, eventWeeks(setting), true);
  const goalReachedOn = goalDay(weeks, setting.goal);
  return {
    request,
    version: 1,
    rules,
    capPercent,
    weeks,
    stages: [],
    collisions: [],
    goalReachedOn,
    earliestGoalDay: reached,
    earliestEventDay,
    withinReach: request.eventDay === undefined ? null : withinReach(weeks, request.goal),
    reasons: reasonsFor(setting, goalReachedOn, earliestEventDay),
  };
}

interface Setting {
  readonly request: RampRequest;
  readonly rules: RampRuleValues;
  readonly capPercent: number;
  readonly path: readonly BoutStep[];
  readonly goal: number;
  readonly weekdays: readonly Weekday[];
  readonly startDay: IsoDay;
}

function checkRequest(request: RampRequest): void {
  dayNumber(request.startDay, 'startDay');
  oneOf('start', request.start, STARTS);
  wholeInRange('sessionsPerWeek', request.sessionsPerWeek, 'a week', { min: 2, max: 4 });
  if (request.capPercent !== undefined) {
    inRange('capPercent', request.capPercent, '%', { min: 5, max: 30 });
  }
  if ('continuousMinutes' in request.goal) {
    inRange('continuousMinutes', request.goal.continuousMinutes, 'min', { min: 1, max: 240 });
  } else {
    inRange('distanceKm', request.goal.distanceKm, 'km', { min: 0.2, max: 100 });
    inRange('paceMinPerKm', request.goal.paceMinPerKm, 'min per km', { min: 2, max: 20 });
  }
  const startDay = laterOf(request.startDay, request.notBeforeDay);
  if (request.eventDay !== undefined) {
    dayNumber(request.eventDay, 'eventDay');
    if (daysBetween(startDay, request.eventDay) < 7) {
      throw new ArgumentError(
        'eventDay',
        'YYYY-MM-DD',
        undefined,
        `eventDay must be at least 7 days after the first day of the plan, ${startDay}, but is ${request.eventDay}`,
      );
    }
  }
  if (
    runningDays(startDay, request.sessionsPerWeek, request.weekdays ?? EVERY_DAY, null).length < 2
  ) {
    throw new ArgumentError(
      'weekdays',
      '',
      undefined,
      'weekdays must leave at least two running days a week that do not follow one another',
    );
  }
}

function laterOf(day: IsoDay, other: IsoDay | undefined): IsoDay {
  return other !== undefined && other > day ? other : day;
}

function eventWeeks(setting: Setting): number {
  return Math.floor(daysBetween(setting.startDay, setting.request.eventDay!) / 7);
}

/**
 * Draws up the weeks one after the other. Without an event it stops with the week that meets the
 * goal; with one it fills all `count` weeks, the last of them easy.
 */
function runWeeks(setting: Setting, count: number, event: boolean): RampWeek[] {
  const weeks: RampWeek[] = [];
  let state = FRESH;
  let lastRun: IsoDay | null = null;
  // Whole weeks end the day before the event; days left over give the first week a longer rest.
  const spare = event ? daysBetween(setting.startDay, setting.request.eventDay!) % 7 : 0;
  for (let number = 1; number <= count; number += 1) {
    const startDay = addDays(setting.startDay, (number - 1) * 7 + (number === 1 ? 0 : spare));
    const { sessionsPerWeek, daysOut } = setting.request;
    const days = runningDays(startDay, sessionsPerWeek, setting.weekdays, lastRun, daysOut);
    const kind = weekKind(setting, number, event && number === count);
    const week = drawWeek(setting, state, number, startDay, days, kind);
    weeks.push(week.week);
    state = week.state;
    lastRun = days.at(-1) ?? lastRun;
    if (!event && state.longest >= setting.goal - 1e-9) break;
  }
  return weeks;
}

type WeekKind = 'build' | 'recovery' | 'event';

function weekKind(setting: Setting, number: number, last: boolean): WeekKind {
  if (last && number > 1) return 'event';
  return number % setting.rules.recoveryEvery === 0 ? 'recovery' : 'build';
}

function drawWeek(
  setting: Setting,
  state: RampState,
  number: number,
  startDay: IsoDay,
  days: readonly IsoDay[],
  kind: WeekKind,
): { week: RampWeek; state: RampState } {
  const { rules, path } = setting;
  const share = kind === 'event' ? rules.easyBeforeEventPercent : rules.recoveryPercent;
  const cap =
    kind === 'build'
      ? weekCap(state.peak, setting.capPercent, rules)
      : (state.previous * share) / 100;
  const drawn = drawSessions(setting, state, number, days.length, kind, cap);
  const sessions = drawn.sessions.map((plan, index) => dated(setting, plan, days[index]!));
  const runMinutes = sessions.reduce((total, session) => total + session.runMinutes, 0);
  const continuous = sessions.filter((session) => session.kind === 'continuous');
  const onStep = drawn.stepIndex === state.stepIndex ? state.sessionsOnStep : 0;
  return {
    week: {
      number,
      startDay,
      recovery: kind === 'recovery',
      easyBeforeEvent: kind === 'event',
      stage: 'time',
      stepIndex: drawn.stepIndex,
      step: stepText(path[drawn.stepIndex] ?? null),
      capMinutes: number === 1 ? runMinutes : cap,
      runMinutes,
      sessions,
    },
    state: {
      peak: Math.max(state.peak, runMinutes),
      previous: runMinutes,
      stepIndex: drawn.stepIndex,
      sessionsOnStep: onStep + sessions.length,
      longest: Math.max(state.longest, ...continuous.map((session) => session.runMinutes)),
    },
  };
}

function drawSessions(
  setting: Setting,
  state: RampState,
  number: number,
  count: number,
  kind: WeekKind,
  cap: number,
): { sessions: SessionPlan[]; stepIndex: number } {
  if (count === 0) return { sessions: [], stepIndex: state.stepIndex };
  if (number === 1) {
    return { sessions: firstWeek(setting.request, setting.path, count), stepIndex: 0 };
  }
  if (kind !== 'build') {
    return {
      sessions: lighterWeek(state, setting.path, cap, count),
      stepIndex: state.stepIndex,
    };
  }
  const wanted = setting.request.sessionsPerWeek;
  return buildingWeek(state, setting.path, cap, count, wanted, setting.goal);
}

function dated(setting: Setting, plan: SessionPlan, day: IsoDay): RampSession {
  const runMinutes = plan.repeats * plan.runMin;
  const { goal } = setting.request;
  return {
    day,
    kind: plan.step === null ? 'continuous' : 'bouts',
    repeats: plan.repeats,
    runMin: plan.runMin,
    walkMin: plan.step?.walkMin ?? 0,
    runMinutes,
    effort: plan.effort,
    surface: 'soft-trail',
    focus: null,
    warmUpMin: setting.rules.warmUpMinutes,
    coolDownMin: setting.rules.coolDownMinutes,
    distanceKm: 'paceMinPerKm' in goal ? runMinutes / goal.paceMinPerKm : null,
  };
}

function goalDay(weeks: readonly RampWeek[], goal: number): IsoDay | null {
  for (const week of weeks) {
    const session = week.sessions.find(
      ({ kind, runMinutes }) => kind === 'continuous' && runMinutes >= goal - 1e-9,
    );
    if (session !== undefined) return session.day;
  }
  return null;
}

function withinReach(weeks: readonly RampWeek[], goal: RampGoal): Ramp['withinReach'] {
  const runs = weeks.flatMap((week) => week.sessions).filter(({ kind }) => kind === 'continuous');
  const continuousMinutes = Math.max(0, ...runs.map(({ runMinutes }) => runMinutes));
  return {
    continuousMinutes,
    sessionMinutes: continuousMinutes,
    sessionKm: null,
    distanceKm: 'paceMinPerKm' in goal ? continuousMinutes / goal.paceMinPerKm : null,
  };
}

function reasonsFor(
  setting: Setting,
  goalReachedOn: IsoDay | null,
  earliestEventDay: IsoDay | null,
): Reason[] {
  const { request, capPercent } = setting;
  const rule = RAMP_RULES[CAP_RULE[request.start]];
  const reasons: Reason[] = [
    {
      code: 'weekly-cap',
      text: `Run-minutes rise by at most ${capPercent} % over the highest earlier week.`,
      params: { capPercent },
      evidence: capPercent === rule.value ? rule.evidence : 'D',
      mark: capPercent === rule.value ? rule.mark : 'D',
      sources: capPercent === rule.value ? rule.sources : ['ownDecision'],
    },
    {
      code: 'recovery-weeks',
      text: `Every ${setting.rules.recoveryEvery}th week is a recovery week of ${setting.rules.recoveryPercent} % of the week before.`,
      params: { every: setting.rules.recoveryEvery, percent: setting.rules.recoveryPercent },
      ...provenance('recoveryEvery'),
    },
  ];
  if (setting.startDay !== request.startDay) {
    reasons.push({
      code: 'not-before',
      text: `Running does not begin before ${setting.startDay}.`,
      params: { day: setting.startDay },
      evidence: 'D',
      mark: 'CP',
      sources: ['commonPractice'],
    });
  }
  if (request.sessionsPerWeek === 4) {
    reasons.push({
      code: 'four-a-week',
      text: 'Seven days hold four running days only every other week when no two follow one another; the weeks between have three.',
      params: {},
      evidence: 'C',
      mark: 'C',
      sources: ['arithmetic'],
    });
  }
  if (goalReachedOn === null) reasons.push(outOfReach(request.eventDay, earliestEventDay));
  return reasons;
}

function provenance(id: RampRuleId) {
  const { evidence, mark, sources } = RAMP_RULES[id];
  return { evidence, mark, sources };
}

function outOfReach(eventDay: IsoDay | undefined, earliestEventDay: IsoDay | null): Reason {
  const text =
    eventDay === undefined || earliestEventDay === null
      ? `The goal is not reached within ${MOST_WEEKS} weeks under these rules.`
      : `The goal cannot be reached by ${eventDay} inside the caps; ${earliestEventDay} is the earliest day for it.`;
  return {
    code: 'goal-out-of-reach',
    text,
    params: { eventDay: eventDay ?? '', earliestEventDay: earliestEventDay ?? '' },
    evidence: 'C',
    mark: 'C',
    sources: ['arithmetic'],
    change: 'A later day, a shorter goal, or a start from a better base.',
  };
}
