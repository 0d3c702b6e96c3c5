import { z } from 'zod';
import { day, id, notes } from '../fields.ts';
import { keptBreach, rampEdit } from '../plans/answer.ts';
import type { Plan } from '../results.ts';
import { call } from './call.ts';

export const planCalls = {
  /** Has core review the plan in force by the record of today, and keeps the new version. */
  'plans/review': call<Plan>()(() =>
    z.strictObject({
      dogId: id('The dog'),
      visitId: id('The visit').nullable(),
      clearedByVetOn: day('Day the vet cleared the dog').nullable(),
      note: notes('Note on the review'),
    }),
  ),
  /** Keeps a plan changed by hand; every broken rule needs a written reason. */
  'plans/edit': call<Plan>()(() =>
    z.strictObject({
      dogId: id('The dog'),
      edits: z.array(rampEdit).min(1, { error: 'Nothing was changed.' }).max(200),
      kept: z.array(keptBreach).max(200),
      note: notes('Note on the change'),
    }),
  ),
} as const;
