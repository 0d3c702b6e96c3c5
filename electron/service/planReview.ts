import { reviewRamp } from '../../core/index.ts';
import { toSessionResult } from '../contract/assessInput.ts';
import type { Visit } from '../contract/contract.ts';
import { toRuleChanges } from '../contract/rampRequest.ts';
import { assessRecord, readRecord } from './assessment.ts';
import type { Handlers } from './context.ts';
import { currentPlan, keepPlan } from './plans.ts';
import { notFound } from './refuse.ts';
import { readRules } from './rules.ts';

/** Findings count for a review only from a visit on the day itself. */
function findingsOf(
  visit: Visit | undefined,
  screening: 'ready to start' | 'walking only' | 'vet first' | undefined,
) {
  if (visit === undefined) return {};
  const { lamenessWalk, lamenessTrot, signs } = visit;
  return {
    findings: {
      lameness: { walk: lamenessWalk, trot: lamenessTrot },
      signs,
      ...(screening === undefined ? {} : { screening }),
    },
  };
}

export const planReviewHandlers: Handlers<'plans/review'> = {
  'plans/review': (desk, { dogId, visitId, clearedByVetOn, note }) =>
    desk.db.transaction().execute(async (db) => {
      const record = await readRecord(db, dogId);
      const plan = currentPlan(record);
      const visit = record.visits.find(({ id }) => id === visitId);
      if (visitId !== null && visit === undefined) throw notFound('The visit');
      const day = visit?.day ?? desk.today();
      const assessment = visit === undefined ? null : await assessRecord(db, record, day);
      const review = reviewRamp({
        ramp: plan.ramp,
        day,
        results: record.sessions.map(toSessionResult),
        rules: toRuleChanges(await readRules(db)),
        ...(clearedByVetOn === null ? {} : { clearedByVetOn }),
        ...findingsOf(visit, assessment?.screening.outcome),
      });
      return keepPlan(desk, db, {
        dogId,
        visitId,
        madeOn: day,
        origin: 'reviewed',
        request: plan.request,
        ramp: review.ramp,
        review: { decision: review.decision, reasons: review.reasons },
        keptBreaches: [],
        note,
      });
    }),
};
