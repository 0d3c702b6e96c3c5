import { watch } from 'vue';
import { useFieldContext } from './useForm.ts';

/**
 * Refuses a field for what only the whole form can tell, beside it and as soon as it is so; takes its
 * own refusal back, and no other, once it is not. `problem` is a sentence, or null.
 */
export function useLiveRefusal(path: string, problem: () => string | null): void {
  const context = useFieldContext();
  watch(
    [problem, () => context.problemAt(path)] as const,
    ([now, shown], [before]) => {
      // The field's own refusal, of text that cannot be read, comes first.
      if (now !== null && (shown === undefined || shown === before)) context.refuseNow(path, now);
      if (now === null && before != null && shown === before) context.clear(path);
    },
    { immediate: true, flush: 'post' },
  );
}
