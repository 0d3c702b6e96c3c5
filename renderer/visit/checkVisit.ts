import type { VisitState } from './useVisit.ts';
import { planRequestOf } from './visitForm.ts';

/** Refuses what the service's schema would refuse, before the call: each beside its field. */
export function checkVisit(visit: VisitState): void {
  const { form, amendment } = visit;
  const { plan, food, reason } = form.values;
  if (plan.wanted && planRequestOf(plan) === null) {
    form.refuse('plan.goal', 'The plan needs its first day, the outings a week and a goal.');
  }
  if (food.decision === 'edited' && food.kcalPerDay === null) {
    form.refuse('food.kcalPerDay', 'Give the daily energy you settled on, or accept the proposal.');
  }
  checkPlanAnswer(visit);
  form.clear('reason');
  if (amendment.changes.value.length > 0 && reason.trim() === '') {
    form.refuse('reason', 'Reason for the amendment is needed: the visit was saved before.');
  }
}

/** Changes by hand refuse for themselves what they still need. */
function checkPlanAnswer({ form, answersPlan }: VisitState): void {
  form.clear('review.note');
  const { decision, note } = form.values.review;
  if (answersPlan() && decision === 'declined' && note.trim() === '') {
    form.refuse('review.note', 'Reason for declining is needed: it is kept with the visit.');
  }
}
