import { onBeforeUnmount } from 'vue';
import { useRouter } from 'vue-router';
import { useNotice } from '../stores/notice.ts';
import type { draftStore, KeptDraft } from './draftStore.ts';

interface Discarded {
  readonly kept: KeptDraft;
  readonly store: ReturnType<typeof draftStore>;
  /** Puts the input back into its form, which goes on in place; left out where the form ends. */
  readonly intoForm?: () => void;
}

/** Offers to take back input that was discarded: in its form, or as a draft on the form's page. */
export function useDraftUndo(): (discarded: Discarded) => void {
  const notice = useNotice();
  const router = useRouter();
  // Later the practitioner may be on the way to another page.
  const path = router.currentRoute.value.fullPath;
  let gone = false;
  onBeforeUnmount(() => {
    gone = true;
  });

  async function ontoPage({ kept, store }: Discarded): Promise<void> {
    if (!(await store.keepThere(kept))) {
      notice.say('The input could not be taken back.');
      return;
    }
    if (router.currentRoute.value.fullPath === path) notice.turnPage();
    else await router.push(path);
  }

  return (discarded) => {
    const { intoForm } = discarded;
    notice.say('What was typed and not saved is discarded.', {
      label: 'Undo',
      run: () => (intoForm === undefined || gone ? ontoPage(discarded) : intoForm()),
    });
  };
}
