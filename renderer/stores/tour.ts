import { defineStore } from 'pinia';
import { ref } from 'vue';

const STORED = 'trotwell:first-steps';

/** Whether the first steps are shown on the desk. That they were seen is kept on this machine. */
export const useTour = defineStore('tour', () => {
  const shown = ref(localStorage.getItem(STORED) !== 'seen');
  return {
    shown,
    end(): void {
      shown.value = false;
      localStorage.setItem(STORED, 'seen');
    },
    begin(): void {
      shown.value = true;
    },
  };
});
