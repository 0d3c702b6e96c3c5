import {
  openGoalLimits,
  type Programme,
  type Screening,
  type ScreeningOutcome,
} from '../../core/index.ts';

/** Why a plan made now would contradict the screening; empty when it does not. */
export function cautionOf(outcome: ScreeningOutcome | null, programme?: Programme): string {
  if (outcome === 'vet first') {
    return 'The screening says vet first. A plan printed now must not start before the vet has seen the dog.';
  }
  if (outcome === 'walking only' && programme !== 'walking') {
    return 'The screening says walking only. Running may begin once its reasons are gone.';
  }
  return '';
}

/** What becomes of a plan that is drawn up: one that cannot be kept must not read as if it were. */
export function standingOf(screening: Screening | null, programme?: Programme): string {
  if (openGoalLimits(screening?.reasons ?? []).length > 0) {
    return 'It cannot be kept with this goal: see the running plan above.';
  }
  return cautionOf(screening?.outcome ?? null, programme) || 'It is kept with the visit.';
}
