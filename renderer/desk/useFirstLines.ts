import { computed, ref } from 'vue';
import { grouped } from '../../core/quantityText.ts';

/** Lines shown before "Show all": the list of dogs below must stay in sight. */
const FIRST_LINES = 5;

/** The first lines of a table on the desk, and what the button below them does and says. */
export function useFirstLines<T>(lines: () => readonly T[]) {
  const all = ref(false);
  const listed = computed(() => (all.value ? lines() : lines().slice(0, FIRST_LINES)));
  const hasMore = computed(() => lines().length > FIRST_LINES);
  const words = computed(() => (all.value ? 'Show fewer' : `Show all ${grouped(lines().length)}`));
  return { all, listed, hasMore, words };
}
