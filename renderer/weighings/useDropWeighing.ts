import { ref, type Ref } from 'vue';
import type { AppError } from '../../electron/contract/errors.ts';
import { useClient } from '../api/client.ts';
import { useShown } from '../composables/useShown.ts';
import { useNotice } from '../stores/notice.ts';

interface Weighed {
  readonly id: string;
  readonly day: string | null;
}

export interface DropWeighing {
  readonly error: Ref<AppError | null>;
  /** Then the notice offers to take it back. @returns true when it is out of the record. */
  drop(weighing: Weighed): Promise<boolean>;
  /** @returns true when it is back. */
  restore(weighing: Weighed): Promise<boolean>;
}

/** Takes weighings out of a record and back, saying so. */
export function useDropWeighing(): DropWeighing {
  const client = useClient();
  const notice = useNotice();
  const shown = useShown();
  const error = ref<AppError | null>(null);
  const nameOf = ({ day }: Weighed) => `The weighing of ${shown.value.day(day)}`;

  async function restore(weighing: Weighed): Promise<boolean> {
    const answer = await client.call('weighings/restore', { id: weighing.id });
    error.value = answer.ok ? null : answer.error;
    if (answer.ok) notice.say(`${nameOf(weighing)} is back.`);
    return answer.ok;
  }

  async function undo(weighing: Weighed): Promise<void> {
    // The page it was removed on may be gone by now, and its own note with it.
    if (!(await restore(weighing)) && error.value !== null) notice.say(error.value.message);
    notice.turnPage();
  }

  return {
    error,
    restore,
    async drop(weighing) {
      const answer = await client.call('weighings/drop', { id: weighing.id });
      error.value = answer.ok ? null : answer.error;
      if (!answer.ok) return false;
      notice.say(`${nameOf(weighing)} is removed.`, {
        label: 'Undo',
        run: () => undo(weighing),
      });
      return true;
    },
  };
}
