import { ref, shallowRef, type Ref, type ShallowRef } from 'vue';
import type { Answer, AppError } from '../../electron/contract/errors.ts';
import type { Form } from './useForm.ts';

export interface Saving {
  /** True while a save goes on; another one waits for it. */
  readonly saving: Readonly<Ref<boolean>>;
  /** Why the last save was refused. */
  readonly error: Readonly<ShallowRef<AppError | null>>;
  /** Saves by `call` unless the form stands in the way. @returns what was saved; null when nothing was */
  save<T>(call: () => Promise<Answer<T>>): Promise<T | null>;
}

/** The steps of saving a form: its own problems first, then the call, then what that refuses. */
export function useSaving(form: Pick<Form<object>, 'attempt' | 'takeError'>): Saving {
  const saving = ref(false);
  const error = shallowRef<AppError | null>(null);
  return {
    saving,
    error,
    async save(call) {
      if (saving.value || !form.attempt()) return null;
      saving.value = true;
      const answer = await call();
      saving.value = false;
      error.value = answer.ok ? null : answer.error;
      if (answer.ok) return answer.value;
      form.takeError(answer.error);
      return null;
    },
  };
}
