import { defineStore } from 'pinia';
import { ref } from 'vue';

/**
 * The name that a new dog is to have, on its way from the desk to the form. Not in the address: a
 * browser keeps those in its history, where no erasure reaches them.
 */
export const useNewDog = defineStore('newDog', () => {
  const name = ref('');
  function ask(wanted: string): void {
    name.value = wanted;
  }
  /** The name asked for, once. */
  function take(): string {
    const asked = name.value;
    name.value = '';
    return asked;
  }
  return { ask, take };
});
