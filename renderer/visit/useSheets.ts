import { ref, shallowRef } from 'vue';
import type { AppError } from '../../electron/contract/errors.ts';
import type { HandoutKind } from '../../electron/contract/records.ts';
import { useClient } from '../api/client.ts';
import { savePdf, savingSentence } from '../api/saveFile.ts';

/** Prints the sheets that the practice chose for such a visit as one file, without leaving the page. */
export function useSheets(dogId: string, kinds: readonly HandoutKind[]) {
  const client = useClient();
  const printing = ref(false);
  const error = shallowRef<AppError | null>(null);
  /** What became of the file; empty before it is printed. */
  const said = ref('');

  async function print(): Promise<void> {
    if (printing.value) return;
    printing.value = true;
    said.value = '';
    const answer = await client.call('handouts/bundle', { kinds: [...kinds], dogId, paper: null });
    printing.value = false;
    error.value = answer.ok ? null : answer.error;
    if (!answer.ok) return;
    const { fileName, base64, pages, leftOut } = answer.value;
    const saving = await savePdf(fileName, base64);
    const counted = pages === 1 ? '1 page' : `${pages} pages`;
    said.value = [`The sheets, ${counted}: ${savingSentence(fileName, saving)}`, ...leftOut].join(
      ' ',
    );
  }
  return { printing, error, said, print };
}
