import { lastDueWeek, lastRunWeek, type Done } from './done.ts';
import { EPSILON, weekCap } from './load.ts';
import type { RampState } from './state.ts';
import type { Ramp, RampResume } from './types.ts';
import type { Walk, WalkedWeek } from './walk.ts';

/** Where a reviewed plan stands: as planned, and as it was really run. */
export interface Standing {
  readonly ramp: Ramp;
  readonly done: Done;
  readonly planned: Walk;
  readonly run: Walk;
}

/** What the dog's present load is taken to be. */
export interface Now {
  /** The state after the weeks that were run. */
  readonly state: RampState;
  /** The last week in which the dog ran, as planned. */
  readonly week: WalkedWeek;
  /** Its run-minutes: as planned, but no more than what was run before it allows. */
  readonly loadMinutes: number;
}

/** Null when the dog has not run in this version. */
export function stateNow({ run, planned, ramp, done }: Standing): Now | null {
  const index = lastRunWeek(done);
  const week = planned.weeks[index];
  if (week === undefined) return null;
  const state = run.weeks.at(-1)!.after;
  const { before, week: asRun } = run.weeks[index]!;
  const allowed = before.peak === 0 ? Infinity : weekCap(before.peak, ramp.capPercent, ramp.rules);
  const loadMinutes = Math.max(asRun.runMinutes, Math.min(week.week.runMinutes, allowed));
  return { state, week, loadMinutes };
}

function resumeOf(
  standing: Standing,
  state: RampState,
  firstWeekMinutes: number | null,
): RampResume {
  const number = standing.planned.weeks.at(-1)?.week.number ?? 0;
  return {
    weekNumber: number + 1,
    peakMinutes: state.peak,
    previousMinutes: state.previous,
    stepIndex: state.stepIndex,
    sessionsOnStep: state.sessionsOnStep,
    longestMinutes: state.longest,
    lastRunDay: standing.done.lastRunDay,
    firstWeekMinutes,
    reviewedOn: standing.done.day,
  };
}

/** From the start's first week: after a long break, or when nothing was run yet. */
export function restart(standing: Standing): RampResume {
  const fresh = { peak: 0, previous: 0, stepIndex: 0, sessionsOnStep: 0, longest: 0 };
  const given = standing.ramp.request.resume;
  // Nothing was due yet: the version begins where the one before it was to begin.
  if (given !== undefined && standing.done.lastRunDay === given.lastRunDay) {
    if (lastDueWeek(standing.done) === -1) return { ...given, reviewedOn: standing.done.day };
  }
  return { ...resumeOf(standing, fresh, null), weekNumber: 1 };
}

/** On from what was really run. */
export function goOn(standing: Standing): RampResume {
  const now = stateNow(standing);
  if (now === null) return restart(standing);
  const { state } = now;
  return resumeOf(standing, { ...state, longest: unmet(standing, state.longest) }, null);
}

/** The last week once more, on its own step. */
export function repeatFrom(standing: Standing): RampResume {
  const now = stateNow(standing);
  if (now === null) return restart(standing);
  const { state, week, loadMinutes } = now;
  const { stepIndex } = week.week;
  const held: RampState = {
    peak: state.peak,
    previous: loadMinutes,
    stepIndex,
    sessionsOnStep: stepIndex === state.stepIndex ? state.sessionsOnStep : 0,
    longest: unmet(standing, state.longest),
  };
  return resumeOf(standing, held, loadMinutes);
}

/**
 * Back one step: the step before on the bout path, with the run-minutes of the last lighter
 * building week; where there is none, the share of a recovery week. After a break alone
 * (`oneStep` false) the step stays and the minutes fall. Growth counts anew from there.
 */
export function backFrom(standing: Standing, lessPercent: number, oneStep: boolean): RampResume {
  const now = stateNow(standing);
  if (now === null) return restart(standing);
  const { loadMinutes, week } = now;
  const { path } = standing.planned.setting;
  const lighter = lastLighter(standing, loadMinutes);
  const share = standing.ramp.rules.recoveryPercent / 100;
  const stepped = oneStep ? (lighter?.week.runMinutes ?? loadMinutes * share) : loadMinutes;
  const minutes = Math.min(stepped, loadMinutes * (1 - lessPercent / 100));
  const present = week.week.stepIndex;
  const stepIndex = oneStep ? stepBefore(present, lighter, path.length) : present;
  const lowered: RampState = {
    peak: minutes,
    previous: minutes,
    stepIndex,
    sessionsOnStep: 0,
    longest: 0,
  };
  return resumeOf(standing, lowered, minutes);
}

/** Continuous running goes back to a shorter continuous week where there was one. */
function stepBefore(present: number, lighter: WalkedWeek | undefined, last: number): number {
  if (present === last && lighter?.week.stepIndex === last) return last;
  return Math.max(0, present - 1);
}

function lastLighter(standing: Standing, minutes: number): WalkedWeek | undefined {
  return standing.planned.weeks
    .slice(0, Math.max(0, lastRunWeek(standing.done)))
    .findLast(
      ({ slot, week }) =>
        slot.kind === 'build' && week.runMinutes > 0 && week.runMinutes < minutes - EPSILON,
    );
}

/** A goal that was met once is built up to again; the plan does not stop at its first week. */
function unmet({ planned }: Standing, longest: number): number {
  return longest >= planned.setting.goal - EPSILON ? 0 : longest;
}
