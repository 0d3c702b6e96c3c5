import { z } from 'zod';
import { choice, id } from '../fields.ts';
import { LIMITS, limitSentence } from '../limits.ts';
import { HANDOUT_KINDS, LANGUAGES, PAPERS, sheetList, type HandoutKind } from '../records.ts';
import type { RenderedHandout } from '../results.ts';
import { call } from './call.ts';
import { workId } from './work.ts';

/** One sheet of one dog in a batch: printed, or why not. */
export interface BatchSheet {
  readonly kind: HandoutKind;
  /** Pages of the sheet; 0 where it was not printed. */
  readonly pages: number;
  /** The sentence that says why it was not printed; null where it was. */
  readonly problem: string | null;
}

/** What came of one dog in a batch. */
export interface BatchDog {
  readonly dogId: string;
  readonly sheets: readonly BatchSheet[];
}

/** What came of printing sheets for several dogs. */
export interface BatchPrinted {
  /** Names the zip archive with the PDFs; null where no sheet could be printed. */
  readonly token: string | null;
  readonly fileName: string;
  /** In the order asked for. */
  readonly dogs: readonly BatchDog[];
}

/** What is said where no sheet is asked for. */
export const NO_SHEET = 'Choose at least one sheet.';

const dogCount = { error: limitSentence(LIMITS.batchDogs) };

/** How sheets are to be printed. */
const printed = {
  paper: choice('Paper size', PAPERS).nullable(),
  /** Language of the owner's sheets; the practice's own when left out. */
  language: choice('Language', LANGUAGES).optional(),
};

export const handoutCalls = {
  'handouts/render': call<RenderedHandout>()(() =>
    z.strictObject({
      kind: choice('Handout', HANDOUT_KINDS),
      dogId: id('The dog'),
      ...printed,
    }),
  ),
  /** Several sheets as one file, numbered through. */
  'handouts/bundle': call<RenderedHandout>()(() =>
    z.strictObject({
      /** Null for those the practice chose for the dog's last visit. */
      kinds: sheetList('Handout').min(1, { error: NO_SHEET }).nullable(),
      dogId: id('The dog'),
      ...printed,
    }),
  ),
  /** Prints sheets for several dogs: one zip archive with a PDF for each sheet of each dog. */
  'handouts/batch': call<BatchPrinted>()(() =>
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
        .min(1, { error: NO_SHEET })
        .refine((kinds) => new Set(kinds).size === kinds.length, {
          error: 'Each sheet can be chosen once.',
        })
        .nullable(),
      ...printed,
      workId,
    }),
  ),
  /**
   * Prints the sheets of the dog's last visit once after a start, while nobody waits for them: fonts
   * and code are read then, and the first sheet asked for comes sooner.
   */
  'handouts/warmUp': call<null>()(() => z.strictObject({ dogId: id('The dog') })),
} as const;
