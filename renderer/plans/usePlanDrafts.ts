import { onMounted } from 'vue';
import { useClient } from '../api/client.ts';
import { draftStore } from '../composables/draftStore.ts';
import { usePractice } from '../stores/practice.ts';
import { planDraftKey } from './usePlanDraft.ts';

interface Found {
  /** Changes by hand were begun. */
  plan(): void;
  /** Something was being told of the session of a day. */
  session(day: string): void;
}

/** Looks, when the plan of a dog is opened, for what was begun there and not saved. */
export function usePlanDrafts(dogId: string, found: Found): void {
  const client = useClient();
  const practice = usePractice();
  onMounted(async () => {
    // The changes may lie in this window alone; what is told of a session is looked for by list.
    const store = draftStore(client, practice.status?.open ?? 'none', planDraftKey(dogId));
    if ((await store.find()) !== null) found.plan();
    const drafts = await client.call('drafts/list', {});
    if (!drafts.ok) return;
    const session = drafts.value.find((line) => line.dogId === dogId && line.what === 'session');
    if (session !== undefined && session.day !== null) found.session(session.day);
  });
}
