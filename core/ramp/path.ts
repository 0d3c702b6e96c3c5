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

/** What comes before the common path, by start (D). */
const LEAD_IN: Readonly<Record<StartLevel, readonly BoutStep[]>> = {
  conditioned: [],
  unconditioned: [{ runMin: 1, walkMin: 3 }],
  'post-injury': [
    { runMin: 0.5, walkMin: 4 },
    { runMin: 1, walkMin: 4 },
    { runMin: 1, walkMin: 3 },
  ],
};

/** Repeats of the first session, by start (D). */
export const FIRST_REPEATS: Readonly<Record<StartLevel, number>> = {
  conditioned: 6,
  unconditioned: 4,
  'post-injury': 4,
};

/** The bout path from the first session to the last step before continuous running. */
export function boutPath(start: StartLevel): readonly BoutStep[] {
  return [...LEAD_IN[start], ...COMMON];
}

/** A step in words, e.g. "2 min run, 2 min walk". */
export function stepText(step: BoutStep | null): string {
  return step === null ? 'continuous' : `${step.runMin} min run, ${step.walkMin} min walk`;
}
