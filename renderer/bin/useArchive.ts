import type { Dog } from '../../electron/contract/records.ts';
import { useClient } from '../api/client.ts';
import { useNotice } from '../stores/notice.ts';

/** Puts a dog away and takes it back, saying so; the page in sight then reads its records again. */
export function useArchive() {
  const client = useClient();
  const notice = useNotice();

  async function set(dog: Pick<Dog, 'id' | 'name'>, archived: boolean): Promise<void> {
    const answer = await client.call('dogs/archive', { id: dog.id, archived });
    if (!answer.ok) {
      notice.say(answer.error.message);
      return;
    }
    notice.say(
      archived
        ? `${dog.name} is archived: out of the lists, with its record kept.`
        : `${dog.name} is back from the archive.`,
      { label: 'Undo', run: () => set(dog, !archived) },
    );
    notice.turnPage();
  }
  return { set };
}
