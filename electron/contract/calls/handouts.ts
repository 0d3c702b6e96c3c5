import { z } from 'zod';
import { choice, id } from '../fields.ts';
import { HANDOUT_KINDS, LANGUAGES, PAPERS, sheetList } from '../records.ts';
import type { RenderedHandout } from '../results.ts';
import { call } from './call.ts';

export const handoutCalls = {
  'handouts/render': call<RenderedHandout>()(
    z.strictObject({
      kind: choice('Handout', HANDOUT_KINDS),
      dogId: id('The dog'),
      paper: choice('Paper size', PAPERS).nullable(),
      /** Language of the owner's sheets; the practice's own when left out. */
      language: choice('Language', LANGUAGES).optional(),
    }),
  ),
  /** Several sheets as one file, numbered through. */
  'handouts/bundle': call<RenderedHandout>()(
    z.strictObject({
      kinds: sheetList('Handout').min(1, { error: 'Choose at least one sheet.' }),
      dogId: id('The dog'),
      paper: choice('Paper size', PAPERS).nullable(),
      language: choice('Language', LANGUAGES).optional(),
    }),
  ),
} as const;
