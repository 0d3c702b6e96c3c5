import { reviewInput, reviewRamp, unaskedDays, type Assessment } from '../../../core/index.ts';
import { presentInput, type AssessedRecord } from '../../contract/visits/assessInput.ts';
import type { Plan, Visit } from '../../contract/contract.ts';
import { toRuleChanges } from '../../contract/plans/request.ts';
import { assessRecord, readRecord } from '../visits/assessment.ts';
import type { Context, Handlers } from '../database/context.ts';
import { currentPlan, keepPlan } from './plans.ts';
import { notFound } from '../refuse.ts';
import { readRules } from '../practice/rules.ts';
import type { Db } from '../database/schema.ts';

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
  context: Context,
  db: Db,
  { record, visit, assessment, clearedByVetOn, note }: ReviewedVisit,
): Promise<Plan> {
  const plan = currentPlan(record);
  const day = visit?.day ?? context.today();
  const rules = await readRules(db);
  const review = reviewRamp(
    reviewInput({
      plan,
      sessions: record.sessions,
      rules: toRuleChanges(rules),
      day,
      clearedByVetOn,
      visit,
      screening: assessment?.screening.found ?? null,
      unasked: unaskedDays(presentInput(record, rules, day)),
    }),
  );
  return keepPlan(context, db, {
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
  'plans/review': (context, { dogId, visitId, clearedByVetOn, note }) =>
    context.db.transaction().execute(async (db) => {
      const record = await readRecord(db, dogId);
      currentPlan(record);
      const visit = record.visits.find(({ id }) => id === visitId) ?? null;
      if (visitId !== null && visit === null) throw notFound('The visit');
      const assessment = visit === null ? null : await assessRecord(db, record, visit.day);
      return keepReview(context, db, { record, visit, assessment, clearedByVetOn, note });
    }),
};
