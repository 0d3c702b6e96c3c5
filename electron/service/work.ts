import { Refusal } from '../contract/errors.ts';
import type { WorkState } from '../contract/calls/work.ts';

/** What long work does as it goes: says how far it is, and hears that it is to stop. */
export interface Work {
  /**
   * Says how far the work is and lets other questions be answered.
   * @throws Refusal (cancelled) when it is to stop; the caller takes back what it had begun.
   */
  step(state: WorkState): Promise<void>;
  /** Aborts when the work is to stop. */
  readonly signal: AbortSignal;
}

interface Going {
  state: WorkState | null;
  readonly stop: AbortController;
  ended: Promise<unknown>;
}

/** What work that is to stop answers. */
export function cancelled(): Refusal {
  return new Refusal({ kind: 'cancelled', message: 'Cancelled; nothing was changed.' });
}

/** The long work going on, by the name its page gave it. */
export function createWorkRegister() {
  const going = new Map<string, Going>();
  const all = new Set<Going>();

  async function perform<T>(workId: string, entry: Going, task: (work: Work) => Promise<T>) {
    try {
      return await task({
        signal: entry.stop.signal,
        async step(state) {
          entry.state = state;
          // Gives way to the questions that come in meanwhile.
          await new Promise((resolve) => setImmediate(resolve));
          if (entry.stop.signal.aborted) throw cancelled();
        },
      });
    } finally {
      all.delete(entry);
      if (going.get(workId) === entry) going.delete(workId);
    }
  }
  /** Has everything that goes on stop. */
  function cancelAll(): void {
    for (const { stop } of all) stop.abort();
  }
  return {
    /** Runs `task` under a name, so that `state` and `cancel` find it. */
    run<T>(workId: string, task: (work: Work) => Promise<T>): Promise<T> {
      const entry: Going = { state: null, stop: new AbortController(), ended: Promise.resolve() };
      going.set(workId, entry);
      all.add(entry);
      const result = perform(workId, entry, task);
      entry.ended = result.catch(() => undefined);
      return result;
    },
    state: (workId: string): WorkState | null => going.get(workId)?.state ?? null,
    cancel: (workId: string): void => going.get(workId)?.stop.abort(),
    cancelAll,
    /** The same, and resolves when it has. Not to be awaited by work itself. */
    async stopAll(): Promise<void> {
      cancelAll();
      await Promise.all([...all].map(({ ended }) => ended));
    },
  };
}
export type WorkRegister = ReturnType<typeof createWorkRegister>;
