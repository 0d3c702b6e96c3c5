import type { RampRuleValues } from '../rules/ramp.ts';
import { EPSILON } from './load.ts';
import type { BoutStep } from './path.ts';
import type { RampSession, SessionEffort } from './types.ts';

/** What a session asks for, before it has a day. */
export interface SessionPlan {
  readonly kind: RampSession['kind'];
  readonly repeats: number;
  readonly runMin: number;
  readonly walkMin: number;
  readonly effort: SessionEffort;
}

/** Half minutes are run only in the first bouts after injury. */
const HALF_MIN = 0.5;
/** A session this near to the longest of its week is no easy one (D). */
const EASY_BELOW = 0.9;

export const sessionMinutes = ({ repeats, runMin }: SessionPlan): number => repeats * runMin;

export const minutesOf = (plans: readonly SessionPlan[]): number =>
  plans.reduce((sum, plan) => sum + sessionMinutes(plan), 0);

export const longestOf = (plans: readonly SessionPlan[]): number =>
  Math.max(0, ...plans.map(sessionMinutes));

export function boutSession({ runMin, walkMin }: BoutStep, repeats: number): SessionPlan {
  return { kind: 'bouts', repeats, runMin, walkMin, effort: 'medium' };
}

export function continuousSession(minutes: number): SessionPlan {
  return { kind: 'continuous', repeats: 1, runMin: minutes, walkMin: 0, effort: 'medium' };
}

/** The place of the longest session of a week, the first of several. */
export function longestAt(plans: readonly SessionPlan[]): number {
  const longest = longestOf(plans);
  return plans.findIndex((plan) => sessionMinutes(plan) >= longest - EPSILON);
}

/** The longest of a week is its long one, those well under it are easy; sessions alike are medium. */
export function withEfforts(plans: readonly SessionPlan[]): SessionPlan[] {
  const longest = longestOf(plans);
  const alike = plans.every((plan) => sessionMinutes(plan) >= longest - EPSILON);
  const first = alike ? -1 : longestAt(plans);
  return plans.map((plan, index) => {
    if (index === first) return { ...plan, effort: 'long' };
    return { ...plan, effort: sessionMinutes(plan) < longest * EASY_BELOW ? 'easy' : 'medium' };
  });
}

/**
 * Run-minutes of the runs of a continuous week: alike while they are short, then one long run and
 * the others at a share of it, in whole minutes.
 */
export function continuousWeek(longest: number, count: number, rules: RampRuleValues): number[] {
  const other =
    longest <= rules.equalUntilMinutes
      ? longest
      : Math.floor((longest * rules.mediumPercent) / 100 + EPSILON);
  return Array.from({ length: count }, (_, index) => (index === 0 ? longest : other));
}

/**
 * A week of given run-minutes on one step: recovery, before an event, or scaled by hand. Never over
 * `minutes`, in whole bouts where each session holds one, else in shorter bouts of whole minutes;
 * fewer sessions where even those do not fit.
 */
export function givenWeek(
  step: BoutStep | null,
  minutes: number,
  sessions: number,
  rules: RampRuleValues,
): SessionPlan[] {
  for (let count = sessions; count > 0; count -= 1) {
    const plans = step === null ? evenRuns(minutes, count, rules) : evenBouts(step, minutes, count);
    if (plans !== null) return withEfforts(plans);
  }
  return [];
}

function evenRuns(minutes: number, count: number, rules: RampRuleValues): SessionPlan[] | null {
  const each = Math.floor(minutes / count + EPSILON);
  if (each < rules.leastContinuousMinutes) return null;
  // A longer week keeps its shape: one long run, the others at their share of it.
  let longest = each;
  while (sum(continuousWeek(longest + 1, count, rules)) <= minutes + EPSILON) longest += 1;
  return continuousWeek(longest, count, rules).map(continuousSession);
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

/** As near to the minutes as bouts of the step, or somewhat shorter ones, come. */
function evenBouts(step: BoutStep, minutes: number, count: number): SessionPlan[] | null {
  const grain = step.runMin < 1 ? HALF_MIN : 1;
  const total = (runMin: number): number => Math.floor(minutes / runMin + EPSILON) * runMin;
  const holds = (runMin: number): boolean => Math.floor(minutes / runMin + EPSILON) >= count;
  let best: number | null = null;
  for (let runMin = step.runMin; runMin >= grain; runMin -= grain) {
    // Much shorter bouts only where a session holds none of the others.
    if (best !== null && runMin < step.runMin / 2) break;
    if (holds(runMin) && (best === null || total(runMin) > total(best) + EPSILON)) best = runMin;
  }
  if (best === null) return null;
  const bouts = Math.floor(minutes / best + EPSILON);
  const [base, fuller] = [Math.floor(bouts / count), bouts % count];
  // The fuller sessions come last, after the lighter ones.
  return Array.from({ length: count }, (_, index) =>
    boutSession({ ...step, runMin: best }, base + (index >= count - fuller ? 1 : 0)),
  );
}
