import { ref, shallowRef } from 'vue';
import type { RenderedHandout } from '../../electron/contract/contract.ts';
import type { AppError } from '../../electron/contract/errors.ts';
import type { HandoutKind } from '../../electron/contract/records.ts';
import { useClient } from '../api/client.ts';
import { savePdf, savingSentence } from '../api/saveFile.ts';
import { printSheets } from '../handouts/printSheets.ts';
import { counted } from '../words.ts';

/** The sheets that the practice chose for such a visit, printed or saved as one file here. */
export function useSheets(dogId: string, kinds: readonly HandoutKind[]) {
  const client = useClient();
  const printing = ref(false);
  const error = shallowRef<AppError | null>(null);
  /** What became of the sheets; empty before they are made. */
  const said = ref('');

  async function make(hand: (sheets: RenderedHandout) => Promise<string>): Promise<void> {
    if (printing.value) return;
    printing.value = true;
    said.value = '';
    const answer = await client.call('handouts/bundle', { kinds: [...kinds], dogId, paper: null });
    error.value = answer.ok ? null : answer.error;
    if (answer.ok) {
      const { pages, leftOut } = answer.value;
      const length = counted(pages, 'page');
      said.value = [`The sheets, ${length}: ${await hand(answer.value)}`, ...leftOut].join(' ');
    }
    printing.value = false;
  }

  return {
    printing,
    error,
    said,
    print: () => make(printSheets),
    save: () =>
      make(async ({ fileName, base64 }) =>
        savingSentence(fileName, await savePdf(fileName, base64)),
      ),
  };
}
