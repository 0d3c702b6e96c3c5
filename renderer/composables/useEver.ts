import { ref, watch, type Ref } from 'vue';

/**
 * True from the first time `shown` is, and from then on. For a dialog that is fetched when it is
 * first opened, and stays, so that it can close by itself and hand the focus back.
 */
export function useEver(shown: () => boolean): Readonly<Ref<boolean>> {
  const ever = ref(false);
  watch(shown, (now) => (ever.value ||= now), { immediate: true });
  return ever;
}
