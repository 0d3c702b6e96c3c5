import type { BoutStep } from './path.ts';
import type { RampSession, RampWeek } from './types.ts';

/**
 * How far along the bout path a session stands: the first step that is at least as hard as it, in
 * bout and in walk; the path's length where only continuous running is.
 */
export function sessionLevel(
  path: readonly BoutStep[],
  session: Pick<RampSession, 'kind' | 'runMin' | 'walkMin'>,
): number {
  if (session.kind === 'continuous') return path.length;
  const level = path.findIndex(
    (step) => step.runMin >= session.runMin && step.walkMin <= session.walkMin,
  );
  return level === -1 ? path.length : level;
}

/**
 * The hardest step that a session really reached: the last one no harder than it, in bout and in
 * walk; 0 where it stayed below the first.
 */
export function stepReached(
  path: readonly BoutStep[],
  session: Pick<RampSession, 'kind' | 'runMin' | 'walkMin'>,
): number {
  if (session.kind === 'continuous') return path.length;
  const reached = path.findLastIndex(
    (step) => step.runMin <= session.runMin && step.walkMin >= session.walkMin,
  );
  return Math.max(0, reached);
}

/** The hardest session of a week; −1 for a week without any. */
export function weekLevel(path: readonly BoutStep[], week: RampWeek): number {
  return Math.max(-1, ...week.sessions.map((session) => sessionLevel(path, session)));
}
