import type { RampRuleValues } from '../rules/ramp.ts';
import { FIRST_REPEATS, type BoutStep } from './path.ts';
import type { RampRequest, SessionEffort } from './types.ts';

/** What a session asks for, before it has a day. */
export interface SessionPlan {
  readonly step: BoutStep | null;
  readonly repeats: number;
  readonly runMin: number;
  readonly effort: SessionEffort;
}

/** Where the plan stands when a week is drawn up. */
export interface RampState {
  /** Run-minutes of the highest week so far; 0 before the first. */
  readonly peak: number;
  /** Run-minutes of the week before. */
  readonly previous: number;
  /** Index on the bout path; its length = continuous. */
  readonly stepIndex: number;
  /** Sessions done on this step. */
  readonly sessionsOnStep: number;
  /** Longest continuous run so far, minutes. */
  readonly longest: number;
}

export const FRESH: RampState = {
  peak: 0,
  previous: 0,
  stepIndex: 0,
  sessionsOnStep: 0,
  longest: 0,
};

/** Clean sessions each step of the path needs before the next (D). */
export const SESSIONS_PER_STEP = 2;

/** Shares of the longest run over a continuous week: hard, easy, medium (D, CP). */
const SHARES: readonly (readonly number[])[] = [
  [],
  [1],
  [1, 0.5],
  [1, 0.5, 0.75],
  [1, 0.5, 0.75, 0.5],
];
const EFFORTS: readonly SessionEffort[] = ['long', 'easy', 'medium', 'easy'];

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/**
 * The most run-minutes the rules allow in a building week: the cap over the highest earlier week,
 * or, while that week is short, one small step more where that is larger.
 */
export function weekCap(peak: number, capPercent: number, rules: RampRuleValues): number {
  const byPercent = peak * (1 + capPercent / 100);
  if (peak >= rules.shortWeekMinutes) return byPercent;
  return Math.max(byPercent, peak + rules.smallStepMinutes);
}

/** Spreads whole bouts over sessions as evenly as they go, the fuller sessions first. */
function boutSessions(step: BoutStep, bouts: number, sessions: number): SessionPlan[] {
  const base = Math.floor(bouts / sessions);
  const fuller = bouts % sessions;
  return Array.from({ length: sessions }, (_, index) => ({
    step,
    repeats: base + (index < fuller ? 1 : 0),
    runMin: step.runMin,
    effort: (base + (index < fuller ? 1 : 0) > base ? 'long' : 'medium') as SessionEffort,
  })).filter(({ repeats }) => repeats > 0);
}

function continuousSessions(longest: number, sessions: number): SessionPlan[] {
  return SHARES[sessions]!.map((share, index) => ({
    step: null,
    repeats: 1,
    runMin: longest * share,
    effort: EFFORTS[index]!,
  }));
}

/** The first week: the start's own bouts; fewer where the week has fewer sessions. */
export function firstWeek(
  request: RampRequest,
  path: readonly BoutStep[],
  sessions: number,
): SessionPlan[] {
  const repeats = FIRST_REPEATS[request.start];
  // A fourth session spreads the same start over more days; it does not raise it.
  const bouts = Math.min(repeats * sessions, repeats * 3);
  return boutSessions(path[0]!, bouts, sessions);
}

/** A week of fewer run-minutes on the step the plan stands on: recovery, or before an event. */
export function lighterWeek(
  state: RampState,
  path: readonly BoutStep[],
  minutes: number,
  sessions: number,
): SessionPlan[] {
  const step = path[state.stepIndex];
  if (step === undefined) return continuousSessions(minutes / sum(SHARES[sessions]!), sessions);
  return boutSessions(step, Math.max(1, Math.floor(minutes / step.runMin + 1e-9)), sessions);
}

/**
 * A building week inside `cap`. Goes to the next step of the path where the cap holds two bouts a
 * session of it, or where staying would add nothing; otherwise adds bouts to the present one.
 */
export function buildingWeek(
  state: RampState,
  path: readonly BoutStep[],
  cap: number,
  sessions: number,
  requestedSessions: number,
  goalMinutes: number,
): { readonly sessions: SessionPlan[]; readonly stepIndex: number } {
  const mayAdvance = state.sessionsOnStep >= SESSIONS_PER_STEP;
  const present = path[state.stepIndex];
  const next = path[state.stepIndex + 1];
  if (present === undefined || (next === undefined && mayAdvance)) {
    const shares = sum(SHARES[Math.max(sessions, Math.min(requestedSessions, 4))]!);
    const longest = practical(Math.min(cap / shares, goalMinutes), state.longest);
    return { sessions: continuousSessions(longest, sessions), stepIndex: path.length };
  }
  const stay = Math.floor(cap / present.runMin + 1e-9);
  if (next !== undefined && mayAdvance) {
    const forward = Math.floor(cap / next.runMin + 1e-9);
    const stuck = stay * present.runMin <= state.peak + 1e-9;
    if (forward >= 2 * sessions || (stuck && forward >= sessions)) {
      return { sessions: boutSessions(next, forward, sessions), stepIndex: state.stepIndex + 1 };
    }
  }
  return { sessions: boutSessions(present, stay, sessions), stepIndex: state.stepIndex };
}

/** Half minutes where they still lengthen the run; the exact length where they would not. */
function practical(minutes: number, longestBefore: number): number {
  const halves = Math.floor(minutes * 2 + 1e-9) / 2;
  return halves > longestBefore ? halves : minutes;
}
