import { z } from 'zod';
import { choice, day, notes } from './fields.ts';
import { keptBreach, rampEdit } from './rampEdit.ts';

/** A plan proposal can be taken as it is, or taken and then changed by hand. */
export const PLAN_ANSWERS = ['accepted', 'edited'] as const;

/**
 * The practitioner's answer to what a review makes of the plan in force. A declined proposal is not
 * sent: the plan stays as it is.
 */
export const planAnswer = z.strictObject({
  decision: choice('Decision on the plan', PLAN_ANSWERS),
  clearedByVetOn: day('Day the vet cleared the dog').nullable(),
  note: notes('Note on the review'),
  /** Changes of the proposed plan by hand; only for `edited`. */
  edits: z.array(rampEdit).max(200, { error: 'At most 200 changes can be made at once.' }),
  /** A written reason for every rule that the changes break. */
  kept: z.array(keptBreach).max(200, { error: 'At most 200 reasons can be given at once.' }),
});
export type PlanAnswer = z.output<typeof planAnswer>;
