import { addDays, dayFromNumber, type IsoDay } from '../day.ts';
import { EPSILON } from './load.ts';
import { stepText } from './path.ts';
import { ownerStart, type Setting } from './request.ts';
import type { FilledWeek } from './course.ts';
import { sessionLevel } from './level.ts';
import { longestAt, type SessionPlan } from './sessions.ts';
import {
  START_LEVELS,
  type FocusDose,
  type RampSession,
  type RampStage,
  type RampWeek,
  type StageId,
  type SurfaceId,
} from './types.ts';

/** The ground of a session, in plain words (CP). */
export const SURFACES: Readonly<Record<SurfaceId, string>> = {
  'soft-flat': 'soft, flat ground',
  'soft-trail': 'soft trail; pavement only as a short link',
  'soft-hilly': 'soft trail with hills',
};

/** How a session should feel, in plain words (CP). */
export const EFFORT_TEXTS: Readonly<Record<RampSession['effort'], string>> = {
  easy: 'easy: a relaxed trot, the dog could go on for long',
  medium: 'medium: an even trot, no pulling ahead and no falling behind',
  long: 'long: the longest of the week, at an even, unhurried pace',
};

/** The one new thing of a session, and how much of it. */
type Focus = Pick<RampSession, 'focus' | 'dose'>;
const NO_FOCUS: Focus = { focus: null };

/** A session with its day, ground and expected distance. */
export function datedSession(
  setting: Setting,
  plan: SessionPlan,
  day: IsoDay,
  { focus, dose }: Focus = NO_FOCUS,
): RampSession {
  const runMinutes = plan.repeats * plan.runMin;
  const afterInjury = setting.request.start === 'post-injury' && plan.kind === 'bouts';
  return {
    day,
    kind: plan.kind,
    repeats: plan.repeats,
    runMin: plan.runMin,
    walkMin: plan.walkMin,
    runMinutes,
    // What is new comes into the long session, or makes it that.
    effort: focus === null ? plan.effort : 'long',
    surface: focus === 'hills' ? 'soft-hilly' : afterInjury ? 'soft-flat' : 'soft-trail',
    focus,
    ...(dose === undefined ? {} : { dose }),
    warmUpMin: plan.kind === 'walk' ? 0 : setting.rules.warmUpMinutes,
    coolDownMin: plan.kind === 'walk' ? 0 : setting.rules.coolDownMinutes,
    distanceKm: setting.pace === null || plan.kind === 'walk' ? null : runMinutes / setting.pace,
  };
}

/** The dose of a stage in the `nth` of its weeks, counted from 0 (D). */
function doseOf({ rules }: Setting, stage: Exclude<StageId, 'time'>, nth: number): FocusDose {
  if (stage === 'pull') {
    return { times: 1, seconds: 60 * (rules.pullFirstMinutes + nth * rules.pullStepMinutes) };
  }
  return stage === 'hills'
    ? { times: rules.hillTimes, seconds: 60 * rules.hillMinutes }
    : { times: rules.speedTimes, seconds: rules.speedSeconds };
}

/** A filled week as the plan shows it; `nth` counts the weeks of its stage from 0. */
export function datedWeek(setting: Setting, filled: FilledWeek, stage: StageId, nth = 0): RampWeek {
  const { slot, sessions: plans, rung, recovery, cap } = filled;
  const focus = stage === 'time' ? NO_FOCUS : { focus: stage, dose: doseOf(setting, stage, nth) };
  const longest = longestAt(plans);
  const sessions = plans.map((plan, index) =>
    // The new thing comes into one session of the week, and an easy one follows it.
    datedSession(
      setting,
      plan,
      dayFromNumber(slot.days[index]!),
      index === longest ? focus : NO_FOCUS,
    ),
  );
  const minutes = weekMinutes(sessions);
  const isReturn = rung === null && !recovery && slot.kind === 'build' && minutes > 0;
  return {
    number: slot.number,
    startDay: dayFromNumber(slot.first),
    recovery,
    easyBeforeEvent: slot.kind !== 'build',
    stage,
    ...stepsOf(setting, sessions),
    ...(rung === null ? {} : { rung }),
    ...(isReturn ? { returning: true } : {}),
    capMinutes: Math.max(minutes, cap === Infinity ? minutes : Math.floor(cap + EPSILON)),
    runMinutes: minutes,
    sessions,
    ...paceSetter(setting),
  };
}

const weekMinutes = (sessions: readonly RampSession[]): number =>
  sessions.reduce((total, { runMinutes }) => total + runMinutes, 0);

/** Where on the bout path a week stands; a week may go from one step on to the next. */
export function stepsOf(
  { path, programme }: Setting,
  sessions: readonly RampSession[],
): Pick<RampWeek, 'step' | 'stepIndex'> {
  if (programme === 'walking') return { step: 'brisk walk', stepIndex: 0 };
  const levels = sessions.map((session) => sessionLevel(path, session));
  const steps = [...new Set(levels)].sort((a, b) => a - b);
  const step = steps.map((level) => stepText(path[level] ?? null)).join(', then ');
  return { step, stepIndex: Math.max(0, ...levels) };
}

/** Whose start the plan goes by; an owner who runs the goal already sets no pace. */
function paceSetter({ request }: Setting): Pick<RampWeek, 'paceSetBy'> {
  if (request.ownerMinutes === undefined) return {};
  const owner = ownerStart(request);
  const lower = owner === null ? -1 : START_LEVELS.indexOf(owner);
  const dog = START_LEVELS.indexOf(request.start);
  if (lower === dog) return { paceSetBy: 'both' };
  return { paceSetBy: lower > dog ? 'owner' : 'dog' };
}

const STAGE_TEXTS: Readonly<Record<StageId, string>> = {
  time: 'More time, nothing else',
  pull: 'Same minutes, with pull in the long run',
  hills: 'Same minutes, with hills in the long run',
  speed: 'Same minutes, with faster stretches in the long run',
};

/** The stages of the plan's weeks on the calendar. */
export function stagesOf(weeks: readonly RampWeek[], goalReachedOn: IsoDay | null): RampStage[] {
  const stages: RampStage[] = [];
  for (const week of weeks) {
    const last = stages.at(-1);
    const untilDay = addDays(week.startDay, 6);
    if (last?.id === week.stage) {
      stages[stages.length - 1] = { ...last, untilDay };
    } else {
      const text = STAGE_TEXTS[week.stage];
      stages.push({ id: week.stage, fromDay: week.startDay, untilDay, text });
    }
  }
  if (goalReachedOn !== null || stages.length === 0) return stages;
  return stages.map((stage) => ({ ...stage, untilDay: null }));
}
