import { createHash } from 'node:crypto';
import { Worker } from 'node:worker_threads';
import type { Printed, PrintJob } from './print.ts';
import type { FromPrintThread, ToPrintThread } from './printThread.ts';

/** The thread's file lies beside this one: as source, or built. */
export function threadFile(here: string = import.meta.url): URL {
  return new URL(here.endsWith('.ts') ? './printThread.ts' : './printThread.js', here);
}

type Waiting = PromiseWithResolvers<Printed>;

/** The thread ended before it could take a job. */
class NoThread extends Error {}

type Thread = ReturnType<typeof startThread>;

/** The same job gives the same bytes, so this tells whether it has to be printed again. */
const nameOf = (job: PrintJob): string =>
  createHash('sha256').update(JSON.stringify(job)).digest('hex');

/**
 * Prints in a thread of its own, so that the records answer meanwhile. The thread starts at the first
 * job and stays. What was printed last is kept: it is looked at, saved and looked at again. Where a
 * system grants no thread, it prints in the service's own, which then answers nothing else meanwhile.
 */
export function createPrinter(file: URL = threadFile()) {
  let thread: Thread | null = null;
  let last: { readonly name: string; readonly printing: Promise<Printed> } | null = null;
  const underWay = new Set<Promise<unknown>>();
  const started = (): Thread => (thread ??= startThread(file, () => (thread = null)));

  async function printOrFallBack(job: PrintJob): Promise<Printed> {
    try {
      return await started().print(job);
    } catch (error) {
      if (!(error instanceof NoThread)) throw error;
      const { print } = await import('./print.ts');
      return print(job);
    }
  }

  return {
    /** @throws Error when a sheet cannot be printed or the thread ended under way. */
    print(job: PrintJob): Promise<Printed> {
      const name = nameOf(job);
      if (last?.name === name) return last.printing;
      const printing = printOrFallBack(job);
      last = { name, printing };
      underWay.add(printing);
      printing
        .catch(() => {
          if (last?.printing === printing) last = null;
        })
        .finally(() => underWay.delete(printing));
      return printing;
    },
    /** True once something was printed, or is being printed. */
    isStarted: (): boolean => thread !== null,
    /** Lets go of what was printed last. */
    forget(): void {
      last = null;
    },
    /** Lets prints under way finish, then ends the thread. */
    async close(): Promise<void> {
      await Promise.allSettled(underWay);
      await thread?.end();
    },
  };
}
export type Printer = ReturnType<typeof createPrinter>;

function startThread(file: URL, onEnd: () => void) {
  const worker = new Worker(file);
  worker.unref();
  const waiting = new Map<number, Waiting>();
  let lastId = 0;
  let ready = false;

  function settle(id: number, act: (job: Waiting) => void): void {
    const job = waiting.get(id);
    waiting.delete(id);
    // A thread without work must not keep the process from ending.
    if (waiting.size === 0) worker.unref();
    if (job !== undefined) act(job);
  }

  function ended(error: Error): void {
    onEnd();
    const reason = ready ? error : new NoThread(error.message);
    for (const id of [...waiting.keys()]) settle(id, (job) => job.reject(reason));
  }

  worker.on('message', (message: FromPrintThread) => {
    if (message.kind === 'ready') ready = true;
    else if (message.kind === 'printed') settle(message.id, (job) => job.resolve(message.printed));
    else settle(message.id, (job) => job.reject(message.error));
  });
  worker.on('error', (error) => ended(error as Error));
  worker.on('exit', () => ended(new Error('The printing thread ended.')));

  const post = (message: ToPrintThread): void => worker.postMessage(message);

  return {
    print(job: PrintJob): Promise<Printed> {
      lastId += 1;
      const id = lastId;
      worker.ref();
      const printing: Waiting = Promise.withResolvers();
      waiting.set(id, printing);
      post({ id, job });
      return printing.promise;
    },
    async end(): Promise<void> {
      await worker.terminate();
    },
  };
}
