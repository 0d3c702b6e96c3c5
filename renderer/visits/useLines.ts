import { shallowRef, type Ref } from 'vue';
import { useFieldContext } from '../composables/useForm.ts';

/** Takes lines out of a list of the form at `path`, and the last one back. */
export function useLines<T>(lines: Ref<T[]>, path: string) {
  const fields = useFieldContext();
  const removed = shallowRef<{ line: T; index: number } | null>(null);

  /** Text as typed and problems are kept by position, which shifts when a line goes or comes back. */
  function forgetTyped(under = `${path}.`): void {
    for (const typed of Object.keys(fields.typed)) {
      if (typed.startsWith(under)) delete fields.typed[typed];
    }
    fields.clearUnder(under);
  }

  function remove(index: number): void {
    forgetTyped();
    const [line] = lines.value.splice(index, 1);
    removed.value = line === undefined ? null : { line, index };
  }

  function undo(): void {
    if (removed.value === null) return;
    forgetTyped();
    lines.value.splice(removed.value.index, 0, removed.value.line);
    removed.value = null;
  }
  return { removed, forgetTyped, remove, undo };
}
