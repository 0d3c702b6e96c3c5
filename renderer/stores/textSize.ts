import { defineStore } from 'pinia';
import { ref, watch } from 'vue';

export const TEXT_SIZES = ['normal', 'large', 'larger', 'largest'] as const;
export type TextSize = (typeof TEXT_SIZES)[number];

const STORED = 'trotwell:text-size';

/**
 * How large everything is set, on top of what the system and the browser do. Kept on this machine,
 * not in the practice. The steps are in styles/tokens.css; all lengths are in rem and follow.
 */
export const useTextSize = defineStore('textSize', () => {
  const stored = localStorage.getItem(STORED);
  const size = ref<TextSize>(TEXT_SIZES.find((name) => name === stored) ?? 'normal');

  watch(
    size,
    (name) => {
      localStorage.setItem(STORED, name);
      if (name === 'normal') delete document.documentElement.dataset['text'];
      else document.documentElement.dataset['text'] = name;
    },
    { immediate: true },
  );
  return { size };
});
