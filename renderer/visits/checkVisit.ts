import { isFoodOvertaken } from './foodEntry.ts';
import { isPlanOvertaken } from './planAnswerEntry.ts';
import type { VisitState } from './useVisit.ts';
import { planRequestOf } from './visitForm.ts';

/** Refuses what the service's schema would refuse, before the call: each beside its field. */
export function checkVisit(visit: VisitState): void {
  const { form, amendment } = visit;
  const { plan, food, reason } = form.values;
  form.clear('food.decision');
  const proposal = visit.live.value.assessment?.food ?? null;
  if (proposal !== null && isFoodOvertaken(food, proposal)) {
    form.refuse(
      'food.decision',
      'The food proposal changed after you decided: look at old and new, and choose.',
    );
  }
  if (food.switches && food.decision === 'open') {
    form.refuse(
      'food.decision',
      'Answer the food proposal too: the new food is kept with your decision.',
    );
  }
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
function checkPlanAnswer({ form, answersPlan, proposal, shown }: VisitState): void {
  form.clear('review.note');
  form.clear('review.decision');
  const review = proposal.value?.review ?? null;
  if (
    answersPlan() &&
    review !== null &&
    isPlanOvertaken(form.values.review, review, shown.value)
  ) {
    form.refuse(
      'review.decision',
      'The plan proposal changed after you decided: look at old and new, and choose.',
    );
  }
  const { decision, note } = form.values.review;
  if (answersPlan() && decision === 'declined' && note.trim() === '') {
    form.refuse('review.note', 'Reason for declining is needed: it is kept with the visit.');
  }
}
