import { computed, type ComputedRef } from 'vue';
import { usePractice } from '../stores/practice.ts';
import { shownWith, type Shown } from '../units/shown.ts';

/** Values as text in the open practice's units. */
export function useShown(): ComputedRef<Shown> {
  const practice = usePractice();
  return computed(() => shownWith(practice.choices));
}
