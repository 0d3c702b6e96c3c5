import { z } from 'zod';
import { wholeBetween } from '../fields.ts';
import { wholeSentence } from '../limits.ts';
import { IDLE_LIMIT } from '../keeping/limits.ts';
import type { AppStatus } from '../results.ts';
import { newPassphrase, triedPassphrase } from './backup.ts';
import { call, nothing } from './call.ts';

const IDLE_SENTENCE = wholeSentence(IDLE_LIMIT);

export const lockCalls = {
  /** Sets or changes the passphrase (null takes the lock away); needs the present one where set. */
  'lock/set': call<AppStatus>()(() =>
    z.strictObject({
      passphrase: newPassphrase.nullable(),
      present: triedPassphrase.nullable(),
      idleMinutes: wholeBetween(IDLE_LIMIT.min, IDLE_LIMIT.max, IDLE_SENTENCE),
    }),
  ),
  /** Locks at once, also while long work is going on. */
  'lock/now': call<null>()(() => nothing),
  'lock/open': call<AppStatus>()(() => z.strictObject({ passphrase: triedPassphrase })),
  /** Says that a person is at the desk who reads and needs no call; puts the locking off. */
  'lock/awake': call<null>()(() => nothing),
} as const;
