import type { RampRuleValues } from '../rules/ramp.ts';
import { EPSILON } from './load.ts';
import type { BoutStep } from './path.ts';
import type { SessionEffort } from './types.ts';

/** What a session asks for, before it has a day. */
export interface SessionPlan {
  readonly kind: 'bouts' | 'continuous';
  readonly repeats: number;
  readonly runMin: number;
  readonly walkMin: number;
  readonly effort: SessionEffort;
}

const EFFORTS: readonly SessionEffort[] = ['long', 'easy', 'medium', 'easy'];
/** Bouts are whole or half minutes. */
export const GRAIN_MIN = 0.5;

export const minutesOf = (plans: readonly SessionPlan[]): number =>
  plans.reduce((sum, { repeats, runMin }) => sum + repeats * runMin, 0);

/** Shares of the longest run over a continuous week: hard, easy, medium (then easy again). */
export function weekShares(sessions: number, rules: RampRuleValues): number[] {
  const easy = rules.easyPercent / 100;
  return [1, easy, rules.mediumPercent / 100, easy].slice(0, sessions);
}

/** Sum of `weekShares`: run-minutes of a week whose longest run is 1 min. */
export function shareSum(sessions: number, rules: RampRuleValues): number {
  return weekShares(sessions, rules).reduce((a, b) => a + b, 0);
}

function bout(step: BoutStep, repeats: number, runMin: number, fuller: boolean): SessionPlan {
  const effort = fuller ? 'long' : 'medium';
  return { kind: 'bouts', repeats, runMin, walkMin: step.walkMin, effort };
}

/** Spreads whole bouts over sessions as evenly as they go, the fuller sessions first. */
export function boutSessions(step: BoutStep, bouts: number, sessions: number): SessionPlan[] {
  const base = Math.floor(bouts / sessions);
  const fuller = bouts % sessions;
  return Array.from({ length: sessions }, (_, index) => {
    const more = index < fuller;
    return bout(step, base + (more ? 1 : 0), step.runMin, more);
  }).filter(({ repeats }) => repeats > 0);
}

/** Hard and easy runs without a break. */
export function continuousSessions(
  longest: number,
  sessions: number,
  rules: RampRuleValues,
): SessionPlan[] {
  return weekShares(sessions, rules).map((share, index) => ({
    kind: 'continuous',
    repeats: 1,
    runMin: longest * share,
    walkMin: 0,
    effort: EFFORTS[index]!,
  }));
}

/**
 * A week of given run-minutes on the present step: recovery, before an event, or after a break.
 * Never over `minutes`. Whole bouts of the step where they come within a minute of it; else some
 * sessions use shorter bouts, in half minutes, so that the week is not lighter than meant.
 */
export function givenWeek(
  step: BoutStep | null,
  minutes: number,
  sessions: number,
  rules: RampRuleValues,
): SessionPlan[] {
  if (sessions === 0) return [];
  if (step === null) {
    return continuousSessions(minutes / shareSum(sessions, rules), sessions, rules);
  }
  const bouts = Math.floor(minutes / step.runMin + EPSILON);
  const whole = boutSessions(step, bouts, sessions);
  if (bouts >= sessions && minutes - bouts * step.runMin < 1) return whole;
  const fine = fineSessions(step, minutes, sessions);
  return minutesOf(fine) > minutesOf(whole) + EPSILON || bouts < sessions ? fine : whole;
}

/** Hands what one session could not take up on to the next. */
function fineSessions(step: BoutStep, minutes: number, sessions: number): SessionPlan[] {
  const plans: SessionPlan[] = [];
  let left = minutes;
  for (let remaining = sessions; remaining > 0; remaining -= 1) {
    const plan = nearestBouts(step, left / remaining);
    if (plan === null) continue;
    plans.push(plan);
    left -= plan.repeats * plan.runMin;
  }
  return plans;
}

/** The session of bouts, none longer than the step's, that comes nearest to `minutes` from below. */
function nearestBouts(step: BoutStep, minutes: number): SessionPlan | null {
  const least = Math.min(step.runMin, Math.max(1, step.runMin / 2));
  const found = fitting(step, minutes, least) ?? fitting(step, minutes, GRAIN_MIN);
  return found === null ? null : bout(step, found.repeats, found.runMin, false);
}

function fitting(
  step: BoutStep,
  minutes: number,
  least: number,
): { repeats: number; runMin: number } | null {
  let best: { repeats: number; runMin: number } | null = null;
  for (let runMin = step.runMin; runMin >= least - EPSILON; runMin -= GRAIN_MIN) {
    const repeats = Math.floor(minutes / runMin + EPSILON);
    if (repeats === 0) continue;
    if (best === null || repeats * runMin > best.repeats * best.runMin + EPSILON) {
      best = { repeats, runMin };
    }
  }
  return best;
}
