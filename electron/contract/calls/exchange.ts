import { z } from 'zod';
import type { BundleMade } from '../exchange/bundle.ts';
import { id } from '../fields.ts';
import {
  linesLeftOut,
  weightMapping,
  type ImportDone,
  type ImportPreview,
  type TableLook,
} from '../exchange/weightImport.ts';
import { call } from './call.ts';
import { workId } from './work.ts';

/** Names a file that was taken in. */
export const token = z
  .string({ error: 'Choose a file.' })
  .min(1, { error: 'Choose a file.' })
  .max(100, { error: 'The file is not named by a valid token.' });

export const exchangeCalls = {
  /** Writes the open bundle of one owner, or of all where `clientId` is null. */
  'export/make': call<BundleMade>()(
    z.strictObject({ clientId: id('The owner').nullable(), workId }),
  ),
  /** Reads the head of a table (CSV), and guesses what is what. */
  'import/readCsv': call<TableLook>()(z.strictObject({ token })),
  /** What would come of the table, row by row; nothing is kept. */
  'import/preview': call<ImportPreview>()(
    z.strictObject({ token, mapping: weightMapping, leaveOut: linesLeftOut }),
  ),
  /** Keeps every new weighing of the table, or none: one refused row stops it. */
  'import/run': call<ImportDone>()(
    z.strictObject({
      token,
      mapping: weightMapping,
      leaveOut: linesLeftOut,
      /** That of the preview; refused when by now something else would come of it. */
      digest: z
        .string({ error: 'Look at the preview first.' })
        .regex(/^[0-9a-f]{64}$/, { error: 'Look at the preview first.' }),
      workId,
    }),
  ),
  /** Takes back exactly what the latest import added. */
  'import/undo': call<{ readonly removed: number }>()(
    z.strictObject({ undoKey: id('The import') }),
  ),
} as const;
