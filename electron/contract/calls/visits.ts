import { z } from 'zod';
import { day, id, requiredLine } from '../fields.ts';
import { planAnswer } from '../plans/answer.ts';
import { foodDecisionInput, planRequest, sessionInput, visitFacts } from '../records.ts';
import type { Draft, DraftLine, SavedVisit, SessionRecord } from '../results.ts';
import { amending, call, nothing } from './call.ts';

/** Far more than are due between two visits. */
const SESSIONS_AT_ONCE = 200;

const draftKey = requiredLine('Key of the draft');

export const visitCalls = {
  /**
   * Saves a visit with what the owner told of sessions, the plan and the food decision made at it:
   * all or none. A visit that is there is amended: changed facts need a reason, and what they were
   * is kept. `plan` makes a plan anew; `review` takes over what the record makes of the one in force.
   */
  'visits/save': call<SavedVisit>()(() =>
    z.strictObject({
      id: id('The visit').nullable(),
      ...amending,
      visit: visitFacts(),
      plan: planRequest().nullable(),
      food: foodDecisionInput().nullable(),
      sessions: z
        .array(sessionInput())
        .max(SESSIONS_AT_ONCE, {
          error: `Results of at most ${SESSIONS_AT_ONCE} sessions can be saved at once.`,
        })
        .optional(),
      review: planAnswer.nullable().optional(),
    }),
  ),
  /** Keeps the result of one session; a second one for the same day replaces the first. */
  'sessions/save': call<SessionRecord>()(() =>
    z.strictObject({
      dogId: id('The dog'),
      session: sessionInput(),
      /** Why an earlier result is replaced; kept with what that was. */
      reason: amending.reason,
    }),
  ),
  'sessions/drop': call<null>()(() =>
    z.strictObject({ dogId: id('The dog'), day: day('Day of the session') }),
  ),
  /** What was begun and not saved, latest first. */
  'drafts/list': call<readonly DraftLine[]>()(() => nothing),
  'drafts/get': call<Draft | null>()(() => z.strictObject({ key: draftKey })),
  'drafts/put': call<null>()(() =>
    z.strictObject({
      key: draftKey,
      json: z
        .string({ error: 'The draft must be text.' })
        .max(500_000, { error: 'The draft may have at most 500000 characters.' }),
    }),
  ),
  'drafts/drop': call<null>()(() => z.strictObject({ key: draftKey })),
} as const;
