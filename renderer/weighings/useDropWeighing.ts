import { ref } from 'vue';
import type { AppError } from '../../electron/contract/errors.ts';
import { useClient } from '../api/client.ts';
import { useShown } from '../composables/useShown.ts';
import { useNotice } from '../stores/notice.ts';

interface Weighed {
  readonly id: string;
  readonly day: string | null;
}

/** Takes weighings out of a record and back, saying so. */
export function useDropWeighing() {
  const client = useClient();
  const notice = useNotice();
  const shown = useShown();
  const error = ref<AppError | null>(null);
  const nameOf = ({ day }: Weighed) => `The weighing of ${shown.value.day(day)}`;

  /** @returns true when it is back. */
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
    /** Then the notice offers to take it back. @returns true when it is out of the record. */
    async drop(weighing: Weighed): Promise<boolean> {
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
