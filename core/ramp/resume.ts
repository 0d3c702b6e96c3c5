import { daysBetween } from '../day.ts';
import { isClean, lastDueWeek, lastRunWeek, type Done, type DueSession } from './done.ts';
import { stepReached } from './level.ts';
import { EPSILON } from './load.ts';
import { firstWeekBouts } from './path.ts';
import { returnAfter } from './slots.ts';
import { firstState, FRESH, type RampState } from './state.ts';
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
interface Now {
  /** The state after what was really run; its step is never past the hardest that was run. */
  readonly state: RampState;
  /** Run-minutes of the last week really run. */
  readonly loadMinutes: number;
  /** True when a step back lies behind it already: nothing was run since. */
  readonly unrun: boolean;
}

/** Null when the dog has not run under this plan, or has to begin anew. */
function stateNow(standing: Standing): Now | null {
  const { run, done } = standing;
  const index = lastRunWeek(done);
  if (index === -1) return asResumed(standing);
  const { after } = run.weeks.at(-1)!;
  const stepIndex = stepNow(standing, index);
  const { path } = run.setting;
  const state: RampState = {
    ...after,
    stepIndex,
    sessionsOnStep: cleanOnStep(standing, stepIndex),
    longest: stepIndex === path.length ? unmet(standing, after.longest) : 0,
  };
  return { state, loadMinutes: loadOf(standing, index), unrun: false };
}

/** Nothing was run since the review that made this version: where that one left the dog. */
function asResumed({ ramp }: Standing): Now | null {
  const given = ramp.request.resume;
  if (given === undefined || given.peakMinutes === 0) return null;
  const loadMinutes = given.firstWeekMinutes ?? given.previousMinutes;
  return { state: firstState(ramp.request), loadMinutes, unrun: true };
}

/** The step of the last week that was run, but none that was planned and not reached. */
function stepNow({ ramp, done, run }: Standing, index: number): number {
  const { path } = run.setting;
  const reached = run.weeks
    .slice(0, index + 1)
    .flatMap(({ week }) => week.sessions.map((session) => stepReached(path, session)));
  const highest = Math.max(ramp.request.resume?.stepIndex ?? 0, ...reached);
  return Math.min(ramp.weeks[lastRunWeek(done)]!.stepIndex, highest);
}

/** Clean sessions on a step; those of recovery and easy weeks do not count. */
function cleanOnStep({ ramp, done, run }: Standing, stepIndex: number): number {
  const { path } = run.setting;
  const given = ramp.request.resume;
  const before = given?.stepIndex === stepIndex ? given.sessionsOnStep : 0;
  const counts = (due: DueSession): boolean =>
    isClean(due) &&
    run.weeks[due.weekIndex]?.slot.kind === 'build' &&
    stepReached(path, due.session) >= stepIndex;
  return before + done.due.filter(counts).length;
}

/**
 * The minutes of the last week that was run. A week broken off counts as the one before it, where
 * that was fuller, but never as more than was planned for itself.
 */
function loadOf(standing: Standing, index: number): number {
  const { ramp, run } = standing;
  const asRun = run.weeks[index]!.week.runMinutes;
  return Math.max(asRun, Math.min(ramp.weeks[index]!.runMinutes, minutesBefore(standing, index)));
}

/** The last building week that was run earlier; before the first, the start's own first week. */
function minutesBefore({ ramp, run }: Standing, index: number): number {
  const earlier = run.weeks
    .slice(0, index)
    .findLast(({ slot, week }) => slot.kind === 'build' && week.runMinutes > 0);
  if (earlier !== undefined) return earlier.week.runMinutes;
  const given = ramp.request.resume;
  if (given !== undefined && given.peakMinutes > 0) return given.previousMinutes;
  const { path, rules } = run.setting;
  const bouts = firstWeekBouts(ramp.request.start, ramp.weeks[index]!.sessions.length, rules);
  return bouts * path[0]!.runMin;
}

function resumeOf(
  standing: Standing,
  state: RampState,
  firstWeekMinutes: number | null,
): RampResume {
  const { ramp, planned, done } = standing;
  // Where no week has begun, the version begins with the number of the one before it.
  const last = planned.weeks.at(-1)?.week.number ?? (ramp.request.resume?.weekNumber ?? 1) - 1;
  return {
    weekNumber: last + 1,
    peakMinutes: state.peak,
    previousMinutes: state.previous,
    stepIndex: state.stepIndex,
    sessionsOnStep: state.sessionsOnStep,
    longestMinutes: state.longest,
    fullestMinutes: state.fullest,
    lastRunDay: done.lastRunDay,
    firstWeekMinutes,
    reviewedOn: done.day,
  };
}

/** From the start's first week: after a long break, or when nothing was run yet. */
export function restart(standing: Standing): RampResume {
  return { ...resumeOf(standing, FRESH, null), weekNumber: 1 };
}

/** On from what was really run. */
export function goOn(standing: Standing): RampResume {
  const given = standing.ramp.request.resume;
  const now = stateNow(standing);
  if (now === null) return restart(standing);
  // Nothing was due yet: what the last review set still stands.
  const untouched = now.unrun && lastDueWeek(standing.done) === -1;
  return resumeOf(standing, now.state, untouched ? (given?.firstWeekMinutes ?? null) : null);
}

/** The last week once more, on the step that was run. */
export function repeatFrom(standing: Standing): RampResume {
  const now = stateNow(standing);
  if (now === null) return restart(standing);
  const { state, loadMinutes } = now;
  return resumeOf(standing, { ...state, previous: loadMinutes }, loadMinutes);
}

/**
 * Back one step: the step before on the bout path, with the run-minutes of the last lighter
 * building week; where there is none, the share of a recovery week. After a break alone
 * (`oneStep` false) the minutes fall, and the step with them where they no longer hold it. Growth counts anew from there.
 */
export function backFrom(standing: Standing, lessPercent: number, oneStep: boolean): RampResume {
  const now = stateNow(standing);
  if (now === null) return restart(standing);
  if (now.unrun) return fartherBack(standing, now, lessPercent);
  const { loadMinutes, state } = now;
  const { path } = standing.planned.setting;
  const lighter = lastLighter(standing, loadMinutes);
  const share = standing.ramp.rules.recoveryPercent / 100;
  const stepped = oneStep ? (lighter?.week.runMinutes ?? loadMinutes * share) : loadMinutes;
  const minutes = Math.min(stepped, loadMinutes * (1 - lessPercent / 100));
  const present = state.stepIndex;
  const stepIndex = oneStep ? stepBefore(present, lighter, path.length) : present;
  return resumeOf(standing, lowered(standing, minutes, stepIndex), minutes);
}

function lowered(standing: Standing, minutes: number, stepIndex: number): RampState {
  const step = stepHeldBy(standing, minutes, stepIndex);
  return { ...FRESH, peak: minutes, previous: minutes, stepIndex: step };
}

/**
 * Few minutes on a hard step would be one long bout a session, and leave no room to grow: then an
 * easier step, of which the week holds enough bouts.
 */
function stepHeldBy({ planned }: Standing, minutes: number, stepIndex: number): number {
  const { path, rules } = planned.setting;
  if (stepIndex === path.length) return stepIndex;
  const bouts = rules.boutsPerSession * planned.rhythm.sessions;
  const held = path.findLastIndex(({ runMin }) => bouts * runMin <= minutes + EPSILON);
  return Math.max(0, Math.min(stepIndex, held));
}

/** A break that goes on: the last review took part of the reduction off already. */
function fartherBack(standing: Standing, now: Now, lessPercent: number): RampResume {
  const { ramp, planned } = standing;
  const { lastRunDay, reviewedOn } = ramp.request.resume!;
  const gap = lastRunDay === null ? 0 : daysBetween(lastRunDay, reviewedOn) - 1;
  const before = returnAfter(gap - planned.rhythm.restDays, ramp.rules);
  const taken = before.kind === 'less' ? before.percent : 0;
  const factor = Math.min(1, (100 - lessPercent) / (100 - taken));
  const minutes = now.loadMinutes * factor;
  return resumeOf(standing, lowered(standing, minutes, now.state.stepIndex), minutes);
}

/** Continuous running goes back to a shorter continuous week where there was one. */
function stepBefore(present: number, lighter: WalkedWeek | undefined, last: number): number {
  if (present === last && lighter?.week.stepIndex === last) return last;
  return Math.max(0, present - 1);
}

/** The last lighter building week in which the dog ran, as planned. */
function lastLighter({ planned, run, done }: Standing, minutes: number): WalkedWeek | undefined {
  return planned.weeks
    .slice(0, Math.max(0, lastRunWeek(done)))
    .findLast(
      ({ slot, week }, index) =>
        slot.kind === 'build' &&
        run.weeks[index]!.week.runMinutes > 0 &&
        week.runMinutes < minutes - EPSILON,
    );
}

/** A goal that was met once is built up to again; the plan does not stop at its first week. */
function unmet({ planned }: Standing, longest: number): number {
  return longest >= planned.setting.goal - EPSILON ? 0 : longest;
}
