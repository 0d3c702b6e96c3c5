import type { BinKind } from '../../electron/contract/keeping/bin.ts';
import type { AppError } from '../../electron/contract/errors.ts';
import { useClient } from '../api/client.ts';
import { useNotice } from '../stores/notice.ts';

interface Entry {
  readonly kind: BinKind;
  readonly id: string;
  /** As in a sentence: "the visit of 02.03.2026". */
  readonly name: string;
}

const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Puts records into the bin and takes them back, saying so. */
export function useBin() {
  const client = useClient();
  const notice = useNotice();

  /** @returns what stands in the way, or null. */
  async function restore({ kind, id, name }: Entry): Promise<AppError | null> {
    const answer = await client.call('bin/restore', { kind, id });
    if (!answer.ok) return answer.error;
    notice.say(`${sentence(name)} is back in the records.`);
    return null;
  }

  async function undo(entry: Entry): Promise<void> {
    const error = await restore(entry);
    if (error !== null) notice.say(error.message);
    notice.turnPage();
  }

  /** @returns what stands in the way, or null; then the notice offers to take it back. */
  async function put(entry: Entry, reason: string): Promise<AppError | null> {
    const answer = await client.call('bin/put', { kind: entry.kind, id: entry.id, reason });
    if (!answer.ok) return answer.error;
    notice.say(`${sentence(entry.name)} is in the bin.`, {
      label: 'Undo',
      run: () => undo(entry),
    });
    return null;
  }
  return { put, restore };
}
