import { utilityProcess, type BrowserWindow } from 'electron';
import type { CallName } from '../contract/contract.ts';
import type { Answer } from '../contract/errors.ts';
import type { TakenFile } from '../contract/files/purposes.ts';
import type { FromService, ServiceSettings, ToService } from './messages.ts';

/**
 * A service that does not close by itself in this time is ended; SQLite's journal keeps it whole. It
 * makes a backup as it closes, which takes a while for a large practice.
 */
const CLOSE_LIMIT_MS = 60_000;

const GONE: Answer<never> = {
  ok: false,
  error: {
    kind: 'unreachable',
    message:
      'The part of Trotwell that keeps the records has ended. Close the window and start again.',
  },
};

/** Starts the service in a process of its own; a fault there does not take the window along. */
export function startService(entry: string, settings: ServiceSettings) {
  const child = utilityProcess.fork(entry, [JSON.stringify(settings)], {
    serviceName: 'Trotwell records',
  });
  const waiting = new Map<number, (answer: Answer<unknown>) => void>();
  let lastId = 0;
  let running = true;
  const ended = new Promise<void>((resolve) => {
    child.once('exit', () => {
      running = false;
      for (const settle of waiting.values()) settle(GONE);
      waiting.clear();
      resolve();
    });
  });
  child.on('message', ({ id, answer }: FromService) => {
    waiting.get(id)?.(answer);
    waiting.delete(id);
  });
  // Unheard, it would end the window with it; `exit` follows in any case.
  child.on('error', (type, location) => console.error(`The service ended: ${type} (${location}).`));
  const send = (message: ToService): void => child.postMessage(message);
  /** Sends what has an answer, and waits for it. */
  const ask = (question: (id: number) => ToService): Promise<Answer<unknown>> => {
    if (!running) return Promise.resolve(GONE);
    lastId += 1;
    const id = lastId;
    return new Promise((resolve) => {
      waiting.set(id, resolve);
      send(question(id));
    });
  };
  return {
    call: (name: CallName, input: unknown) => ask((id) => ({ kind: 'call', id, name, input })),
    /** Has the service take in a file: the one at a chosen path, or a dropped one's bytes. */
    takeIn: (name: string, from: string | Uint8Array, maxBytes: number) =>
      ask((id) => ({ kind: 'take-in', id, name, from, maxBytes })) as Promise<Answer<TakenFile>>,
    /** Has the service write a file it made to a chosen path. */
    writeOut: (token: string, path: string) =>
      ask((id) => ({ kind: 'write-out', id, token, path })) as Promise<Answer<null>>,
    /** Has the service close its database, and waits for it to end. */
    async close(): Promise<void> {
      if (running) send({ kind: 'close' });
      const late = setTimeout(() => child.kill(), CLOSE_LIMIT_MS);
      await ended;
      clearTimeout(late);
    },
  };
}
export type ServiceLink = ReturnType<typeof startService>;

/** What the parts of the shell ask for; there is no service before the start and while closing. */
export interface ShellRoom {
  service(): ServiceLink | null;
  window(): BrowserWindow | null;
}
