import {
  openGoalLimits,
  waitsFor,
  type Programme,
  type Screening,
  type ScreeningOutcome,
} from '../../core/index.ts';

const CAUTIONS = {
  vet: 'The screening says vet first. A plan printed now must not start before the vet has seen the dog.',
  walking: 'The screening says walking only. Running may begin once its reasons are gone.',
} as const;

/** Why a plan made now would contradict the screening; empty when it does not. */
export function cautionOf(
  outcome: ScreeningOutcome | null,
  programme: Programme = 'running',
): string {
  const waits = outcome === null ? null : waitsFor(outcome, programme);
  return waits === null ? '' : CAUTIONS[waits];
}

/** What becomes of a plan that is drawn up: one that cannot be kept must not read as if it were. */
export function standingOf(screening: Screening | null, programme?: Programme): string {
  if (openGoalLimits(screening?.reasons ?? []).length > 0) {
    return 'It cannot be kept with this goal: see the running plan above.';
  }
  return cautionOf(screening?.outcome ?? null, programme) || 'It is kept with the visit.';
}
