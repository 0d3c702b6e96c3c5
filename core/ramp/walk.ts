import { addDays, dayNumber, daysBetween, type IsoDay } from '../day.ts';
import { weekLevel } from './level.ts';
import { settingOf, type Setting } from './request.ts';
import {
  returnAfter,
  rhythmOf,
  type Return,
  isReviewed,
  type Rhythm,
  type Slot,
  type SlotKind,
} from './slots.ts';
import { dayShare, firstState, FRESH, limitOf, startsAnew, type RampState } from './state.ts';
import type { Ramp, RampWeek } from './types.ts';

/** A week of a plan with what stood before it. */
export interface WalkedWeek {
  readonly week: RampWeek;
  readonly slot: Slot;
  readonly before: RampState;
  readonly after: RampState;
  /** The most run-minutes the rules allow, after what came before. */
  readonly limit: number;
  readonly lastRunBefore: IsoDay | null;
}

export interface Walk {
  readonly setting: Setting;
  readonly rhythm: Rhythm;
  readonly weeks: readonly WalkedWeek[];
}

/**
 * Follows a plan week by week as it stands, edited or not, and tells what the rules allow in each.
 * `done` gives the week as it was really run, where that differs from the plan.
 */
export function walkRamp(ramp: Ramp, done: (week: RampWeek) => RampWeek = (week) => week): Walk {
  const setting = settingOf({ ...ramp.request, rules: ramp.rules, capPercent: ramp.capPercent });
  const rhythm = rhythmOf(setting);
  const walked: WalkedWeek[] = [];
  const slots: Slot[] = [];
  let state = firstState(ramp.request);
  let lastRun = ramp.request.resume?.lastRunDay ?? null;
  ramp.weeks.forEach((planned, index) => {
    const week = done(planned);
    const slot = slotOf(ramp, index, week, lastRun, rhythm);
    slots.push(slot);
    const limit = allowed(setting, rhythm, state, slot, isReviewed(setting, slots, index));
    const after = stateAfter(setting, state, slot, week);
    walked.push({ week, slot, before: state, after, limit, lastRunBefore: lastRun });
    state = after;
    lastRun = week.sessions.at(-1)?.day ?? lastRun;
  });
  return { setting, rhythm, weeks: walked };
}

/** The limit of a whole week; of the few days before an easy week, their part of it. */
function allowed(
  setting: Setting,
  rhythm: Rhythm,
  state: RampState,
  slot: Slot,
  reviewed: boolean,
): number {
  if (slot.days.length === 0) return 0;
  const limit = limitOf(setting, state, slot, reviewed);
  if (slot.kind !== 'bridge' || startsAnew(state, slot)) return limit;
  return limit * dayShare(setting, rhythm, state.stepIndex, slot.days.length);
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
  rhythm: Rhythm,
): Slot {
  const first = week.sessions[0]?.day;
  const gap = lastRun === null || first === undefined ? 0 : daysBetween(lastRun, first) - 1;
  const back: Return =
    index === 0 ? { kind: 'none' } : returnAfter(gap - rhythm.restDays, ramp.rules);
  return {
    number: week.number,
    first: dayNumber(week.startDay),
    days: week.sessions.map(({ day }) => dayNumber(day)),
    kind: kindOf(ramp, index, week),
    recovery: week.recovery,
    return: back,
  };
}

function kindOf(ramp: Ramp, index: number, week: RampWeek): SlotKind {
  if (!week.easyBeforeEvent) {
    return week.number % ramp.rules.recoveryEvery === 0 ? 'recovery' : 'build';
  }
  const { eventDay } = ramp.request;
  const end = ramp.weeks[index + 1]?.startDay ?? eventDay ?? weekEnd(ramp, index);
  return daysBetween(week.startDay, end) < 7 ? 'bridge' : 'event';
}

function stateAfter(setting: Setting, before: RampState, slot: Slot, week: RampWeek): RampState {
  const minutes = week.runMinutes;
  if (week.sessions.length === 0 || slot.kind === 'bridge') return before;
  const anew = startsAnew(before, slot);
  const state = anew ? FRESH : before;
  const lower = slot.return.kind === 'less';
  const peak = lower && !anew ? minutes : Math.max(state.peak, minutes);
  const ofWeek = fullestBouts(week);
  const fullest =
    lower && !anew ? Math.min(state.fullest, ofWeek) : Math.max(state.fullest, ofWeek);
  if (slot.kind !== 'build') {
    const sessionsOnStep = lower ? 0 : state.sessionsOnStep;
    return { ...state, peak, previous: minutes, sessionsOnStep, fullest };
  }
  const level = weekLevel(setting.path, week);
  const runs = week.sessions.filter(({ kind }) => kind === 'continuous');
  const stepIndex = Math.max(state.stepIndex, level);
  const counted = level < state.stepIndex ? 0 : week.sessions.length;
  const onStep = level > state.stepIndex || anew || lower ? 0 : state.sessionsOnStep;
  return {
    peak,
    previous: minutes,
    stepIndex,
    sessionsOnStep: onStep + (lower ? 0 : counted),
    longest: Math.max(state.longest, ...runs.map(({ runMinutes }) => runMinutes)),
    fullest,
  };
}

/** Run-minutes of the fullest session of bouts in a week. */
function fullestBouts({ sessions }: RampWeek): number {
  const bouts = sessions.filter(({ kind }) => kind === 'bouts');
  return Math.max(0, ...bouts.map(({ runMinutes }) => runMinutes));
}
