import { parentPort } from 'node:worker_threads';
import { print, type Printed, type PrintJob } from './print.ts';
import { warmUp, type WarmUp } from './warmUp.ts';

// Entry of the printing thread: a PDF takes most of a second, and the records must answer meanwhile.

export type ToPrintThread =
  | { readonly kind: 'print'; readonly id: number; readonly job: PrintJob }
  | { readonly kind: 'warm up'; readonly with: WarmUp };

export type FromPrintThread =
  | { readonly kind: 'ready' }
  | { readonly kind: 'printed'; readonly id: number; readonly printed: Printed }
  | { readonly kind: 'failed'; readonly id: number; readonly error: unknown };

const port = parentPort!;
const send = (message: FromPrintThread): void => port.postMessage(message);
let asked = false;

async function receive(id: number, job: PrintJob): Promise<void> {
  try {
    send({ kind: 'printed', id, printed: await print(job) });
  } catch (error) {
    send({ kind: 'failed', id, error });
  }
}

// One after the other: two at once would take twice the memory and not a moment less.
let queue = Promise.resolve();
port.on('message', (message: ToPrintThread) => {
  if (message.kind === 'print') asked = true;
  const work =
    message.kind === 'print'
      ? () => receive(message.id, message.job)
      : // What goes wrong is told by the first print, to whom it concerns.
        () => warmUp(message.with, () => asked).catch(() => undefined);
  queue = queue.then(work);
});
send({ kind: 'ready' });
