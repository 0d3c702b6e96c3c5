import { z } from 'zod';
import type { BundleMade } from '../exchange/bundle.ts';
import {
  DIFFERENT_CHOICES,
  ERASED_CHOICES,
  type BundleDone,
  type BundleLook,
} from '../exchange/bundleImport.ts';
import {
  linesLeftOut,
  weightMapping,
  type ImportDone,
  type ImportPreview,
  type TableLook,
} from '../exchange/weightImport.ts';
import { choice, id } from '../fields.ts';
import { call } from './call.ts';
import { workId } from './work.ts';

/** Names a file that was taken in. */
export const token = z
  .string({ error: 'Choose a file.' })
  .min(1, { error: 'Choose a file.' })
  .max(100, { error: 'The file is not named by a valid token.' });

/** Stands for what was looked at. */
const digest = (error: string) => z.string({ error }).regex(/^[0-9a-f]{64}$/, { error });

export const exchangeCalls = {
  /** Writes the open bundle of one owner, or of all where `clientId` is null. */
  'export/make': call<BundleMade>()(() =>
    z.strictObject({ clientId: id('The owner').nullable(), workId }),
  ),
  /** Reads the head of a table (CSV), and guesses what is what. */
  'import/readCsv': call<TableLook>()(() => z.strictObject({ token })),
  /** What would come of the table, row by row; nothing is kept. */
  'import/preview': call<ImportPreview>()(() =>
    z.strictObject({ token, mapping: weightMapping, leaveOut: linesLeftOut }),
  ),
  /** Keeps every new weighing of the table, or none: one refused row stops it. */
  'import/run': call<ImportDone>()(() =>
    z.strictObject({
      token,
      mapping: weightMapping,
      leaveOut: linesLeftOut,
      /** That of the preview; refused when by now something else would come of it. */
      digest: digest('Look at the preview first.'),
      workId,
    }),
  ),
  /** Takes back exactly what the latest import added. */
  'import/undo': call<{ readonly removed: number }>()(() =>
    z.strictObject({ undoKey: id('The import') }),
  ),
  /** Reads and checks a whole bundle and holds it against the records; nothing is kept. */
  'import/bundleLook': call<BundleLook>()(() => z.strictObject({ token, workId })),
  /** Keeps what a bundle brings, all of it or nothing. */
  'import/bundleRun': call<BundleDone>()(() =>
    z.strictObject({
      token,
      /** That of the look; refused when by now something else would come of it. */
      digest: digest('Look at the bundle first.'),
      different: choice('What becomes of records that differ', DIFFERENT_CHOICES),
      erased: choice('What becomes of records that were erased here', ERASED_CHOICES),
      workId,
    }),
  ),
} as const;
