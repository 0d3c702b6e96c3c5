import { computed, shallowRef, type ShallowRef } from 'vue';
import { clientFactsOf, dogFactsOf } from '../../../electron/contract/records/facts.ts';
import type { AppError } from '../../../electron/contract/errors.ts';
import { changesBetween } from '../../../electron/contract/history/historyDiff.ts';
import type { Client, ClientInput, Dog } from '../../../electron/contract/records.ts';
import { useClient } from '../../api/client.ts';
import { hasSex, type DogEntry } from './dogEntry.ts';

export interface StoredDog {
  readonly dog: Dog;
  readonly client: Client;
}
interface Typed {
  readonly dog: DogEntry;
  readonly client: ClientInput;
}

/** What to do when the dog or its owner was saved by somebody else while the form was open. */
export function useDogConflict(typed: Typed, stored: ShallowRef<StoredDog | null>) {
  const client = useClient();
  const error = shallowRef<AppError | null>(null);
  const read = shallowRef(false);

  const differences = computed(() => {
    if (!read.value || stored.value === null || !hasSex(typed.dog)) return null;
    const { dog, client: owner } = stored.value;
    return [
      ...changesBetween('dog', dogFactsOf(dog), { ...typed.dog, clientId: dog.clientId }),
      ...changesBetween('client', clientFactsOf(owner), typed.client).map((change) => ({
        ...change,
        path: `client.${change.path}`,
      })),
    ];
  });

  /** Reads what is stored now. @returns why it could not, else null. */
  async function readAgain(): Promise<AppError | null> {
    const dogId = stored.value?.dog.id ?? '';
    const answer = await client.call('dogs/file', { dogId });
    if (!answer.ok) return answer.error;
    stored.value = { dog: answer.value.dog, client: answer.value.client };
    read.value = true;
    return null;
  }

  return {
    error,
    differences,
    readAgain,
    /** Takes a conflict up. @returns false for any other error. */
    meet(met: AppError | null): boolean {
      read.value = false;
      error.value = met?.kind === 'conflict' ? met : null;
      return error.value !== null;
    },
  };
}
