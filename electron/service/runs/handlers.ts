import { readFile } from 'node:fs/promises';
import { trackOutings, type Track, type TrackOuting } from '../../../core/index.ts';
import type { AssessedRecord } from '../../contract/visits/assessInput.ts';
import type { OutingRead, RunFile, runCalls } from '../../contract/calls/runs.ts';
import { FILE_PURPOSES, tooLargeSentence } from '../../contract/files/purposes.ts';
import { readRecord } from '../visits/assessment.ts';
import { readClient } from '../dogs/clients.ts';
import type { Context, Handlers } from '../database/context.ts';
import { localDay } from '../day.ts';
import { readDog } from '../dogs/dogs.ts';
import { decodeText } from '../exchange/decodeText.ts';
import { readPractice } from '../practice/practice.ts';
import { badField } from '../refuse.ts';
import { keepRecording } from '../files/waiting.ts';
import type { Taken, Transfer } from '../files/transfer.ts';
import { readGpx, TrackFileError } from './readGpx.ts';
import { readTold, toldTable } from './toldTable.ts';

/** Points of a chart of speed, at most; enough for a screen's width. */
const MOST_SPEEDS = 360;
const CM_PER_M = 100;

export const runHandlers = (transfer: Transfer): Handlers<keyof typeof runCalls> => ({
  'runs/read': async (context, { dogId, token }) => {
    const record = await readRecord(context.db, dogId);
    const read = await readFileOfRuns(context, record, transfer.open(token)).catch(
      (error: unknown) => {
        transfer.drop(token);
        throw error;
      },
    );
    if (!read.waits) transfer.drop(token);
    return read;
  },
  'runs/keep': (context, { dogId, token }) =>
    transfer.use(token, async ({ name, file }) => {
      if (!(await asksToKeep(context, dogId))) {
        throw badField('token', 'The owner’s record does not ask to keep the recordings.');
      }
      await trackIn(decodeText(await readFile(file)).text);
      await keepRecording(context, dogId, { name, file });
      return null;
    }),
  'runs/leave': async (_context, { token }) => {
    transfer.drop(token);
    return null;
  },
  'runs/table': toldTable,
});

/** Whether the owner asks to keep the recordings of the dog's runs. @throws Refusal (not-found) */
async function asksToKeep(context: Context, dogId: string): Promise<boolean> {
  const { clientId } = await readDog(context.db, dogId);
  return (await readClient(context.db, clientId)).keepRecordings;
}

/** @throws Refusal (input) that says what is wrong with the file */
async function readFileOfRuns(
  context: Context,
  record: AssessedRecord,
  { name, bytes, file }: Taken,
): Promise<RunFile> {
  const { maxBytes } = FILE_PURPOSES.run;
  if (bytes > maxBytes) throw badField('token', tooLargeSentence(maxBytes));
  const { text } = decodeText(await readFile(file));
  if (/^\uFEFF?\s*</.test(text)) {
    const outings = await outingsIn(text, record);
    return { name, outings, rows: [], waits: await asksToKeep(context, record.dog.id) };
  }
  const dayFormat = (await readPractice(context))?.dayFormat ?? 'YYYY-MM-DD';
  const rows = readTold(text, dayFormat, context.today());
  return { name, outings: [], rows, waits: false };
}

/** @throws Refusal (input) that says why it is no track */
async function trackIn(text: string): Promise<Track> {
  try {
    return await readGpx(text);
  } catch (error) {
    if (error instanceof TrackFileError) throw badField('token', error.message);
    throw error;
  }
}

/** @throws Refusal (input) that says what is wrong with the track */
async function outingsIn(text: string, { dog, plans }: AssessedRecord): Promise<OutingRead[]> {
  const request = plans.find(({ current }) => current)?.request;
  const pace = request !== undefined && 'paceMinPerKm' in request.goal ? request.goal : request;
  try {
    const outings = trackOutings(await trackIn(text), {
      heightM: dog.withersCm === null ? null : dog.withersCm / CM_PER_M,
      paceMinPerKm: pace?.paceMinPerKm ?? null,
    });
    if (outings.length === 0) throw new TrackFileError('The points of this track have no times.');
    return outings.map(asRead);
  } catch (error) {
    if (error instanceof TrackFileError) throw badField('token', error.message);
    if (!(error instanceof RangeError)) throw error;
    throw badField(
      'token',
      'This track goes on for more than 24 hours without a break: its clock cannot be right.',
    );
  }
}

/** An outing as a page shows it. What would name the place has gone with the points. */
function asRead({ startS, speedsMps, ...outing }: TrackOuting): OutingRead {
  const start = new Date(startS * 1000);
  const everyS = Math.max(5, Math.ceil(speedsMps.length / MOST_SPEEDS));
  const stretches = Math.ceil(speedsMps.length / everyS);
  const mps = Array.from({ length: stretches }, (_, at) => {
    const part = speedsMps.slice(at * everyS, (at + 1) * everyS);
    return part.reduce((sum, speed) => sum + speed, 0) / part.length;
  });
  const two = (number: number): string => String(number).padStart(2, '0');
  return {
    day: localDay(start),
    startsAt: `${two(start.getHours())}:${two(start.getMinutes())}`,
    outing,
    speeds: { everyS, mps },
  };
}
