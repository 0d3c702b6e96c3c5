import { defineStore } from 'pinia';
import { ref } from 'vue';

/**
 * One short sentence about what has just been done, shown and read out. It outlives the change of
 * page that follows the deed, and goes with the next one.
 */
export const useNotice = defineStore('notice', () => {
  const text = ref('');
  let fresh = false;
  return {
    text,
    say(sentence: string): void {
      text.value = sentence;
      fresh = true;
    },
    clear(): void {
      text.value = '';
    },
    /** Called by the router after every change of page. */
    pageChanged(): void {
      if (!fresh) text.value = '';
      fresh = false;
    },
  };
});
