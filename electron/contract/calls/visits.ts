import { z } from 'zod';
import { day, id, requiredLine } from '../fields.ts';
import { foodDecisionInput, planRequest, sessionInput, visitFacts } from '../records.ts';
import type { Draft, DraftLine, SavedVisit, SessionRecord } from '../results.ts';
import { amending } from './amending.ts';
import { call, nothing } from './call.ts';

const draftKey = requiredLine('Key of the draft');

export const visitCalls = {
  /**
   * Saves a visit with the plan and the food decision made at it: all or none. A visit that is
   * there is amended: changed facts need a reason, and what they were is kept.
   */
  'visits/save': call<SavedVisit>()(
    z.strictObject({
      id: id('The visit').nullable(),
      ...amending,
      visit: visitFacts,
      plan: planRequest.nullable(),
      food: foodDecisionInput.nullable(),
    }),
  ),
  /** Keeps the result of one session; a second one for the same day replaces the first. */
  'sessions/save': call<SessionRecord>()(
    z.strictObject({ dogId: id('The dog'), session: sessionInput }),
  ),
  'sessions/drop': call<null>()(
    z.strictObject({ dogId: id('The dog'), day: day('Day of the session') }),
  ),
  /** What was begun and not saved, latest first. */
  'drafts/list': call<readonly DraftLine[]>()(nothing),
  'drafts/get': call<Draft | null>()(z.strictObject({ key: draftKey })),
  'drafts/put': call<null>()(
    z.strictObject({
      key: draftKey,
      json: z
        .string({ error: 'The draft must be text.' })
        .max(500_000, { error: 'The draft may have at most 500000 characters.' }),
    }),
  ),
  'drafts/drop': call<null>()(z.strictObject({ key: draftKey })),
} as const;
