import { ref, shallowRef } from 'vue';
import type { Answer, AppError } from '../../electron/contract/errors.ts';
import type { Form } from './useForm.ts';

/** The steps of saving a form: its own problems first, then the call, then what that refuses. */
export function useSaving(form: Pick<Form<object>, 'attempt' | 'takeError'>) {
  /** True while a save goes on; another one waits for it. */
  const saving = ref(false);
  /** Why the last save was refused. */
  const error = shallowRef<AppError | null>(null);

  /** Saves by `call` unless the form stands in the way. @returns what was saved; null when nothing was */
  async function save<T>(call: () => Promise<Answer<T>>): Promise<T | null> {
    if (saving.value || !form.attempt()) return null;
    saving.value = true;
    const answer = await call();
    saving.value = false;
    error.value = answer.ok ? null : answer.error;
    if (answer.ok) return answer.value;
    form.takeError(answer.error);
    return null;
  }
  return { saving, error, save };
}
