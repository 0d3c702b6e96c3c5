import { defineStore } from 'pinia';
import { ref, watch } from 'vue';

export const THEMES = ['system', 'light', 'dark'] as const;
export type Theme = (typeof THEMES)[number];

const STORED = 'trotwell:theme';

/** Light, dark, or as the system has it. Kept on this machine, not in the practice. */
export const useTheme = defineStore('theme', () => {
  const stored = localStorage.getItem(STORED);
  const theme = ref<Theme>(THEMES.find((name) => name === stored) ?? 'system');

  watch(
    theme,
    (name) => {
      localStorage.setItem(STORED, name);
      if (name === 'system') delete document.documentElement.dataset['theme'];
      else document.documentElement.dataset['theme'] = name;
    },
    { immediate: true },
  );
  return { theme };
});
