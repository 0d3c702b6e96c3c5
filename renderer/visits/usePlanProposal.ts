import { computed, type ComputedRef } from 'vue';
import {
  askedSessions,
  plannedSessions,
  reviewInput,
  reviewRamp,
  type Ramp,
  type Review,
  type Screening,
} from '../../core/index.ts';
import { toRuleChanges } from '../../electron/contract/plans/request.ts';
import type { DogFile, Plan } from '../../electron/contract/contract.ts';
import type { RuleChange } from '../../electron/contract/records.ts';
import { askedOf, toldSessions } from '../plans/timeline.ts';
import { answeredRamp } from './planAnswerEntry.ts';
import { factsOf, type VisitForm } from './visitForm.ts';

/** What a review makes of the plan in force and the form as it stands. */
export interface PlanProposal {
  readonly plan: Plan;
  /** Null while there is nothing to judge, or the review cannot be made. */
  readonly review: Review | null;
  /** Why there is no review; empty when there is one. */
  readonly problem: string;
  /** Sessions of the plan that are over and of which nothing was told. */
  readonly untold: number;
}

interface ProposalContext {
  readonly file: DogFile;
  readonly sessions: () => DogFile['sessions'];
  readonly rules: () => readonly RuleChange[];
  /** What the form's screening found; what was not looked at yet is no finding. */
  readonly screening: () => Screening['found'] | null;
}

/** Reviews the plan in force with every change of the form, by the same input as when it is saved. */
export function usePlanProposal(
  form: VisitForm,
  { file, sessions, rules, screening }: ProposalContext,
): ComputedRef<PlanProposal | null> {
  const plan = file.plans.find(({ current }) => current);
  const unasked = file.state?.unasked ?? [];
  const firstEver = plannedSessions(file.plans)[0]?.day;
  return computed(() => {
    if (plan === undefined || form.visit.day === '') return null;
    const { day } = form.visit;
    const own = plan.ramp.weeks.flatMap((week) => week.sessions);
    const asked = askedSessions(own, unasked, sessions());
    const untold = toldSessions(asked, sessions(), day).filter(
      (told) => told.session.day < day && askedOf(told, day) === 'outcome',
    ).length;
    const none = (problem: string): PlanProposal => ({ plan, review: null, problem, untold });
    if (plan.madeOn > day) {
      return none('The plan in force was made after the day of this visit; it stays as it is.');
    }
    if (firstEver !== undefined && firstEver > day) {
      return none(`The plan begins on ${firstEver}: there is nothing to judge yet.`);
    }
    try {
      const review = reviewRamp(
        reviewInput({
          plan,
          sessions: sessions(),
          rules: toRuleChanges(rules()),
          day,
          clearedByVetOn: form.review.clearedByVetOn,
          visit: factsOf(form.visit),
          screening: screening(),
          unasked,
        }),
      );
      return { plan, review, problem: '', untold };
    } catch (error) {
      if (error instanceof RangeError) return none(error.message);
      throw error;
    }
  });
}

/** The plan that the visit leaves, where the proposal is taken over; the food is for its running. */
export function takenRamp(form: VisitForm, proposal: PlanProposal | null): Ramp | null {
  const proposed = proposal?.review?.ramp;
  if (form.plan.wanted || proposed === undefined) return null;
  return answeredRamp(proposed, form.review);
}
