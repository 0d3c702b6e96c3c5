import { ref, type Ref } from 'vue';
import type { AppError } from '../../electron/contract/errors.ts';
import type { WeighingRecord } from '../../electron/contract/weighing.ts';
import { useClient } from '../api/client.ts';

export interface DropWeighing {
  /** The one dropped last, while it can be brought back. */
  readonly dropped: Ref<WeighingRecord | null>;
  readonly error: Ref<AppError | null>;
  /** @returns true when it is out of the record. */
  drop(weighing: WeighingRecord): Promise<boolean>;
  /** @returns true when it is back. */
  undo(): Promise<boolean>;
}

/** Takes weighings out of a record, and the last one back. */
export function useDropWeighing(): DropWeighing {
  const client = useClient();
  const dropped = ref<WeighingRecord | null>(null);
  const error = ref<AppError | null>(null);
  return {
    dropped,
    error,
    async drop(weighing) {
      const answer = await client.call('weighings/drop', { id: weighing.id });
      error.value = answer.ok ? null : answer.error;
      if (answer.ok) dropped.value = weighing;
      return answer.ok;
    },
    async undo() {
      if (dropped.value === null) return false;
      const answer = await client.call('weighings/restore', { id: dropped.value.id });
      error.value = answer.ok ? null : answer.error;
      if (answer.ok) dropped.value = null;
      return answer.ok;
    },
  };
}
