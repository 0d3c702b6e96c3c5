import { onBeforeUnmount, ref, watch } from 'vue';
import { useClient } from '../api/client.ts';
import { usePractice } from '../stores/practice.ts';
import { whenLeaving } from './leaving.ts';
import { changedOver, draftStore, layOver, type KeptDraft } from './draftStore.ts';
import { plainCopy } from './plainCopy.ts';
import { useDraftUndo } from './useDraftUndo.ts';
import type { FieldContext, Form } from './useForm.ts';

const WAIT_MS = 700;

/** Holds a draft in this window, and gives it to the service once the typing pauses. */
function draftKeeper(store: () => ReturnType<typeof draftStore>) {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let waiting: KeptDraft | null = null;

  async function flush(leaving = false): Promise<void> {
    clearTimeout(timer);
    if (waiting === null) return;
    const draft = waiting;
    const taken = await store().keepThere(draft, leaving);
    // What was not taken is tried again with the next key, or when the window is left.
    if (taken && waiting === draft) waiting = null;
  }
  const stop = whenLeaving(() => flush(true));
  onBeforeUnmount(() => {
    stop();
    void flush();
  });
  return {
    keep(draft: KeptDraft): void {
      store().keepHere(draft);
      waiting = draft;
      clearTimeout(timer);
      timer = setTimeout(() => void flush(), WAIT_MS);
    },
    async forget(): Promise<void> {
      clearTimeout(timer);
      waiting = null;
      await store().drop();
    },
  };
}

const draftOf = <T extends object>({ values, typed }: Form<T>): KeptDraft => ({
  values: plainCopy(values),
  typed: { ...typed },
  savedAt: new Date().toISOString(),
});

const hasTyped = ({ typed }: FieldContext): boolean => Object.keys(typed).length > 0;
const same = (a: object, b: object): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Puts a draft into its form, and over it what was typed there since the form was at `initial`. */
function bringBack<T extends object>(
  form: Form<T>,
  { typed }: KeptDraft,
  { initial, restored }: { readonly initial: T; readonly restored: T },
): void {
  const now = plainCopy(form.values);
  form.replace(changedOver(restored, initial, now), { ...typed, ...form.typed });
}

interface DraftOptions<T> {
  /** Makes a kept draft fit what has changed since. */
  fit?(kept: T): T;
  /** True where nothing worth keeping is typed: then no draft is kept. */
  isBlank?(values: T): boolean;
}

/** Keeps a form's unsaved input, brings it back when the form is opened again. */
export function useDraft<T extends object>(
  form: Form<T>,
  key: () => string,
  { fit = (kept) => kept, isBlank = () => false }: DraftOptions<T> = {},
) {
  const client = useClient();
  const practice = usePractice();
  const offerUndo = useDraftUndo();
  const initial = plainCopy(form.values);
  /** When the restored draft was last changed; null when nothing was restored. */
  const restoredAt = ref<string | null>(null);
  let stopped = true;
  let ended = false; // dropped, perhaps while it was still being looked for
  const store = () => draftStore(client, practice.status?.open ?? 'none', key());
  const { keep, forget } = draftKeeper(store);

  /** What is in the form now; null where it is no more than the form began with. */
  const typed = () => (hasTyped(form) || !same(form.values, initial) ? draftOf(form) : null);

  function take(): void {
    if (stopped) return;
    if (isBlank(form.values) && !hasTyped(form)) {
      void forget();
      return;
    }
    keep(draftOf(form));
  }
  watch([() => form.values, () => form.typed], take, { deep: true, flush: 'sync' });

  /** Brings a kept draft back and begins to keep changes. Call once the form has its start values. */
  async function start(): Promise<void> {
    ended = false;
    Object.assign(initial, plainCopy(form.values));
    const draft = await store().find();
    if (ended) return;
    // Typed while the draft was being looked for: newer than the draft.
    const isNewer = !same(form.values, initial);
    if (draft !== null) {
      bringBack(form, draft, { initial, restored: fit(layOver(initial, draft.values)) });
      restoredAt.value = draft.savedAt;
    }
    stopped = false;
    if (isNewer) take();
  }

  /** Forgets the draft and keeps no more, e.g. after a successful save. */
  async function drop(): Promise<void> {
    stopped = true;
    ended = true;
    restoredAt.value = null;
    await forget();
  }

  /** Puts the form back to where it began and goes on keeping what is typed from now on. */
  function discard(): void {
    const kept = typed();
    void drop();
    form.replace(initial);
    stopped = false;
    ended = false;
    if (kept === null) return;
    const intoForm = () => form.replace(kept.values as T, kept.typed);
    offerUndo({ kept, store: store(), intoForm });
  }

  /** Forgets what was typed because the form is left without saving. */
  async function abandon(): Promise<void> {
    const kept = typed();
    await drop();
    if (kept !== null) offerUndo({ kept, store: store() });
  }

  return { restoredAt, start, drop, discard, abandon };
}
