import { z } from 'zod';
import type { BatchPrinted } from '../handouts/batch.ts';
import { choice, id } from '../fields.ts';
import { LIMITS, limitSentence } from '../limits.ts';
import { LANGUAGES, PAPERS, sheetList } from '../records.ts';
import { call } from './call.ts';
import { workId } from './work.ts';

const dogCount = { error: limitSentence(LIMITS.batchDogs) };

export const batchCalls = {
  /** Prints sheets for several dogs: one zip archive with a PDF for each sheet of each dog. */
  'handouts/batch': call<BatchPrinted>()(
    z.strictObject({
      dogIds: z
        .array(id('The dog'))
        .min(LIMITS.batchDogs.min, dogCount)
        .max(LIMITS.batchDogs.max, dogCount)
        .refine((ids) => new Set(ids).size === ids.length, {
          error: 'Each dog can be chosen once.',
        }),
      /** The same for every dog; null for those the practice chose for the dog's last visit. */
      kinds: sheetList('Handout')
        .min(1, { error: 'Choose at least one sheet.' })
        .refine((kinds) => new Set(kinds).size === kinds.length, {
          error: 'Each sheet can be chosen once.',
        })
        .nullable(),
      paper: choice('Paper size', PAPERS).nullable(),
      /** Language of the owner's sheets; the practice's own when left out. */
      language: choice('Language', LANGUAGES).optional(),
      workId,
    }),
  ),
} as const;
