import { defineStore } from 'pinia';
import { computed, ref, shallowRef, watch } from 'vue';
import { isBare, isHeld, matches, type Pressed, type Shortcut } from './shortcut.ts';

const STORED = 'trotwell:single-keys';

/**
 * The shortcuts of what is on the page now. Single keys can be turned off, which people who speak
 * to their computer need; that is kept on this machine.
 */
export const useShortcuts = defineStore('shortcuts', () => {
  const kept = shallowRef<readonly Shortcut[]>([]);
  const sheetOpen = ref(false);
  const singleKeys = ref(localStorage.getItem(STORED) !== 'off');
  watch(singleKeys, (on) => localStorage.setItem(STORED, on ? 'on' : 'off'));

  const inForce = computed(() => kept.value.filter(({ when }) => when?.() ?? true));

  function add(shortcut: Shortcut): void {
    kept.value = [...kept.value, shortcut];
  }
  function remove(shortcut: Shortcut): void {
    kept.value = kept.value.filter((other) => other !== shortcut);
  }
  /**
   * What `pressed` does; a page's own shortcut goes before one of the whole program. Keys of fields
   * are the business of their form; in a field (`typing`) only keys with Alt do something.
   */
  function find(pressed: Pressed, mac: boolean, typing = false): Shortcut | undefined {
    const listened = inForce.value.filter(({ scope }) => scope !== 'fields');
    const works = (key: string) => (typing ? isHeld(key) : singleKeys.value || !isBare(key));
    return listened.findLast(({ keys }) =>
      keys.some((key) => works(key) && matches(key, pressed, mac)),
    );
  }
  return { inForce, sheetOpen, singleKeys, add, remove, find };
});
