import { nextTick, shallowRef, type Ref } from 'vue';
import type { ImportPreview } from '../../electron/contract/exchange/weightImport.ts';
import { useShortcut } from '../shortcuts/useShortcut.ts';

/** Looks at the table anew. */
type Look = () => Promise<void>;

/**
 * The rows of a table that are left out, by line. One key leaves out the row that has the focus, else
 * the first that is refused or in doubt; the focus then goes to the next such row, or to what keeps
 * the table once there is none.
 */
export function useLeaveOut(
  part: Readonly<Ref<HTMLElement | null>>,
  preview: Readonly<Ref<ImportPreview | null>>,
  look: Look,
) {
  const lines = shallowRef<readonly number[]>([]);

  const find = (where: string) => part.value?.querySelector<HTMLElement>(where) ?? null;
  const lineOf = (element: Element | null): number | null => {
    const row = element?.closest<HTMLElement>('[data-line]');
    return row == null ? null : Number(row.dataset['line']);
  };

  async function set(line: number, out: boolean): Promise<void> {
    const others = lines.value.filter((other) => other !== line);
    lines.value = out ? [...others, line] : others;
    await look();
    await nextTick();
    const next = out ? (find('.in-doubt') ?? find('.keep')) : find(`[data-line="${line}"] button`);
    next?.focus();
  }

  async function leaveOutNext(): Promise<void> {
    const atFocus = document.activeElement?.matches('.in-doubt') ? document.activeElement : null;
    const line = lineOf(atFocus ?? find('.in-doubt'));
    if (line !== null) await set(line, true);
  }

  useShortcut({
    keys: ['x'],
    words: 'Leave out the row at the focus, else the first that is refused or in doubt',
    scope: 'rows',
    when: () => preview.value !== null && preview.value.counts.refused + preview.value.slips > 0,
    run: leaveOutNext,
  });

  return {
    lines,
    set,
    /** Another table begins whole. */
    clear(): void {
      lines.value = [];
    },
  };
}
