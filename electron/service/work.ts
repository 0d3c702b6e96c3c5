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

/** The long work going on, by the name its page gave it. */
export interface WorkRegister {
  /** Runs `task` under a name, so that `state` and `cancel` find it. */
  run<T>(workId: string, task: (work: Work) => Promise<T>): Promise<T>;
  state(workId: string): WorkState | null;
  cancel(workId: string): void;
  /** Stops everything that goes on. */
  cancelAll(): void;
}

interface Going {
  state: WorkState | null;
  readonly stop: AbortController;
}

/** What work that is to stop answers. */
export function cancelled(): Refusal {
  return new Refusal({ kind: 'cancelled', message: 'Cancelled; nothing was changed.' });
}

/** A register without any work going on. */
export function createWorkRegister(): WorkRegister {
  const going = new Map<string, Going>();
  return {
    async run(workId, task) {
      const entry: Going = { state: null, stop: new AbortController() };
      going.set(workId, entry);
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
        going.delete(workId);
      }
    },
    state: (workId) => going.get(workId)?.state ?? null,
    cancel: (workId) => going.get(workId)?.stop.abort(),
    cancelAll() {
      for (const { stop } of going.values()) stop.abort();
    },
  };
}
