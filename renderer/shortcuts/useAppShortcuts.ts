import { nextTick, onBeforeUnmount, onMounted } from 'vue';
import { useRouter } from 'vue-router';
import { usePractice } from '../stores/practice.ts';
import { useShortcuts } from './registry.ts';
import { belongsElsewhere, belongsToSheet, isMac } from './shortcut.ts';
import { useShortcut } from './useShortcut.ts';

/** Listens to the keyboard for every shortcut, and brings those that work on all pages. */
export function useAppShortcuts(): void {
  const shortcuts = useShortcuts();
  const practice = usePractice();
  const router = useRouter();

  useShortcut({
    keys: ['?'],
    words: 'Show this sheet',
    scope: 'app',
    run: () => {
      shortcuts.sheetOpen = true;
    },
  });
  useShortcut({
    keys: ['/', 'Mod+k'],
    words: 'Find or add a dog',
    scope: 'app',
    when: () => practice.practice !== null,
    run: async () => {
      await router.push('/');
      // The change of page moves the focus to the heading first.
      await nextTick();
      await nextTick();
      const box = document.querySelector<HTMLInputElement>('#find-dog');
      box?.focus();
      box?.select();
    },
  });

  function listen(event: KeyboardEvent): void {
    if (event.defaultPrevented || event.isComposing || event.repeat) return;
    if (belongsToSheet(event.target)) return;
    const typing = belongsElsewhere(event.target);
    const found = shortcuts.find(event, isMac(navigator.platform), typing);
    if (found === undefined) return;
    event.preventDefault();
    void found.run();
  }
  onMounted(() => window.addEventListener('keydown', listen));
  onBeforeUnmount(() => window.removeEventListener('keydown', listen));
}
