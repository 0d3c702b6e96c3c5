import { onBeforeUnmount } from 'vue';
import { useShortcuts } from './registry.ts';
import type { Shortcut } from './shortcut.ts';

/** Gives the keyboard a shortcut, and the sheet a line, for as long as the component is there. */
export function useShortcut(shortcut: Shortcut): void {
  const shortcuts = useShortcuts();
  shortcuts.add(shortcut);
  onBeforeUnmount(() => shortcuts.remove(shortcut));
}
