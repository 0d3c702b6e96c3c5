import { z } from 'zod';
import { id, whole } from '../fields.ts';
import { weighingInput, type WeighingRecord } from '../weighings/weighing.ts';
import { amending, call } from './call.ts';

export const weighingCalls = {
  /** Keeps a new weighing between visits. */
  'weighings/save': call<WeighingRecord>()(() =>
    z.strictObject({ dogId: id('The dog'), weighing: weighingInput() }),
  ),
  /** Puts a weighing right; its history keeps what it was. Nothing is kept where nothing changed. */
  'weighings/amend': call<WeighingRecord>()(() =>
    z.strictObject({
      id: id('The weighing'),
      /** The revision that was read; refused when it is not the latest. */
      basedOn: whole('revision'),
      reason: amending.reason,
      weighing: weighingInput(),
    }),
  ),
  /** Takes a weighing out of the record; its history keeps it. */
  'weighings/drop': call<null>()(() => z.strictObject({ id: id('The weighing') })),
  /** Brings a dropped weighing back as it was. */
  'weighings/restore': call<WeighingRecord>()(() => z.strictObject({ id: id('The weighing') })),
} as const;
