import { z } from 'zod';
import type { TrackOuting } from '../../../core/track/types.ts';
import { choice, id } from '../fields.ts';
import { LANGUAGES, type SessionInput } from '../records.ts';
import { call } from './call.ts';
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
}

export const runCalls = {
  /**
   * Reads a track (GPX) or a table that came back (CSV). Nothing is kept, and the file is gone
   * afterwards: what is taken over is saved as the result of a session.
   */
  'runs/read': call<RunFile>()(
    z.strictObject({
      dogId: id('The dog'),
      token: z
        .string({ error: 'Choose a file.' })
        .min(1, { error: 'Choose a file.' })
        .max(100, { error: 'The file is not named by a valid token.' }),
    }),
  ),
  /** The outings up to the end of the plan as a table (CSV) for the owner to fill in. */
  'runs/table': call<HomeFile>()(
    z.strictObject({
      dogId: id('The dog'),
      language: choice('Language', LANGUAGES).optional(),
    }),
  ),
} as const;
