import { buildRamp, goalLimitsOf, type Assessment } from '../../../core/index.ts';
import { assessInput, type AssessedRecord } from '../../contract/visits/assessInput.ts';
import type { ParsedOf, Plan, Visit } from '../../contract/contract.ts';
import type { PlanAnswer } from '../../contract/plans/answer.ts';
import { toRampRequest, toRuleChanges } from '../../contract/plans/request.ts';
import type { PlanRequest } from '../../contract/records.ts';
import type { Context } from '../database/context.ts';
import { keepEdit } from '../plans/edit.ts';
import { keepReview } from '../plans/review.ts';
import { keepPlan } from '../plans/plans.ts';
import { badField } from '../refuse.ts';
import { readRules } from '../practice/rules.ts';
import type { Db } from '../database/schema.ts';

/** A visit as it is stored, with the record around it and what core makes of both. */
export interface KeptVisit {
  readonly visit: Visit;
  readonly record: AssessedRecord;
  readonly assessment: Assessment | null;
}

/** Keeps the plan made or reviewed at a visit, at most one of the two; null where neither was asked for. */
export async function planAt(
  context: Context,
  db: Db,
  kept: KeptVisit,
  { plan, review = null }: ParsedOf<'visits/save'>,
): Promise<Plan | null> {
  if (plan !== null && review !== null) {
    throw badField(
      'review.decision',
      'Decision on the plan: take over the review, or make a new plan, not both.',
    );
  }
  if (plan !== null) return makePlan(context, db, kept, plan);
  return review === null ? null : takeReview(context, db, kept, review);
}

/** Has core build the ramp, and keeps it as the dog's current plan; the older versions stay. */
async function makePlan(
  context: Context,
  db: Db,
  { visit, record }: KeptVisit,
  request: PlanRequest,
): Promise<Plan> {
  const changes = await readRules(db);
  const rules = toRuleChanges(changes);
  const asked = toRampRequest(request, rules);
  const [limit] = goalLimitsOf(assessInput(record, changes, visit.day, visit.id), asked);
  if (limit !== undefined) {
    const field = 'continuousMinutes' in request.goal ? 'continuousMinutes' : 'distanceKm';
    throw badField(`plan.goal.${field}`, `${limit.text} ${limit.change}`);
  }
  return keepPlan(context, db, {
    dogId: visit.dogId,
    visitId: visit.id,
    madeOn: visit.day,
    origin: 'built',
    request,
    ramp: buildRamp(asked),
    review: null,
    keptBreaches: [],
    note: '',
  });
}

/** The reviewed plan is kept as it was proposed; what was changed of it by hand, as the next one. */
async function takeReview(
  context: Context,
  db: Db,
  kept: KeptVisit,
  { decision, clearedByVetOn, note, edits, kept: reasons }: PlanAnswer,
): Promise<Plan> {
  const reviewed = await keepReview(context, db, { ...kept, clearedByVetOn, note });
  if (decision === 'accepted' || edits.length === 0) return reviewed;
  return keepEdit(context, db, {
    plan: reviewed,
    edits,
    kept: reasons,
    note,
    visitId: kept.visit.id,
    madeOn: kept.visit.day,
    path: 'review.kept',
  });
}
