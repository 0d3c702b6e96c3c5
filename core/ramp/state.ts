import { EPSILON, weekCap } from './load.ts';
import { firstWeekBouts } from './path.ts';
import type { Setting } from './request.ts';
import {
  boutSessions,
  continuousSessions,
  givenWeek,
  minutesOf,
  shareSum,
  type SessionPlan,
} from './sessions.ts';
import type { Rhythm, Slot } from './slots.ts';
import type { RampResume } from './types.ts';

/** Where the plan stands when a week is drawn up. */
export interface RampState {
  /** Run-minutes of the highest week that counts; 0 before the first. */
  readonly peak: number;
  /** Run-minutes of the last whole week with running. */
  readonly previous: number;
  /** Index on the bout path; its length = continuous. */
  readonly stepIndex: number;
  /** Sessions done on this step in building weeks. */
  readonly sessionsOnStep: number;
  /** Longest continuous run so far, minutes. */
  readonly longest: number;
}

/** Before the first run. */
export const FRESH: RampState = { peak: 0, previous: 0, stepIndex: 0, sessionsOnStep: 0, longest: 0 };

/** One way to fill a week. */
export interface Choice {
  readonly kind: 'bouts' | 'continuous' | 'given';
  readonly stepIndex: number;
  /** Bouts in the week; or the longest run of a continuous week, or given run-minutes. */
  readonly amount: number;
  readonly minutes: number;
}

export function firstState(resume: RampResume | undefined): RampState {
  if (resume === undefined) return FRESH;
  return {
    peak: resume.peakMinutes,
    previous: resume.previousMinutes,
    stepIndex: resume.stepIndex,
    sessionsOnStep: resume.sessionsOnStep,
    longest: resume.longestMinutes,
  };
}

/** The most run-minutes the rules allow in this week. */
export function limitOf(setting: Setting, rhythm: Rhythm, state: RampState, slot: Slot): number {
  const { rules } = setting;
  const back = slot.return;
  const returning =
    back.kind === 'less'
      ? (state.previous * (100 - back.percent)) / 100
      : back.kind === 'repeat'
        ? state.previous
        : Infinity;
  return Math.min(returning, calendarLimit(setting, rhythm, state, slot, rules));
}

function calendarLimit(
  setting: Setting,
  rhythm: Rhythm,
  state: RampState,
  slot: Slot,
  rules: Setting['rules'],
): number {
  if (slot.kind === 'recovery') return (state.previous * rules.recoveryPercent) / 100;
  if (slot.kind === 'build') return weekCap(state.peak, setting.capPercent, rules);
  const easy = (state.previous * rules.easyBeforeEventPercent) / 100;
  const share = slot.kind === 'bridge' ? Math.min(1, slot.days.length / rhythm.sessions) : 1;
  return easy * share;
}

/** True where the week is not free to rise: its minutes follow from the one before. */
export function isGiven(state: RampState, slot: Slot): boolean {
  return slot.kind !== 'build' || (state.peak > 0 && slot.return.kind !== 'none');
}

/**
 * The ways to fill a building week with as much as `cap` holds: stay on the step, or go to the
 * next one where the sessions on this one are done and the week holds enough of its bouts.
 */
export function buildChoices(
  setting: Setting,
  rhythm: Rhythm,
  state: RampState,
  slot: Slot,
  cap: number,
): Choice[] {
  const { path, rules } = setting;
  const count = slot.days.length;
  const ready = state.sessionsOnStep >= rules.sessionsPerStep;
  if (state.stepIndex === path.length) return [continuous(setting, rhythm, count, cap)];
  const choices: Choice[] = [];
  if (ready && state.stepIndex + 1 === path.length) {
    choices.push(continuous(setting, rhythm, count, cap));
  } else if (ready) {
    const next = bouts(setting, state.stepIndex + 1, cap, count);
    if (next.kind === 'bouts' && next.amount >= rules.boutsPerSession * count) choices.push(next);
  }
  return [...choices, bouts(setting, state.stepIndex, cap, count)];
}

function bouts(setting: Setting, stepIndex: number, cap: number, count: number): Choice {
  const step = setting.path[stepIndex]!;
  const most = setting.rules.mostBouts * count;
  const amount = Math.min(most, Math.floor(cap / step.runMin + EPSILON));
  if (amount >= count) return { kind: 'bouts', stepIndex, amount, minutes: amount * step.runMin };
  // So little load (after a break) that not every session gets a whole bout: shorter ones.
  const minutes = minutesOf(givenWeek(step, cap, count, setting.rules));
  return { kind: 'given', stepIndex, amount: cap, minutes };
}

/** A week short of sessions does not make the long run longer. */
function continuous(setting: Setting, rhythm: Rhythm, count: number, cap: number): Choice {
  const whole = shareSum(Math.max(count, rhythm.sessions), setting.rules);
  return continuousOf(setting, count, Math.min(cap / whole, setting.goal));
}

/** A continuous week whose longest run has `longest` minutes. */
export function continuousOf(setting: Setting, count: number, longest: number): Choice {
  const minutes = longest * shareSum(count, setting.rules);
  return { kind: 'continuous', stepIndex: setting.path.length, amount: longest, minutes };
}

/** The sessions of a choice. */
export function sessionsOf(setting: Setting, choice: Choice, count: number): SessionPlan[] {
  const step = setting.path[choice.stepIndex];
  if (step === undefined) return continuousSessions(choice.amount, count, setting.rules);
  if (choice.kind === 'given') return givenWeek(step, choice.amount, count, setting.rules);
  return boutSessions(step, choice.amount, count);
}

/** The first week of a new plan: the start's own bouts. */
export function firstChoice(setting: Setting, count: number): Choice {
  const amount = firstWeekBouts(setting.request.start, count, setting.rules);
  return { kind: 'bouts', stepIndex: 0, amount, minutes: amount * setting.path[0]!.runMin };
}

/** A week whose minutes are given, on the step the plan stands on. */
export function givenChoice(
  setting: Setting,
  state: RampState,
  minutes: number,
  count: number,
): Choice {
  const step = setting.path[state.stepIndex] ?? null;
  if (step === null) {
    return continuousOf(setting, count, minutes / shareSum(count, setting.rules));
  }
  const plans = givenWeek(step, minutes, count, setting.rules);
  return {
    kind: 'given',
    stepIndex: state.stepIndex,
    amount: minutes,
    minutes: minutesOf(plans),
  };
}

/** The state after a building week. */
export function afterBuilding(
  setting: Setting,
  state: RampState,
  choice: Choice,
  count: number,
): RampState {
  const onStep = choice.stepIndex === state.stepIndex ? state.sessionsOnStep : 0;
  const isContinuous = choice.stepIndex === setting.path.length;
  return {
    peak: Math.max(state.peak, choice.minutes),
    previous: choice.minutes,
    stepIndex: choice.stepIndex,
    sessionsOnStep: onStep + count,
    longest: isContinuous ? Math.max(state.longest, choice.amount) : state.longest,
  };
}

/** The state after a week whose minutes were given: a break lowers what the rise counts from. */
export function afterGiven(state: RampState, slot: Slot, minutes: number): RampState {
  if (slot.kind === 'bridge' || minutes === 0) return state;
  const lower = slot.return.kind === 'less';
  return {
    ...state,
    peak: lower ? minutes : state.peak,
    previous: minutes,
    sessionsOnStep: lower ? 0 : state.sessionsOnStep,
  };
}
