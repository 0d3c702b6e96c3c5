import type { Kysely } from 'kysely';
import { reviewInput, reviewRamp, type Assessment } from '../../core/index.ts';
import type { AssessedRecord } from '../contract/assessInput.ts';
import type { Plan, Visit } from '../contract/contract.ts';
import { toRuleChanges } from '../contract/rampRequest.ts';
import { assessRecord, readRecord } from './assessment.ts';
import type { Desk, Handlers } from './context.ts';
import { currentPlan, keepPlan } from './plans.ts';
import { notFound } from './refuse.ts';
import { readRules } from './rules.ts';
import type { Schema } from './schema.ts';

export interface ReviewedVisit {
  readonly record: AssessedRecord;
  /** A visit whose findings count; null between visits. */
  readonly visit: Visit | null;
  /** What core makes of that visit. */
  readonly assessment: Assessment | null;
  readonly clearedByVetOn: string | null;
  readonly note: string;
}

/** Has core review the plan in force, and keeps the new version. Runs inside a transaction. */
export async function keepReview(
  desk: Desk,
  db: Kysely<Schema>,
  { record, visit, assessment, clearedByVetOn, note }: ReviewedVisit,
): Promise<Plan> {
  const plan = currentPlan(record);
  const day = visit?.day ?? desk.today();
  const review = reviewRamp(
    reviewInput({
      plan,
      sessions: record.sessions,
      rules: toRuleChanges(await readRules(db)),
      day,
      clearedByVetOn,
      visit,
      screening: assessment?.screening.found ?? null,
    }),
  );
  return keepPlan(desk, db, {
    dogId: plan.dogId,
    visitId: visit?.id ?? null,
    madeOn: day,
    origin: 'reviewed',
    request: plan.request,
    ramp: review.ramp,
    review: { decision: review.decision, reasons: review.reasons },
    keptBreaches: [],
    note,
  });
}

export const planReviewHandlers: Handlers<'plans/review'> = {
  'plans/review': (desk, { dogId, visitId, clearedByVetOn, note }) =>
    desk.db.transaction().execute(async (db) => {
      const record = await readRecord(db, dogId);
      currentPlan(record);
      const visit = record.visits.find(({ id }) => id === visitId) ?? null;
      if (visitId !== null && visit === null) throw notFound('The visit');
      const assessment = visit === null ? null : await assessRecord(db, record, visit.day);
      return keepReview(desk, db, { record, visit, assessment, clearedByVetOn, note });
    }),
};
