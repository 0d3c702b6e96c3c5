import { computed, shallowRef } from 'vue';
import type { FilePurpose } from '../../electron/contract/files/purposes.ts';
import { useClient } from '../api/client.ts';
import { canBeTriedAgain, savingSentence, type Saving } from '../api/saveFile.ts';

/** Hands a file the service made to the practitioner, and again where it did not arrive. */
export function useHandingOver(purpose: FilePurpose) {
  const client = useClient();
  const file = shallowRef<{ readonly token: string; readonly name: string } | null>(null);
  const saving = shallowRef<Saving | null>(null);

  async function save(token: string, name: string): Promise<Saving> {
    file.value = { token, name };
    saving.value = null;
    return (saving.value = await client.files.saveProduced(token, name, purpose));
  }

  return {
    /** Null before anything was saved. */
    saving,
    save,
    /** What became of the last one; empty before. */
    said: computed(() =>
      file.value === null || saving.value === null
        ? ''
        : savingSentence(file.value.name, saving.value),
    ),
    /** True where the same file can be handed over once more. */
    canAgain: computed(() => saving.value !== null && canBeTriedAgain(saving.value)),
    async again(): Promise<void> {
      if (file.value !== null) await save(file.value.token, file.value.name);
    },
    clear(): void {
      file.value = null;
      saving.value = null;
    },
  };
}
