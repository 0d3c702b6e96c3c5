import type { BoutStep } from './path.ts';
import type { RampSession } from './types.ts';

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
