import { ref, shallowRef, type Ref, type ShallowRef } from 'vue';
import type { Answer, AppError } from '../../electron/contract/errors.ts';

export interface Load<T> {
  readonly state: Ref<'loading' | 'ready' | 'failed'>;
  readonly value: ShallowRef<T | null>;
  readonly error: ShallowRef<AppError | null>;
  /** Asks again. Only the latest answer counts. */
  reload(): Promise<void>;
}

/** Asks the service and keeps what it answered, with a loading and a failed state. */
export function useLoad<T>(ask: () => Promise<Answer<T>>): Load<T> {
  const state = ref<'loading' | 'ready' | 'failed'>('loading');
  const value = shallowRef<T | null>(null);
  const error = shallowRef<AppError | null>(null);
  let latest = 0;

  async function reload(): Promise<void> {
    const mine = ++latest;
    if (value.value === null) state.value = 'loading';
    const answer = await ask();
    if (mine !== latest) return;
    if (answer.ok) {
      value.value = answer.value;
      error.value = null;
      state.value = 'ready';
      return;
    }
    error.value = answer.error;
    state.value = 'failed';
  }
  return { state, value, error, reload };
}
