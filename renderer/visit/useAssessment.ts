import { computed, type ComputedRef } from 'vue';
import { assess, type Assessment, type Ramp } from '../../core/index.ts';
import { assessInput } from '../../electron/contract/assessInput.ts';
import type { DogFile } from '../../electron/contract/contract.ts';
import type { RuleChange } from '../../electron/contract/records.ts';
import { factsOf, type VisitForm } from './visitForm.ts';

/** What core makes of the record and the form as it stands, or why it cannot. */
export interface LiveAssessment {
  readonly assessment: Assessment | null;
  readonly problem: string | null;
}

/** What the form is seen against. */
export interface LiveContext {
  readonly file: DogFile;
  /** The kept visit being put right; null for a new one. */
  readonly visitId: string | null;
  /** The plan drawn up in the form; null where none is wanted. */
  readonly ramp: () => Ramp | null;
  readonly rules: () => readonly RuleChange[];
}

/**
 * Computes with every change of the form, from the visits kept up to its day and the form itself as
 * the latest; a plan drawn up in the form counts in place of the one in force, as it will when saved.
 */
export function useAssessment(
  form: VisitForm,
  { file, visitId, ramp, rules }: LiveContext,
): ComputedRef<LiveAssessment> {
  const others = file.visits.filter((visit) => visit.id !== visitId);
  return computed(() => {
    const facts = factsOf(form.visit);
    if (facts.day === '') return { assessment: null, problem: null };
    const stored = { id: '', createdAt: '', updatedAt: '', revision: 1, author: '' };
    const visits = [...others.filter((visit) => visit.day <= facts.day), { ...facts, ...stored }];
    try {
      const input = assessInput({ ...file, visits }, rules(), facts.day, visitId);
      const drawn = ramp();
      const plan = drawn === null ? input.plan : { ramp: drawn, climbM: form.plan.climbM };
      return { assessment: assess({ ...input, plan: plan ?? null }), problem: null };
    } catch (error) {
      if (error instanceof RangeError) return { assessment: null, problem: error.message };
      throw error;
    }
  });
}
