import type { IsoDay } from '../day.ts';
import { ladderOf, type Ladder } from './ladder.ts';
import { EPSILON, longestBefore, sessionCap, weekCap } from './load.ts';
import type { Setting } from './request.ts';
import { rhythmOf, type Rhythm, type Slot } from './slots.ts';
import type { RecentRun } from './types.ts';

/** A checked request with all that its weeks are drawn from. */
export interface Course {
  readonly setting: Setting;
  readonly rhythm: Rhythm;
  readonly ladder: Ladder;
}

/** Load behind a week, planned or really run. */
export interface Load {
  /** Run-minutes of the highest whole week; 0 before the first. */
  readonly peak: number;
  /** Run-minutes of the last whole week; while the load comes back, what it has come back to. */
  readonly previous: number;
  /** True where the week before was light already: no recovery week follows on it. */
  readonly light: boolean;
  /** True while the load comes back after a break. */
  readonly returning: boolean;
  /** Runs of the last weeks, oldest first. */
  readonly recent: readonly RecentRun[];
}

export function courseOf(setting: Setting): Course {
  const rhythm = rhythmOf(setting);
  return { setting, rhythm, ladder: ladderOf(setting, rhythm.sessions) };
}

/** True for the first running of a plan, and after so long a break that it begins anew. */
export const startsAnew = ({ peak, recent }: Load, slot: Slot): boolean =>
  (peak === 0 && recent.length === 0) || slot.return.kind === 'restart';

/**
 * True where a recovery week is due and the week before was none already. On the way back after a
 * break none is: the load still is under what the dog has carried (D).
 */
export const isRecovery = (
  { light, returning }: Load,
  { recovery, kind, return: back }: Pick<Slot, 'recovery' | 'kind' | 'return'>,
): boolean =>
  recovery &&
  !light &&
  !returning &&
  kind === 'build' &&
  back.kind !== 'less' &&
  back.kind !== 'restart';

/** True for a week of so little that it was one of recovery already. */
export const isLight = ({ setting }: Course, { peak }: Load, minutes: number): boolean =>
  minutes <= (peak * setting.rules.recoverySkipPercent) / 100 + EPSILON;

/** The most run-minutes the rules allow in a week, were it to hold its usual running days. */
export function weekLimit(course: Course, load: Load, slot: Slot, recovery: boolean): number {
  const { setting, ladder } = course;
  const { rules, capPercent } = setting;
  const start = ladder.rungs[0]!.minutes;
  if (startsAnew(load, slot)) return start;
  if (slot.kind !== 'build') return (load.previous * rules.easyBeforeEventPercent) / 100;
  if (recovery) return Math.max(start, (load.peak * rules.recoveryPercent) / 100);
  const back = slot.return;
  if (back.kind === 'less') {
    const less = (load.previous * (100 - back.percent)) / 100;
    const easy = slot.recovery && !load.light ? (load.peak * rules.recoveryPercent) / 100 : less;
    return Math.max(start, Math.min(less, easy));
  }
  if (setting.programme === 'walking') return Infinity;
  const rise = Math.max(start, weekCap(load.peak, capPercent, rules));
  if (back.kind === 'repeat') return Math.max(start, Math.min(rise, load.previous));
  // Once the rise carries the load past what it was, the usual cap over that counts again.
  const again = load.returning ? riseAgain(load.previous, setting) : Infinity;
  return again < load.peak - EPSILON ? Math.min(rise, again) : rise;
}

/** What a week may come back to after a break: 25 % more, or the usual rise where that is more. */
function riseAgain(previous: number, { rules, capPercent }: Setting): number {
  const { returnRisePercent } = rules;
  return Math.max(previous * (1 + returnRisePercent / 100), weekCap(previous, capPercent, rules));
}

/** The most run-minutes of one session on a day. */
export function sessionLimit(
  { setting, ladder }: Course,
  recent: readonly RecentRun[],
  day: IsoDay,
): number {
  if (setting.programme === 'walking') return Infinity;
  const first = ladder.rungs[0]!.longest;
  const longest = longestBefore(recent, day, setting.rules);
  return longest === 0 ? first : Math.max(first, sessionCap(longest, setting.rules));
}

/** Runs that a rule can still look back on: a few more than the last 30 days hold. */
const MOST_RECENT = 40;

export const keptRuns = (runs: readonly RecentRun[]): RecentRun[] => runs.slice(-MOST_RECENT);
