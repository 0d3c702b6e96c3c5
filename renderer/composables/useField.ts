import { computed, ref } from 'vue';
import { useShown } from './useShown.ts';
import { fieldId, useFieldContext } from './useForm.ts';

/** What every field component shares: ids, its problem once it may be shown, the ARIA wiring. */
export function useField(path: () => string, hasHint: () => boolean) {
  const context = useFieldContext();
  const shown = useShown();
  const left = ref(false);
  const id = computed(() => fieldId(path(), context.name));
  const problem = computed(() => {
    const message = context.problemAt(path());
    const seen = left.value || context.attempted.value || context.isLive(path());
    // Core and service speak in SI units.
    return message !== undefined && seen ? shown.value.sentence(message) : undefined;
  });
  const describedBy = computed(() => {
    const ids = [
      hasHint() ? `${id.value}-hint` : '',
      problem.value === undefined ? '' : `${id.value}-problem`,
    ].filter((part) => part !== '');
    return ids.length === 0 ? undefined : ids.join(' ');
  });
  return {
    context,
    id,
    problem,
    describedBy,
    /** Called when the practitioner leaves the field: from now on its problem is shown. */
    leave: () => {
      left.value = true;
    },
    /** Called on every change by hand: a problem named by the service is thereby answered. */
    changed: () => context.clear(path()),
  };
}
