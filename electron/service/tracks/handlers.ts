import { readFile } from 'node:fs/promises';
import { trackOutings, type TrackOuting } from '../../../core/index.ts';
import type { AssessedRecord } from '../../contract/assessInput.ts';
import type { OutingRead, runCalls } from '../../contract/calls/runs.ts';
import { FILE_PURPOSES, tooLargeSentence } from '../../contract/filePurposes.ts';
import { readRecord } from '../assessment.ts';
import type { Handlers } from '../context.ts';
import { localDay } from '../day.ts';
import { decodeText } from '../exchange/decodeText.ts';
import { readPractice } from '../practice.ts';
import { badField } from '../refuse.ts';
import type { Transfer } from '../transfer.ts';
import { readGpx, TrackFileError } from './readGpx.ts';
import { readTold, toldTable } from './toldTable.ts';

/** Points of a chart of speed, at most; enough for a screen's width. */
const MOST_SPEEDS = 360;
const CM_PER_M = 100;

export const runHandlers = ({
  transfer,
}: {
  readonly transfer: Transfer;
}): Handlers<keyof typeof runCalls> => ({
  'runs/read': async (desk, { dogId, token }) => {
    const record = await readRecord(desk.db, dogId);
    return transfer.use(token, async ({ name, bytes, file }) => {
      const { maxBytes } = FILE_PURPOSES.run;
      if (bytes > maxBytes) throw badField('token', tooLargeSentence(maxBytes));
      const { text } = decodeText(await readFile(file));
      if (/^\uFEFF?\s*</.test(text)) {
        return { name, outings: await outingsIn(text, record), rows: [] };
      }
      const dayFormat = (await readPractice(desk))?.dayFormat ?? 'YYYY-MM-DD';
      return { name, outings: [], rows: readTold(text, dayFormat, desk.today()) };
    });
  },
  'runs/table': toldTable,
});

/** @throws Refusal (input) that says what is wrong with the track */
async function outingsIn(text: string, { dog, plans }: AssessedRecord): Promise<OutingRead[]> {
  const request = plans.find(({ current }) => current)?.request;
  const pace = request !== undefined && 'paceMinPerKm' in request.goal ? request.goal : request;
  try {
    const outings = trackOutings(await readGpx(text), {
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
