import { onBeforeUnmount, ref, watch } from 'vue';
import { useClient } from '../api/client.ts';
import { usePractice } from '../stores/practice.ts';
import { draftStore, layOver, type KeptDraft } from './draftStore.ts';
import { plainCopy } from './plainCopy.ts';
import type { Form } from './useForm.ts';

const WAIT_MS = 700;

/** Keeps a form's unsaved input, brings it back when the form is opened again. */
export function useDraft<T extends object>(form: Form<T>, key: () => string) {
  const client = useClient();
  const practice = usePractice();
  const initial = plainCopy(form.values);
  /** When the restored draft was last changed; null when nothing was restored. */
  const restoredAt = ref<string | null>(null);
  let stopped = true;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let waiting: KeptDraft | null = null;

  const store = () => draftStore(client, practice.status?.open ?? 'none', key());

  function flush(): void {
    clearTimeout(timer);
    if (waiting === null) return;
    void store().keepThere(waiting);
    waiting = null;
  }

  watch(
    [() => form.values, () => form.typed],
    () => {
      if (stopped) return;
      const draft = {
        values: plainCopy(form.values),
        typed: { ...form.typed },
        savedAt: new Date().toISOString(),
      };
      store().keepHere(draft);
      waiting = draft;
      clearTimeout(timer);
      timer = setTimeout(flush, WAIT_MS);
    },
    { deep: true, flush: 'sync' },
  );

  /** Brings a kept draft back and begins to keep changes. Call once the form has its start values. */
  async function start(): Promise<void> {
    Object.assign(initial, plainCopy(form.values));
    const draft = await store().find();
    if (draft !== null) {
      form.replace(layOver(initial, draft.values), draft.typed);
      restoredAt.value = draft.savedAt;
    }
    stopped = false;
  }

  /** Forgets the draft and keeps no more, e.g. after a successful save. */
  async function drop(): Promise<void> {
    stopped = true;
    clearTimeout(timer);
    waiting = null;
    restoredAt.value = null;
    await store().drop();
  }

  /** Puts the form back to where it began and goes on keeping what is typed from now on. */
  function discard(): void {
    void drop();
    form.replace(initial);
    stopped = false;
  }

  onBeforeUnmount(flush);
  return { restoredAt, start, drop, discard };
}
