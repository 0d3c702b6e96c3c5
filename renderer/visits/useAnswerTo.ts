import { computed } from 'vue';

/** An answer to a proposal that changes as the form is filled in. */
export interface Answer<D extends string> {
  decision: D | 'open';
  /** What was proposed when it was given; empty while it is open. */
  answeredTo: string;
}

/** True while an answer was given to another proposal than the present one. */
export function isOvertaken<D extends string>(
  { decision, answeredTo }: Answer<D>,
  proposal: string,
  free: readonly D[] = [],
): boolean {
  if (decision === 'open' || (free as readonly string[]).includes(decision)) return false;
  return answeredTo !== proposal;
}

/**
 * Ties an answer to the proposal it was given to. An answer is never taken back: where something
 * else is proposed since, old and new stand side by side until the practitioner has looked. `free`
 * names answers that hold for any proposal.
 */
export function useAnswerTo<D extends string>(
  answer: () => Answer<D>,
  proposal: () => string,
  free: readonly D[] = [],
) {
  return {
    /**
     * What was proposed when the answer was given, where another thing is proposed now; null while
     * the answer stands as it was given. Until it is looked at, nothing is saved.
     */
    changedFrom: computed(() =>
      isOvertaken(answer(), proposal(), free) ? answer().answeredTo : null,
    ),
    decide(decision: D | 'open'): void {
      answer().decision = decision;
      answer().answeredTo = decision === 'open' ? '' : proposal();
    },
  };
}
