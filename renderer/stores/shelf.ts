import { defineStore } from 'pinia';
import { computed } from 'vue';
import { EMPTY_SHELF, type Shelf } from '../../electron/contract/food/shelf.ts';
import { usePractice } from './practice.ts';

/** The foods and phrases of the open practice; they come and go with its status. */
export const useShelf = defineStore('shelf', () => {
  const practice = usePractice();
  const shelf = computed<Shelf>(() => practice.status?.shelf ?? EMPTY_SHELF);
  return {
    foods: computed(() => shelf.value.foods),
    phrases: computed(() => shelf.value.phrases),
    /** Takes over what the service has just put on the shelf, or taken from it. */
    keep(changed: Shelf): void {
      if (practice.status !== null) practice.take({ ...practice.status, shelf: changed });
    },
  };
});
