import { parentPort } from 'node:worker_threads';
import { print, type Printed, type PrintJob } from './print.ts';

// Entry of the printing thread: a PDF takes most of a second, and the records must answer meanwhile.

export interface ToPrintThread {
  readonly id: number;
  readonly job: PrintJob;
}

export type FromPrintThread =
  | { readonly kind: 'ready' }
  | { readonly kind: 'printed'; readonly id: number; readonly printed: Printed }
  | { readonly kind: 'failed'; readonly id: number; readonly error: unknown };

const port = parentPort!;
const send = (message: FromPrintThread): void => port.postMessage(message);

async function receive({ id, job }: ToPrintThread): Promise<void> {
  try {
    send({ kind: 'printed', id, printed: await print(job) });
  } catch (error) {
    send({ kind: 'failed', id, error });
  }
}

// One after the other: two at once would take twice the memory and not a moment less.
let queue = Promise.resolve();
port.on('message', (message: ToPrintThread) => {
  queue = queue.then(() => receive(message));
});
send({ kind: 'ready' });
