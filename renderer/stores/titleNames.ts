import { defineStore } from 'pinia';
import { ref, watch } from 'vue';

const STORED = 'trotwell:names-in-titles';

/**
 * Whether the title of a page names its dog. A browser keeps titles in its history, and a taskbar
 * shows them to whoever looks on. The choice is kept on this machine.
 */
export const useTitleNames = defineStore('titleNames', () => {
  const shown = ref(localStorage.getItem(STORED) !== 'off');
  watch(shown, (on) => localStorage.setItem(STORED, on ? 'on' : 'off'));
  return { shown };
});
