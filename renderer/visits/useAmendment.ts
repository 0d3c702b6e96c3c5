import { computed, shallowRef } from 'vue';
import type { DogFile, Visit } from '../../electron/contract/contract.ts';
import type { AppError } from '../../electron/contract/errors.ts';
import { changesBetween } from '../../electron/contract/history/historyDiff.ts';
import { visitFactsOf } from '../../electron/contract/records/facts.ts';
import type { VisitFacts } from '../../electron/contract/records.ts';
import { useClient } from '../api/client.ts';
import type { VisitForm } from './visitForm.ts';

/** The saved visit a form amends, what the form changes of it, and what to do when it has moved on. */
export function useAmendment(values: VisitForm, file: DogFile, visitId: string | null) {
  const client = useClient();
  const stored = shallowRef<Visit | null>(file.visits.find(({ id }) => id === visitId) ?? null);
  /** The answer that told of a change by somebody else. */
  const conflict = shallowRef<AppError | null>(null);
  /** True once the record has been read again after a conflict. */
  const read = shallowRef(false);

  const changes = computed(() =>
    stored.value === null
      ? []
      : // A number that is still missing is a change too; the service names it when it is saved.
        changesBetween('visit', visitFactsOf(stored.value), values.visit as unknown as VisitFacts),
  );

  /** Takes what is stored now as what the form is compared with. @returns why not, else null. */
  async function readAgain(): Promise<AppError | null> {
    const answer = await client.call('dogs/file', { dogId: file.dog.id });
    if (!answer.ok) return answer.error;
    const now = answer.value.visits.find(({ id }) => id === visitId);
    if (now === undefined) {
      return { kind: 'not-found', message: 'The visit is not in the records any more.' };
    }
    stored.value = now;
    read.value = true;
    return null;
  }

  return {
    stored,
    conflict,
    changes,
    differences: computed(() => (read.value ? changes.value : null)),
    readAgain,
    /** Takes a conflict up. @returns false for any other error. */
    meet(error: AppError | null): boolean {
      read.value = false;
      conflict.value = error?.kind === 'conflict' ? error : null;
      return conflict.value !== null;
    },
  };
}
