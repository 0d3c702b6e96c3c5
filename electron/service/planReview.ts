import { reviewRamp } from '../../core/index.ts';
import { reviewInput } from '../contract/reviewInput.ts';
import { assessRecord, readRecord } from './assessment.ts';
import type { Handlers } from './context.ts';
import { currentPlan, keepPlan } from './plans.ts';
import { notFound } from './refuse.ts';
import { readRules } from './rules.ts';

export const planReviewHandlers: Handlers<'plans/review'> = {
  'plans/review': (desk, { dogId, visitId, clearedByVetOn, note }) =>
    desk.db.transaction().execute(async (db) => {
      const record = await readRecord(db, dogId);
      const plan = currentPlan(record);
      const visit = record.visits.find(({ id }) => id === visitId);
      if (visitId !== null && visit === undefined) throw notFound('The visit');
      const day = visit?.day ?? desk.today();
      const assessment = visit === undefined ? null : await assessRecord(db, record, day);
      const review = reviewRamp(
        reviewInput({
          plan,
          sessions: record.sessions,
          rules: await readRules(db),
          day,
          clearedByVetOn,
          // Findings count only from a visit on the day itself.
          visit: visit ?? null,
          screening: assessment?.screening.outcome ?? null,
        }),
      );
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
