import { computed, type ComputedRef } from 'vue';
import { assess, type Assessment } from '../../core/index.ts';
import type { DogFile } from '../../electron/contract/contract.ts';
import { factsOf, type VisitForm } from './visitForm.ts';

/** What core makes of the record and the form as it stands, or why it cannot. */
export interface LiveAssessment {
  readonly assessment: Assessment | null;
  readonly problem: string | null;
}

/**
 * Computes with every change of the form, from the visits kept up to its day and the form itself as
 * the latest.
 */
export function useAssessment(
  file: DogFile,
  form: VisitForm,
  visitId: string | null,
): ComputedRef<LiveAssessment> {
  const others = file.visits.filter((visit) => visit.id !== visitId);
  return computed(() => {
    const facts = factsOf(form.visit);
    if (facts.day === '') return { assessment: null, problem: null };
    const visits = [...others.filter((visit) => visit.day <= facts.day), facts];
    try {
      const assessment = assess({
        dog: file.dog,
        visits,
        foodDecisions: file.foodDecisions,
        day: facts.day,
      });
      return { assessment, problem: null };
    } catch (error) {
      if (error instanceof RangeError) return { assessment: null, problem: error.message };
      throw error;
    }
  });
}
