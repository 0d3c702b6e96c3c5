import type { RampRuleValues } from '../rules/ramp.ts';
import type { StartLevel } from './types.ts';

/** One step of the bout path: minutes run, then minutes walked. Continuous running is `null`. */
export interface BoutStep {
  readonly runMin: number;
  readonly walkMin: number;
}

/** Run/walk bouts in minutes, before running without a break (Trials 2023 for the form, B, S). */
const COMMON: readonly BoutStep[] = [
  { runMin: 1, walkMin: 2 },
  { runMin: 2, walkMin: 2 },
  { runMin: 3, walkMin: 2 },
  { runMin: 4, walkMin: 2 },
  { runMin: 4, walkMin: 1 },
];

/**
 * What comes before the common path, by start (D). Each step changes one thing only, the bout or
 * the walk: after injury the bout grows from half a minute to one, then the walks shorten.
 */
const LEAD_IN: Readonly<Record<StartLevel, readonly BoutStep[]>> = {
  conditioned: [],
  unconditioned: [{ runMin: 1, walkMin: 3 }],
  'post-injury': [
    { runMin: 0.5, walkMin: 4 },
    { runMin: 1, walkMin: 4 },
    { runMin: 1, walkMin: 3 },
  ],
};

/**
 * The bout path from the first session to the last step before continuous running.
 * @example
 * boutPath('unconditioned').slice(0, 2)
 *   // => [{ runMin: 1, walkMin: 3 }, { runMin: 1, walkMin: 2 }]
 */
export function boutPath(start: StartLevel): readonly BoutStep[] {
  return [...LEAD_IN[start], ...COMMON];
}

/**
 * Bouts of the first session.
 * @example firstBouts('conditioned', rampRuleValues()) // => 6
 */
export function firstBouts(start: StartLevel, rules: RampRuleValues): number {
  if (start === 'conditioned') return rules.boutsConditioned;
  return start === 'unconditioned' ? rules.boutsUnconditioned : rules.boutsPostInjury;
}

/**
 * A step in words, e.g. "2 min run, 2 min walk".
 * @example
 * stepText({ runMin: 2, walkMin: 2 }) // => '2 min run, 2 min walk'
 * stepText(null) // => 'run without a break'
 */
export function stepText(step: BoutStep | null): string {
  return step === null ? 'run without a break' : `${step.runMin} min run, ${step.walkMin} min walk`;
}
