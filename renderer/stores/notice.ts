import { defineStore } from 'pinia';
import { ref, shallowRef } from 'vue';

/** One thing that can be done about what a notice says, for example taking it back. */
export interface NoticeAction {
  readonly label: string;
  run(): Promise<void> | void;
}

/**
 * One short sentence about what has just been done, shown and read out, with at most one thing to
 * do about it. It outlives the change of page that follows the action, goes with the next one, and
 * leaves by itself once it could be read twice over (`NoticeBar`).
 */
export const useNotice = defineStore('notice', () => {
  const text = ref('');
  const action = shallowRef<NoticeAction | null>(null);
  /** Counts how often the page in sight has become out of date; the page is then read again. */
  const turn = ref(0);
  /** True while the focus is in the notice: it must not go from under the keyboard. */
  const held = ref(false);
  let fresh = false;

  function clear(): void {
    text.value = '';
    action.value = null;
  }
  return {
    text,
    action,
    turn,
    held,
    clear,
    say(sentence: string, what: NoticeAction | null = null): void {
      text.value = sentence;
      action.value = what;
      fresh = true;
    },
    /** Has the page in sight read its records again. */
    turnPage(): void {
      turn.value++;
    },
    /** Called by the router after every change of page. */
    pageChanged(): void {
      if (!fresh && !held.value) clear();
      fresh = false;
    },
  };
});
