import { ref } from 'vue';
import type { Plan } from '../../electron/contract/contract.ts';
import { useDraft } from '../composables/useDraft.ts';
import { useForm } from '../composables/useForm.ts';
import { blankRampEntry, fittingEdits, type RampEntry } from './useRampEdit.ts';

/** Changes to a plan by hand as they are typed. */
export interface PlanEntry extends RampEntry {
  /** The version they were begun on. */
  version: number;
  note: string;
}

/** The draft of changes to the plan of a dog. */
export const planDraftKey = (dogId: string): string => `plan:${dogId}`;

const blankEntry = ({ version, keptBreaches }: Plan): PlanEntry => ({
  version,
  note: '',
  ...blankRampEntry(keptBreaches),
});

/**
 * The form of a plan being changed by hand, kept as a draft. Changes begun on another version are
 * left out: what suited the plan then may be too much for the one in force.
 */
export function usePlanDraft(plan: Plan) {
  const blank = blankEntry(plan);
  const form = useForm<PlanEntry>(blank, 'edit');
  /** Kept changes that no longer fit the plan and were left out. */
  const leftOut = ref(0);

  function fit(kept: PlanEntry): PlanEntry {
    const count = kept.version === plan.version ? fittingEdits(plan.ramp, kept.edits) : 0;
    leftOut.value = kept.edits.length - count;
    const edits = kept.edits.slice(0, count);
    return count === 0 ? { ...blank, note: kept.note } : { ...kept, edits };
  }
  const isBlank = ({ edits, note }: PlanEntry): boolean => edits.length === 0 && note === '';
  const draft = useDraft(form, () => planDraftKey(plan.dogId), { fit, isBlank });

  async function start(): Promise<void> {
    await draft.start();
    // Nothing of it is left to go on with.
    if (leftOut.value > 0 && isBlank(form.values)) draft.discard();
  }
  return { ...draft, form, leftOut, start };
}
