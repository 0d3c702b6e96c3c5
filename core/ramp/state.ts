import { EPSILON, weekCap } from './load.ts';
import { firstWeekBouts } from './path.ts';
import type { Setting } from './request.ts';
import {
  boutSessions,
  continuousSessions,
  givenWeek,
  GRAIN_MIN,
  minutesOf,
  shareSum,
  type SessionPlan,
} from './sessions.ts';
import type { Rhythm, Slot } from './slots.ts';
import type { RampRequest } from './types.ts';

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
  /** Run-minutes of the fullest session of bouts so far. */
  readonly fullest: number;
}

/** Before the first run. */
export const FRESH: RampState = {
  peak: 0,
  previous: 0,
  stepIndex: 0,
  sessionsOnStep: 0,
  longest: 0,
  fullest: 0,
};

/** One way to fill a week. */
export interface Choice {
  readonly kind: 'bouts' | 'continuous' | 'given';
  readonly stepIndex: number;
  /** Bouts in the week; or the longest run of a continuous week, or given run-minutes. */
  readonly amount: number;
  readonly minutes: number;
}

export function firstState({ resume, sessionsPerWeek }: RampRequest): RampState {
  if (resume === undefined) return FRESH;
  return {
    peak: resume.peakMinutes,
    previous: resume.previousMinutes,
    stepIndex: resume.stepIndex,
    sessionsOnStep: resume.sessionsOnStep,
    longest: resume.longestMinutes,
    fullest: resume.fullestMinutes ?? resume.peakMinutes / sessionsPerWeek,
  };
}

/**
 * The most run-minutes the rules allow in this week, were it to hold its usual running days.
 * `reviewed` is true for the week whose minutes a review has set.
 */
export function limitOf(setting: Setting, state: RampState, slot: Slot, reviewed: boolean): number {
  const given = setting.request.resume?.firstWeekMinutes ?? null;
  if (reviewed && given !== null) return Math.max(given, leastMinutes(slot.days.length));
  if (startsAnew(state, slot)) return firstChoice(setting, slot.days.length).minutes;
  const back = slot.return;
  const returning =
    back.kind === 'less'
      ? (state.previous * (100 - back.percent)) / 100
      : back.kind === 'repeat'
        ? state.previous
        : Infinity;
  const limit = Math.min(returning, calendarLimit(setting, state, slot));
  return Math.max(limit, leastMinutes(slot.days.length));
}

/** However little is left, a running day holds one bout of half a minute. */
const leastMinutes = (count: number): number => GRAIN_MIN * count;

function calendarLimit({ rules, capPercent }: Setting, state: RampState, slot: Slot): number {
  if (slot.kind === 'recovery') return (state.previous * rules.recoveryPercent) / 100;
  if (slot.kind === 'build') return weekCap(state.peak, capPercent, rules);
  return (state.previous * rules.easyBeforeEventPercent) / 100;
}

/**
 * What part of a week's minutes `count` running days may take up: a day that falls out is not made
 * up for on the others.
 */
export function dayShare(
  setting: Setting,
  rhythm: Rhythm,
  stepIndex: number,
  count: number,
): number {
  if (count >= rhythm.sessions) return 1;
  if (stepIndex < setting.path.length) return count / rhythm.sessions;
  return shareSum(count, setting.rules) / shareSum(rhythm.sessions, setting.rules);
}

/** True for the first running of a plan, and after so long a break that it begins anew. */
export function startsAnew(state: RampState, slot: Slot): boolean {
  return state.peak === 0 || slot.return.kind === 'restart';
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
  const { goal } = setting;
  if (state.stepIndex === path.length) return [continuous(setting, rhythm, count, cap, goal)];
  const choices: Choice[] = [];
  if (ready && state.stepIndex + 1 === path.length) {
    // The first run without a break is no longer than what a session of bouts came to (D).
    choices.push(continuous(setting, rhythm, count, cap, Math.min(goal, state.fullest)));
  } else if (ready) {
    const next = bouts(setting, rhythm, state.stepIndex + 1, cap, count);
    if (next.kind === 'bouts' && next.amount >= rules.boutsPerSession * count) choices.push(next);
  }
  return [...choices, bouts(setting, rhythm, state.stepIndex, cap, count)];
}

function bouts(
  setting: Setting,
  rhythm: Rhythm,
  stepIndex: number,
  cap: number,
  count: number,
): Choice {
  const step = setting.path[stepIndex]!;
  const share = cap * dayShare(setting, rhythm, stepIndex, count);
  const held = Math.max(share, leastMinutes(count));
  const most = setting.rules.mostBouts * count;
  const amount = Math.min(most, Math.floor(held / step.runMin + EPSILON));
  if (amount >= count) return { kind: 'bouts', stepIndex, amount, minutes: amount * step.runMin };
  // So little load (after a break) that not every session gets a whole bout: shorter ones.
  const minutes = minutesOf(givenWeek(step, held, count, setting.rules));
  return { kind: 'given', stepIndex, amount: held, minutes };
}

function continuous(
  setting: Setting,
  rhythm: Rhythm,
  count: number,
  cap: number,
  most: number,
): Choice {
  const held = cap * dayShare(setting, rhythm, setting.path.length, count);
  return continuousOf(setting, count, Math.min(held / shareSum(count, setting.rules), most));
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
  rhythm: Rhythm,
  state: RampState,
  limit: number,
  count: number,
): Choice {
  const { stepIndex } = state;
  const share = limit * dayShare(setting, rhythm, stepIndex, count);
  const held = Math.max(share, leastMinutes(count));
  const step = setting.path[stepIndex] ?? null;
  if (step === null) return continuousOf(setting, count, held / shareSum(count, setting.rules));
  const minutes = minutesOf(givenWeek(step, held, count, setting.rules));
  return { kind: 'given', stepIndex, amount: held, minutes };
}

/** Sessions of a week that count for its step: those of a week of shorter bouts do not. */
export function cleanSessions(setting: Setting, choice: Choice, count: number): number {
  const step = setting.path[choice.stepIndex];
  if (step === undefined || choice.kind === 'bouts') return count;
  const plans = sessionsOf(setting, choice, count);
  return plans.every(({ runMin }) => runMin === step.runMin) ? plans.length : 0;
}

/** The state after a building week. */
export function afterBuilding(
  setting: Setting,
  state: RampState,
  choice: Choice,
  count: number,
): RampState {
  const onStep = choice.stepIndex === state.stepIndex ? state.sessionsOnStep : 0;
  const clean = cleanSessions(setting, choice, count);
  const isContinuous = choice.stepIndex === setting.path.length;
  return {
    peak: Math.max(state.peak, choice.minutes),
    previous: choice.minutes,
    stepIndex: choice.stepIndex,
    sessionsOnStep: onStep + clean,
    longest: isContinuous ? Math.max(state.longest, choice.amount) : state.longest,
    fullest: isContinuous
      ? state.fullest
      : Math.max(state.fullest, fullestOf(setting, choice, count)),
  };
}

/** Run-minutes of the fullest session of a week of bouts. */
function fullestOf(setting: Setting, choice: Choice, count: number): number {
  const plans = sessionsOf(setting, choice, count);
  return Math.max(0, ...plans.map(({ repeats, runMin }) => repeats * runMin));
}

/** The state after the week that a review has set. */
export function afterReviewed(
  setting: Setting,
  state: RampState,
  choice: Choice,
  count: number,
): RampState {
  const isContinuous = choice.stepIndex === setting.path.length;
  return {
    ...state,
    peak: Math.max(state.peak, choice.minutes),
    previous: choice.minutes,
    sessionsOnStep: state.sessionsOnStep + cleanSessions(setting, choice, count),
    fullest: isContinuous
      ? state.fullest
      : Math.max(state.fullest, fullestOf(setting, choice, count)),
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
    fullest: lower ? Math.min(state.fullest, minutes / slot.days.length) : state.fullest,
  };
}
