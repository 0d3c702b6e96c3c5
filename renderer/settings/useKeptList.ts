import { nextTick, ref, shallowRef, type Ref } from 'vue';
import type { Shelf } from '../../electron/contract/food/shelf.ts';
import type { Answer, AppError } from '../../electron/contract/errors.ts';
import { fieldId, type Form } from '../composables/useForm.ts';
import { useNotice } from '../stores/notice.ts';
import { useShelf } from '../stores/shelf.ts';

interface KeptList<T extends object> {
  readonly form: Form<T>;
  readonly blank: () => T;
  /** Path of the field that takes the focus. */
  readonly first: string;
  /** How an entry is called in a notice. */
  readonly nameOf: (values: T) => string;
  readonly keep: (id: string | null, values: T) => Promise<Answer<Shelf>>;
  readonly drop: (id: string) => Promise<Answer<Shelf>>;
  /** The button that begins a new one; has the focus again once that is done. */
  readonly add: Readonly<Ref<HTMLButtonElement | null>>;
}

/** Something the practice keeps on its shelf, changed one entry at a time in one small form. */
export function useKeptList<T extends object>(list: KeptList<T>) {
  const shelf = useShelf();
  const notice = useNotice();
  const { form } = list;
  /** Id of what is being changed; null while something new is written. */
  const editing = ref<string | null>(null);
  const open = ref(false);
  const saving = ref(false);
  const error = shallowRef<AppError | null>(null);

  function taken(answer: Answer<Shelf>): boolean {
    error.value = answer.ok ? null : answer.error;
    if (answer.ok) shelf.keep(answer.value);
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
    list.add.value?.focus();
  }

  async function save(): Promise<void> {
    if (saving.value || !form.attempt()) return;
    saving.value = true;
    const answer = await list.keep(editing.value, form.values);
    saving.value = false;
    if (!taken(answer)) {
      if (!answer.ok) form.takeError(answer.error);
      return;
    }
    notice.say(`${list.nameOf(form.values).trim()} is kept.`);
    await end();
  }

  /** What is removed comes back as it was, wherever the practitioner has gone since. */
  async function remove(id: string, values: T): Promise<void> {
    if (!taken(await list.drop(id))) return;
    notice.say(`${list.nameOf(values)} is removed. Visits keep what they say.`, {
      label: 'Undo',
      run: async () => {
        const answer = await list.keep(id, values);
        if (!taken(answer) && !answer.ok) notice.say(answer.error.message);
      },
    });
    await end();
  }
  return { editing, open, saving, error, begin, end, save, remove };
}
