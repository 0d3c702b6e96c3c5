import { nextTick, ref } from 'vue';
import type { Answer } from '../../electron/contract/errors.ts';
import { fieldId, type Form } from '../composables/useForm.ts';
import { useSaving } from '../composables/useSaving.ts';
import { useNotice } from '../stores/notice.ts';

interface KeptList<T extends object, R> {
  readonly form: Form<T>;
  readonly blank: () => T;
  /** Path of the field that takes the focus. */
  readonly first: string;
  /** How an entry is called in a notice. */
  readonly nameOf: (values: T) => string;
  /** How a notice says that it was taken in. */
  readonly done: 'kept' | 'saved';
  readonly keep: (id: string | null, values: T) => Promise<Answer<R>>;
  /** Left out where nothing is ever taken off the list. */
  readonly drop?: (id: string) => Promise<Answer<R>>;
  /** Takes over the list as it is kept now. */
  readonly take: (kept: R) => void;
}

/** A list that the practice keeps, changed one entry at a time in one small form. */
export function useKeptList<T extends object, R>(list: KeptList<T, R>) {
  const notice = useNotice();
  const { form } = list;
  /** Id of what is being changed; null while something new is written. */
  const editing = ref<string | null>(null);
  const open = ref(false);
  let button: HTMLElement | null = null;
  /** The button that begins a new one; has the focus again once that is done. */
  const beginButton = (drawn: unknown): void => {
    button = drawn as HTMLElement | null;
  };
  const { saving, error, save: saveBy } = useSaving(form);

  function taken(answer: Answer<R>): boolean {
    error.value = answer.ok ? null : answer.error;
    if (answer.ok) list.take(answer.value);
    return answer.ok;
  }

  async function begin(id: string | null, values: T = list.blank()): Promise<void> {
    form.replace(values);
    error.value = null;
    editing.value = id;
    open.value = true;
    await nextTick();
    document.getElementById(fieldId(list.first, form.name))?.focus();
  }

  async function end(): Promise<void> {
    open.value = false;
    await nextTick();
    button?.focus();
  }

  async function save(): Promise<void> {
    const kept = await saveBy(() => list.keep(editing.value, form.values));
    if (kept === null) return;
    list.take(kept);
    notice.say(`${list.nameOf(form.values).trim()} is ${list.done}.`);
    await end();
  }

  /** What is removed comes back as it was, wherever the practitioner has gone since. */
  async function remove(id: string, values: T): Promise<void> {
    if (list.drop === undefined || !taken(await list.drop(id))) return;
    notice.say(`${list.nameOf(values)} is removed. Visits keep what they say.`, {
      label: 'Undo',
      run: async () => {
        const answer = await list.keep(id, values);
        if (!taken(answer) && !answer.ok) notice.say(answer.error.message);
      },
    });
    await end();
  }
  return { form, editing, open, beginButton, saving, error, begin, end, save, remove };
}

/** What the form of such a list needs of it. */
export type KeptListing = Omit<
  ReturnType<typeof useKeptList<object, unknown>>,
  'form' | 'begin' | 'remove'
> & {
  readonly form: Pick<Form<object>, 'name' | 'problems' | 'failures'>;
  begin(id: null): Promise<void>;
};
