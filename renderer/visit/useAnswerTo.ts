import { readonly, ref, watch, type Ref } from 'vue';

/** An answer to a proposal that changes as the form is filled in. */
export interface Answer<D extends string> {
  decision: D | 'open';
  /** What was proposed when it was given; empty while it is open. */
  answeredTo: string;
}

export interface AnswerTo<D extends string> {
  /** True from the moment an answer was opened again, until there is a new one. */
  readonly changed: Readonly<Ref<boolean>>;
  decide(decision: D | 'open'): void;
}

/**
 * Ties an answer to the proposal it was given to: on another proposal it is open again, so that
 * nothing is decided that was not seen. `free` names answers that hold for any proposal.
 */
export function useAnswerTo<D extends string>(
  answer: () => Answer<D>,
  proposal: () => string,
  free: readonly D[] = [],
): AnswerTo<D> {
  const changed = ref(false);
  const isFree = (decision: D | 'open') => (free as readonly string[]).includes(decision);
  watch(
    [proposal, () => answer().decision, () => answer().answeredTo],
    ([proposed, decision, answeredTo]) => {
      if (decision === 'open' || isFree(decision) || answeredTo === proposed) return;
      answer().decision = 'open';
      answer().answeredTo = '';
      changed.value = true;
    },
    { immediate: true },
  );
  return {
    changed: readonly(changed),
    decide(decision) {
      answer().decision = decision;
      answer().answeredTo = decision === 'open' ? '' : proposal();
      changed.value = false;
    },
  };
}
