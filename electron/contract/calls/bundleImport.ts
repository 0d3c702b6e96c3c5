import { z } from 'zod';
import {
  DIFFERENT_CHOICES,
  ERASED_CHOICES,
  type BundleDone,
  type BundleLook,
} from '../exchange/bundleImport.ts';
import { choice } from '../fields.ts';
import { call } from './call.ts';
import { workId } from './work.ts';

/** Names a file that was taken in. */
const token = z
  .string({ error: 'Choose a file.' })
  .min(1, { error: 'Choose a file.' })
  .max(100, { error: 'The file is not named by a valid token.' });

export const bundleImportCalls = {
  /** Reads and checks a whole bundle and holds it against the records; nothing is kept. */
  'import/bundleLook': call<BundleLook>()(z.strictObject({ token, workId })),
  /** Keeps what a bundle brings, all of it or nothing. */
  'import/bundleRun': call<BundleDone>()(
    z.strictObject({
      token,
      /** That of the look; refused when by now something else would come of it. */
      digest: z
        .string({ error: 'Look at the bundle first.' })
        .regex(/^[0-9a-f]{64}$/, { error: 'Look at the bundle first.' }),
      different: choice('What becomes of records that differ', DIFFERENT_CHOICES),
      erased: choice('What becomes of records that were erased here', ERASED_CHOICES),
      workId,
    }),
  ),
} as const;
