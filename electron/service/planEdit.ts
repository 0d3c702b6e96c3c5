import { checkRamp, editRamp } from '../../core/index.ts';
import { readRecord } from './assessment.ts';
import type { Handlers } from './context.ts';
import { currentPlan, keepPlan } from './plans.ts';
import { badField } from './refuse.ts';

export const planEditHandlers: Handlers<'plans/edit'> = {
  'plans/edit': (desk, { dogId, edits, kept, note }) =>
    desk.db.transaction().execute(async (db) => {
      const plan = currentPlan(await readRecord(db, dogId));
      const ramp = editRamp(plan.ramp, edits);
      const breaches = checkRamp(ramp, kept).filter(({ gravity }) => gravity === 'breach');
      const open = breaches.find(({ keptBecause }) => keptBecause === null);
      if (open !== undefined) {
        throw badField('kept', `A written reason is needed to keep this: ${open.text}`);
      }
      return keepPlan(desk, db, {
        dogId,
        visitId: null,
        madeOn: desk.today(),
        origin: 'edited',
        request: plan.request,
        ramp,
        review: null,
        keptBreaches: breaches,
        note,
      });
    }),
};
