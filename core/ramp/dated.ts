import { addDays, dayFromNumber, type IsoDay } from '../day.ts';
import { stepText } from './path.ts';
import type { Setting } from './request.ts';
import type { FilledWeek } from './search.ts';
import type { SessionPlan } from './sessions.ts';
import { sessionsOf } from './state.ts';
import type { RampSession, RampStage, RampWeek, StageId, SurfaceId } from './types.ts';

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

/** A session with its day, ground and expected distance. */
export function datedSession(
  setting: Setting,
  plan: SessionPlan,
  day: IsoDay,
  focus: RampSession['focus'],
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
    effort: plan.effort,
    surface: focus === 'hills' ? 'soft-hilly' : afterInjury ? 'soft-flat' : 'soft-trail',
    focus,
    warmUpMin: setting.rules.warmUpMinutes,
    coolDownMin: setting.rules.coolDownMinutes,
    distanceKm: setting.pace === null ? null : runMinutes / setting.pace,
  };
}

/** A filled week as the plan shows it. */
export function datedWeek(setting: Setting, filled: FilledWeek, stage: StageId): RampWeek {
  const { slot, choice } = filled;
  const plans = choice === null ? [] : sessionsOf(setting, choice, slot.days.length);
  const focus = stage === 'time' ? null : stage;
  const sessions = plans.map((plan, index) =>
    // The new thing comes into one session of the week, and an easy one follows it.
    datedSession(
      setting,
      plan,
      dayFromNumber(slot.days[index]!),
      plan.effort === 'long' ? focus : null,
    ),
  );
  const stepIndex = choice?.stepIndex ?? filled.after.stepIndex;
  return {
    number: slot.number,
    startDay: dayFromNumber(slot.first),
    recovery: slot.recovery,
    easyBeforeEvent: slot.kind === 'event' || slot.kind === 'bridge',
    stage,
    step: stepText(setting.path[stepIndex] ?? null),
    stepIndex,
    capMinutes: filled.cap,
    runMinutes: sessions.reduce((total, session) => total + session.runMinutes, 0),
    sessions,
  };
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
