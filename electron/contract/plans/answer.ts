import { z } from 'zod';
import { BREACH_CODES } from '../../../core/ramp/editTypes.ts';
import { choice, day, notes, number, requiredLine } from '../fields.ts';

const change = {
  day: day('Day of the session'),
  kind: choice('Kind of session', ['bouts', 'continuous', 'walk']),
  repeats: number({ label: 'Repeats', unit: 'times', min: 1, max: 60, whole: true }),
  runMin: number({ label: 'Run', unit: 'min', min: 0.25, max: 240 }),
  walkMin: number({ label: 'Walk', unit: 'min', min: 0, max: 30 }),
};

/** One edit of a plan by hand, as core takes it. */
export const rampEdit = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('change'),
    day: day('Day of the session'),
    to: z.strictObject(change).partial(),
  }),
  z.strictObject({ kind: z.literal('remove'), day: day('Day of the session') }),
  z.strictObject({ kind: z.literal('add'), session: z.strictObject(change) }),
  z.strictObject({
    kind: z.literal('week'),
    number: number({ label: 'Week', unit: '', min: 1, max: 1000, whole: true }),
    runMinutes: number({ label: 'Run-minutes of the week', unit: 'min', min: 0, max: 1000 }),
  }),
]);

/** A written reason for keeping a broken rule. */
export const keptBreach = z.strictObject({
  code: choice('Broken rule', BREACH_CODES),
  weekIndex: number({ label: 'Week', unit: '', min: 0, max: 1000, whole: true }),
  day: day('Day of the session').nullish(),
  reason: requiredLine('Reason for keeping it'),
});

/** A plan proposal can be taken as it is, or taken and then changed by hand. */
const PLAN_ANSWERS = ['accepted', 'edited'] as const;

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
