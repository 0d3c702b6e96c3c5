import { z } from 'zod';
import type { TrackOuting } from '../../../core/track/types.ts';
import { choice, id } from '../fields.ts';
import { LANGUAGES, type SessionInput } from '../records.ts';
import { call } from './call.ts';
import { token } from './exchange.ts';
import type { HomeFile } from './goesHome.ts';

/** One outing of a track: figures alone, the place is not among them. */
export interface OutingRead {
  /** The day it began on, and when, in the time zone of this machine: `YYYY-MM-DD`, `HH:MM`. */
  readonly day: string;
  readonly startsAt: string;
  readonly outing: Omit<TrackOuting, 'startS' | 'speedsMps'>;
  /** Mean speeds of equal stretches of time, for a chart. */
  readonly speeds: { readonly everyS: number; readonly mps: readonly number[] };
}

/** One row of a table the owner filled in. */
export interface RowRead {
  /** Line of the file, counted from 1. */
  readonly line: number;
  /** Null where the row was not understood; `problem` then says why, in a sentence. */
  readonly told: SessionInput | null;
  readonly problem: string;
}

/** What a file told of runs: a track its outings, a table its rows. */
export interface RunFile {
  readonly name: string;
  readonly outings: readonly OutingRead[];
  readonly rows: readonly RowRead[];
  /** The owner's record asks to keep the recording: it waits for `runs/keep` or `runs/leave`. */
  readonly waits: boolean;
}

const file = z.strictObject({ dogId: id('The dog'), token });

export const runCalls = {
  /**
   * Reads a track (GPX) or a table that came back (CSV). Nothing is kept: what is taken over is
   * saved as the result of a session. The file is gone afterwards, unless the owner's record asks
   * to keep the recordings.
   */
  'runs/read': call<RunFile>()(() => file),
  /** Keeps the recording of a run that was taken over: it waits for the dog's next new visit. */
  'runs/keep': call<null>()(() => file),
  /** Lets go of a recording that is not kept. */
  'runs/leave': call<null>()(() => file),
  /** The outings up to the end of the plan as a table (CSV) for the owner to fill in. */
  'runs/table': call<HomeFile>()(() =>
    z.strictObject({
      dogId: id('The dog'),
      language: choice('Language', LANGUAGES).optional(),
    }),
  ),
} as const;
