import { ref, shallowRef } from 'vue';
import type { ResultOf } from '../../electron/contract/contract.ts';
import type { AppError } from '../../electron/contract/errors.ts';
import { useClient } from '../api/client.ts';

/** Repeats what of an erasure the disk or another program hindered. */
export function useFinishErasure() {
  const client = useClient();
  const busy = ref(false);
  const error = shallowRef<AppError | null>(null);

  /** @returns what came of it; null while it is going on already, or when it was refused. */
  async function finish(): Promise<ResultOf<'erasures/finish'> | null> {
    if (busy.value) return null;
    busy.value = true;
    const answer = await client.call('erasures/finish', {});
    busy.value = false;
    error.value = answer.ok ? null : answer.error;
    return answer.ok ? answer.value : null;
  }
  return { busy, error, finish };
}
