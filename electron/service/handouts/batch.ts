import { rmSync } from 'node:fs';
import type { BatchDog, BatchPrinted, BatchSheet } from '../../contract/calls/handouts.ts';
import type { ParsedOf } from '../../contract/contract.ts';
import { Refusal } from '../../contract/errors.ts';
import type { HandoutKind } from '../../contract/records.ts';
import { errorValue, type Log } from '../answers.ts';
import { Later, type Context } from '../database/context.ts';
import type { Transfer } from '../files/transfer.ts';
import type { Work, WorkRegister } from '../work.ts';
import { writeZip } from '../files/zipFile.ts';
import { batchFileNames, type Named } from './fileNames.ts';
import { printJob, type PrintRoom } from './job.ts';
import { collect, readLetterhead } from './material.ts';
import type { PrintJob } from './print.ts';
import { whyNoSheet } from './whyNoSheet.ts';

export interface BatchRoom extends PrintRoom {
  readonly transfer: Transfer;
  readonly work: WorkRegister;
  readonly log: Log | undefined;
}

type BatchRequest = ParsedOf<'handouts/batch'>;

interface BegunDog {
  readonly dogId: string;
  /** Whose names the files bear; empty where there is no record to print from. */
  readonly names: Named;
  readonly sheets: readonly Begun[];
}

/** A sheet to be printed, or the sentence that says why it cannot be. */
interface Begun {
  readonly kind: HandoutKind;
  readonly job: PrintJob | null;
  readonly problem: string | null;
}

/**
 * Reads every record now and prints later, one sheet after the other, into one zip archive. What
 * cannot be printed is named and does not keep the others waiting.
 * @throws Refusal (input) without a practice, (cancelled); nothing is left behind then
 */
export async function runBatch(
  context: Context,
  room: BatchRoom,
  request: BatchRequest,
): Promise<Later<BatchPrinted>> {
  const reading = Promise.withResolvers<void>();
  const day = context.today();
  const result = room.work.run(request.workId, async (work) => {
    const dogs = await readDogs(context, room, work, request);
    reading.resolve();
    return printAll(room, work, dogs, day);
  });
  // Only what goes wrong while reading answers at once; a promise that is settled stays so.
  result.catch(reading.reject);
  await reading.promise;
  return new Later(result);
}

async function readDogs(
  context: Context,
  { fontsFolder }: PrintRoom,
  work: Work,
  request: BatchRequest,
): Promise<BegunDog[]> {
  const letterhead = await readLetterhead(context);
  const language = request.language ?? letterhead.practice.language;
  const { dogIds, paper } = request;
  const dogs: BegunDog[] = [];
  for (const [done, dogId] of dogIds.entries()) {
    await work.step({ done, total: dogIds.length, step: 'Reading the records' });
    try {
      const material = await collect(context, dogId, paper, letterhead);
      const kinds = request.kinds ?? material.chosen;
      const sheets = kinds.map((kind): Begun => {
        const problem = whyNoSheet(kind, material);
        const job = problem === null ? printJob(material, [kind], { language, fontsFolder }) : null;
        return { kind, job, problem };
      });
      const { file } = material;
      const { day } = material.context;
      const names = { dogName: file.dog.name, clientName: file.client.name, day };
      dogs.push({ dogId, names, sheets });
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      const problem = error.error.message;
      // A dog without a record to print from has its intake ahead.
      const kinds = request.kinds ?? letterhead.practice.intakeSheets;
      const sheets = kinds.map((kind) => ({ kind, job: null, problem }));
      dogs.push({ dogId, names: { dogName: '', clientName: '', day: '' }, sheets });
    }
  }
  return dogs;
}

/** Prints what was begun into one archive; where no sheet could be printed, none is kept. */
async function printAll(
  room: BatchRoom,
  work: Work,
  begun: readonly BegunDog[],
  day: string,
): Promise<BatchPrinted> {
  const fileName = `trotwell-sheets-${day}.zip`;
  const file = room.transfer.room();
  const dogs: BatchDog[] = [];
  await writeZip(file, work, async (zip) => {
    const nameOf = batchFileNames();
    const print = sheetPrinter(room, work, begun);
    for (const { dogId, names, sheets } of begun) {
      const printed: BatchSheet[] = [];
      for (const sheet of sheets) {
        const { bytes, ...outcome } = await print(sheet);
        printed.push(outcome);
        // A PDF is compressed already.
        if (bytes !== null) zip.addBuffer(bytes, nameOf(names, sheet.kind), { compress: false });
      }
      dogs.push({ dogId, sheets: printed });
    }
  });
  if (dogs.every(({ sheets }) => sheets.every(({ problem }) => problem !== null))) {
    rmSync(file, { force: true });
    return { token: null, fileName, dogs };
  }
  const token = await room.transfer.produced(file, fileName, 'application/zip');
  return { token, fileName, dogs };
}

interface Outcome extends BatchSheet {
  readonly bytes: Buffer | null;
}

/** Prints one sheet after the other and says how far it is. */
function sheetPrinter({ printer, log }: BatchRoom, work: Work, begun: readonly BegunDog[]) {
  const total = begun.flatMap(({ sheets }) => sheets).filter(({ job }) => job !== null).length;
  let done = 0;
  return async ({ kind, job, problem }: Begun): Promise<Outcome> => {
    if (job === null) return { kind, pages: 0, problem, bytes: null };
    const step = `Printing sheet ${done + 1} of ${total}, for ${job.context.dog.name}`;
    await work.step({ done, total, step });
    done += 1;
    try {
      const { base64, pages } = await printer.print(job);
      return { kind, pages, problem: null, bytes: Buffer.from(base64, 'base64') };
    } catch (error) {
      const { reference } = errorValue(error, log);
      const message = `The sheet could not be set (reference ${reference}).`;
      return { kind, pages: 0, problem: message, bytes: null };
    }
  };
}
