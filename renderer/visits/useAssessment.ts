import { computed, type ComputedRef } from 'vue';
import { presentState, type Assessment, type Ramp, type Screening } from '../../core/index.ts';
import { assessInput } from '../../electron/contract/visits/assessInput.ts';
import type { DogFile } from '../../electron/contract/contract.ts';
import type { RuleChange } from '../../electron/contract/records.ts';
import { factsOf, type VisitForm } from './visitForm.ts';

/** What core makes of the record and the form as it stands, or why it cannot. */
export interface LiveAssessment {
  readonly assessment: Assessment | null;
  /** Whether the dog may run, as it will stand once the form is saved as it is. */
  readonly screening: Screening | null;
  readonly problem: string | null;
}

/** What the form is seen against. */
export interface LiveContext {
  readonly file: DogFile;
  /** The kept visit being put right; null for a new one. */
  readonly visitId: string | null;
  /** The plan drawn up or taken over in the form; null where the one in force stays. */
  readonly ramp: () => Ramp | null;
  readonly rules: () => readonly RuleChange[];
  /** Sessions told so far, those told in the form among them; the file's own when left out. */
  readonly sessions?: () => DogFile['sessions'];
}

/**
 * Computes with every change of the form, from the visits kept up to its day and the form itself as
 * the latest; a plan drawn up in the form counts in place of the one in force, as it will when saved.
 */
export function useAssessment(
  form: VisitForm,
  { file, visitId, ramp, rules, sessions = () => file.sessions }: LiveContext,
): ComputedRef<LiveAssessment> {
  const others = file.visits.filter((visit) => visit.id !== visitId);
  return computed(() => {
    const facts = factsOf(form.visit);
    if (facts.day === '') return nothing(null);
    const stored = { id: visitId ?? '', createdAt: '', updatedAt: '', revision: 1, author: '' };
    const visits = [...others.filter((visit) => visit.day <= facts.day), { ...facts, ...stored }];
    try {
      const input = assessInput(
        { ...file, visits, sessions: sessions() },
        rules(),
        facts.day,
        visitId,
      );
      const drawn = ramp();
      // A review keeps what was asked for; only a plan made anew takes it from the form.
      const climbM = form.plan.wanted ? form.plan.climbM : (input.plan?.climbM ?? null);
      const plan = drawn === null ? input.plan : { ramp: drawn, climbM };
      const state = presentState({
        record: { ...input, plan },
        // A plan made anew takes the place of what the one in force waits for.
        plans: form.plan.wanted ? [] : file.plans,
        results: sessions(),
      });
      return {
        assessment: state?.assessment ?? null,
        screening: state?.screening ?? null,
        problem: null,
      };
    } catch (error) {
      if (error instanceof RangeError) return nothing(error.message);
      throw error;
    }
  });
}

const nothing = (problem: string | null): LiveAssessment => ({
  assessment: null,
  screening: null,
  problem,
});
