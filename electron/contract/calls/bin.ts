import { z } from 'zod';
import {
  BIN_KINDS,
  ERASURE_GROUNDS,
  type BinCheck,
  type BinLine,
  type Emptied,
  type Erased,
  type EraseCheck,
  type ErasureList,
  type KeepingSettings,
} from '../keeping/bin.ts';
import { choice, flag, id, line, whole } from '../fields.ts';
import type { Dog } from '../records.ts';
import { call, nothing } from './call.ts';

const entry = z.strictObject({ kind: choice('Kind of record', BIN_KINDS), id: id() });
const ground = choice('Ground for removing', ERASURE_GROUNDS);
/** The practitioner has read that the retention period is not over, and removes all the same. */
const insideRetentionConfirmed = flag('Removing inside the retention period');

export const binCalls = {
  /** What putting the record into the bin takes out of sight; changes nothing. */
  'bin/check': call<BinCheck>()(() => entry),
  /** Hides a record and all that belongs to it; nothing is lost. */
  'bin/put': call<null>()(() =>
    z.strictObject({
      ...entry.shape,
      reason: line('Reason for putting it into the bin').optional(),
    }),
  ),
  'bin/restore': call<null>()(() => entry),
  /** The latest first. */
  'bin/list': call<readonly BinLine[]>()(() => nothing),
  /** Removes entries of the bin for good: all or none. */
  'bin/empty': call<Emptied>()(() =>
    z.strictObject({
      entries: z
        .array(entry)
        .min(1, { error: 'Choose at least one entry of the bin.' })
        .max(1000, { error: 'At most 1000 entries can be removed at once.' }),
      ground,
      insideRetentionConfirmed,
    }),
  ),
  /** Puts a dog away that no longer comes, or takes it back; its record is kept as it is. */
  'dogs/archive': call<Dog>()(() =>
    z.strictObject({ id: id('The dog'), archived: flag('Archived') }),
  ),
  'keeping/get': call<KeepingSettings>()(() => nothing),
  'keeping/set': call<KeepingSettings>()(() =>
    z.strictObject({ retentionYears: whole('retentionYears') }),
  ),
  'clients/eraseCheck': call<EraseCheck>()(() => z.strictObject({ clientId: id('The owner') })),
  /** Removes an owner with everything that belongs to the dogs, without a trace in the file. */
  'clients/erase': call<Erased>()(() =>
    z.strictObject({
      clientId: id('The owner'),
      ground,
      /** The owner's name as the practitioner typed it. */
      confirmName: line('Name of the owner'),
      insideRetentionConfirmed,
    }),
  ),
  'erasures/list': call<ErasureList>()(() => nothing),
  /** Does again what of an erasure the disk or another program hindered. */
  'erasures/finish': call<Pick<Erased, 'clean' | 'backups'>>()(() => nothing),
} as const;
