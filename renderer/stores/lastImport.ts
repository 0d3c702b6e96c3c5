import { defineStore } from 'pinia';
import { shallowRef } from 'vue';
import type { ImportDone } from '../../electron/contract/exchange/weightImport.ts';

/** The latest import of weights, as long as it can be taken back as a whole. */
export const useLastImport = defineStore('last import', () => {
  const done = shallowRef<ImportDone | null>(null);
  return { done };
});
