import { onBeforeUnmount, ref, shallowRef } from 'vue';
import type { WorkState } from '../../electron/contract/calls/work.ts';
import type { Answer } from '../../electron/contract/errors.ts';
import { useClient } from '../api/client.ts';

const ASK_EVERY_MS = 300;

/** Long work of the service: one at a time, followed while it goes on, and stopped when asked. */
export function useWork() {
  const client = useClient();
  const running = ref(false);
  /** True from the moment the practitioner asked to stop. */
  const stopping = ref(false);
  const state = shallowRef<WorkState | null>(null);
  let workId = '';
  let timer: ReturnType<typeof setInterval> | undefined;

  async function look(): Promise<void> {
    const answer = await client.call('work/state', { workId });
    if (running.value && answer.ok && answer.value !== null) state.value = answer.value;
  }

  /** Runs a call that takes a `workId`, and hands its answer on. */
  async function run<T>(call: (workId: string) => Promise<Answer<T>>): Promise<Answer<T>> {
    workId = crypto.randomUUID();
    running.value = true;
    stopping.value = false;
    state.value = null;
    timer = setInterval(() => void look(), ASK_EVERY_MS);
    const answer = await call(workId);
    clearInterval(timer);
    running.value = false;
    return answer;
  }

  async function cancel(): Promise<void> {
    stopping.value = true;
    await client.call('work/cancel', { workId });
  }

  onBeforeUnmount(() => clearInterval(timer));
  return { running, stopping, state, run, cancel };
}

export type FollowedWork = ReturnType<typeof useWork>;
