import { nextTick, onBeforeUnmount, watch } from 'vue';
import { defineStore } from 'pinia';
import { useClient } from '../api/client.ts';
import { draftsKept } from '../composables/draftStore.ts';
import { usePractice } from '../stores/practice.ts';

/** Locking from the page: by hand, or because nobody is there. */
export const useLock = defineStore('lock', () => {
  const client = useClient();
  const practice = usePractice();

  /** Shuts the page first: forms put their drafts away, and the service takes them before it locks. */
  async function lockNow(): Promise<void> {
    const status = practice.status;
    if (status === null || status.lock === null || status.lock.locked) return;
    practice.shut();
    await nextTick();
    await draftsKept(client);
    await client.call('lock/now', {});
  }

  return { lockNow };
});

const LOOK_EVERY_MS = 5_000;
/** How often the service hears that somebody reads here without asking it for anything. */
const AWAKE_EVERY_MS = 30_000;
const SIGNS = ['pointerdown', 'pointermove', 'keydown', 'wheel', 'touchstart'] as const;

/** Watches, for as long as the program is open, whether somebody is there. Called once. */
export function useIdleWatch(): void {
  const client = useClient();
  const practice = usePractice();
  const lock = useLock();
  // The clock, not a timer: it goes on while the computer sleeps.
  let seenAt = Date.now();
  let toldAt = Date.now();

  const see = (): void => {
    seenAt = Date.now();
  };

  function look(): void {
    const state = practice.status?.lock ?? null;
    if (state === null || state.locked) return;
    const now = Date.now();
    if (now - seenAt >= state.idleMinutes * 60_000) {
      void lock.lockNow();
    } else if (seenAt > toldAt && now - toldAt >= AWAKE_EVERY_MS) {
      toldAt = now;
      void client.call('lock/awake', {});
    }
  }

  for (const sign of SIGNS) window.addEventListener(sign, see, { passive: true });
  const timer = setInterval(look, LOOK_EVERY_MS);
  // The service locked by itself: whatever the page shows then is not to be seen any more.
  watch(
    () => client.lockedAnswers.value,
    () => {
      if (practice.status?.lock?.locked !== true) void practice.load();
    },
  );
  watch(() => practice.status?.lock?.locked, see);
  onBeforeUnmount(() => {
    clearInterval(timer);
    for (const sign of SIGNS) window.removeEventListener(sign, see);
  });
}
