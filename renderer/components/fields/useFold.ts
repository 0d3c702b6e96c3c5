import { computed, nextTick, ref, useId, type Ref } from 'vue';

/** A part of a form that is folded until it is opened, or has to be seen. */
export function useFold(
  inner: Readonly<Ref<HTMLElement | null>>,
  held: () => boolean,
  begins = false,
) {
  const opened = ref(begins);
  return {
    id: useId(),
    open: computed(() => opened.value || held()),
    /** Opens it, with the focus in its first field, or folds it again. */
    async toggle(): Promise<void> {
      opened.value = !opened.value;
      if (!opened.value) return;
      await nextTick();
      inner.value?.querySelector<HTMLElement>('input, select, textarea, button')?.focus();
    },
  };
}
