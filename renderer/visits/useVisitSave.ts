import { ref, shallowRef } from 'vue';
import type { SavedVisit } from '../../electron/contract/contract.ts';
import type { AppError } from '../../electron/contract/errors.ts';
import type { PlanAnswer } from '../../electron/contract/plans/answer.ts';
import type { VisitFacts } from '../../electron/contract/records.ts';
import { useClient } from '../api/client.ts';
import { plainCopy } from '../composables/plainCopy.ts';
import { decisionHead } from '../plans/rampText.ts';
import { checkVisit } from './checkVisit.ts';
import { foodDecisionOf } from './foodEntry.ts';
import { notesWith, planAnswerOf } from './planAnswerEntry.ts';
import type { VisitState } from './useVisit.ts';
import { hasShares, planRequestOf } from './visitForm.ts';

/** Saves a visit with what was told, decided and planned at it, or says what is in the way. */
export function useVisitSave(visitId: string | null, visit: VisitState) {
  const client = useClient();
  const { form, amendment, draft } = visit;
  const { values } = form;
  const saving = ref(false);
  const error = shallowRef<AppError | null>(null);

  /** @returns what was saved, or null when something was in the way. */
  async function save(): Promise<SavedVisit | null> {
    if (saving.value) return null;
    checkVisit(visit);
    if (!form.attempt()) return null;
    saving.value = true;
    const answer = await client.call('visits/save', {
      id: visitId,
      basedOn: values.basedOn,
      reason: values.reason,
      visit: sentFacts(visit),
      plan: planRequestOf(values.plan),
      food: foodDecisionOf(values.food),
      sessions: visit.followsPlan ? plainCopy(values.sessions) : [],
      review: sentAnswer(visit),
    });
    saving.value = false;
    error.value = answer.ok || amendment.meet(answer.error) ? null : answer.error;
    if (!answer.ok) {
      if (error.value !== null) form.takeError(answer.error);
      return null;
    }
    await draft.drop();
    return answer.value;
  }

  return {
    saving,
    error,
    save,
    /** Reads what is stored now, and shows it beside what was typed. */
    async showStored(): Promise<void> {
      error.value = await amendment.readAgain();
    },
    /** Saves what was typed on the revision that is stored now. */
    async saveOver(): Promise<SavedVisit | null> {
      error.value = await amendment.readAgain();
      const now = amendment.stored.value;
      if (error.value !== null || now === null) return null;
      values.basedOn = now.revision;
      return save();
    },
  };
}

/** The facts as they are sent; numbers that are missing go as they are: the service names them. */
function sentFacts({ form, proposal, answersPlan }: VisitState): VisitFacts {
  const { visit } = form.values;
  const diet = visit.diet.map((food) => (hasShares(food.label) ? food : { ...food, label: null }));
  const sent = { ...visit, diet } as unknown as VisitFacts;
  const review = proposal.value?.review ?? null;
  if (!answersPlan() || review === null) return sent;
  const proposed = decisionHead(review).toLowerCase();
  return { ...sent, notes: notesWith(sent.notes, form.values.review, proposed) };
}

/** The answer to the plan proposal, where there is one to answer. */
function sentAnswer({ form, proposal, answersPlan }: VisitState): PlanAnswer | null {
  const review = proposal.value?.review ?? null;
  if (!answersPlan() || review === null) return null;
  return plainCopy(planAnswerOf(review.ramp, form.values.review));
}
