import { ref, shallowRef } from 'vue';
import type { AppError } from '../../electron/contract/errors.ts';
import type { HandoutKind } from '../../electron/contract/records.ts';
import { useClient } from '../api/client.ts';
import { savePdf, savingSentence } from '../api/saveFile.ts';

/** What the owner takes home from a visit: what to feed and how to run. */
const SHEETS: readonly HandoutKind[] = ['feeding-sheet', 'running-plan'];

/** Prints feeding sheet and running plan as one file, without leaving the page. */
export function useSheets(dogId: string) {
  const client = useClient();
  const printing = ref(false);
  const error = shallowRef<AppError | null>(null);
  /** What became of the file; empty before it is printed. */
  const said = ref('');

  async function print(): Promise<void> {
    if (printing.value) return;
    printing.value = true;
    said.value = '';
    const answer = await client.call('handouts/bundle', { kinds: [...SHEETS], dogId, paper: null });
    printing.value = false;
    error.value = answer.ok ? null : answer.error;
    if (!answer.ok) return;
    const { fileName, base64, pages } = answer.value;
    const saving = await savePdf(fileName, base64);
    said.value = `Both sheets, ${pages} pages: ${savingSentence(fileName, saving)}`;
  }
  return { printing, error, said, print };
}
