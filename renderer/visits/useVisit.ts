import { computed, watch } from 'vue';
import { monthsBetween } from '../../core/day.ts';
import {
  asResult,
  walkBaseWalked,
  type Programme,
  type ScreeningOutcome,
} from '../../core/index.ts';
import type { DogFile } from '../../electron/contract/contract.ts';
import { useDraft } from '../composables/useDraft.ts';
import { useForm } from '../composables/useForm.ts';
import { useShown } from '../composables/useShown.ts';
import { usePractice } from '../stores/practice.ts';
import { useAmendment } from './useAmendment.ts';
import { useAssessment } from './useAssessment.ts';
import { useLivePlan } from './useLivePlan.ts';
import { takenRamp, usePlanProposal } from './usePlanProposal.ts';
import { useVisitSessions } from './useVisitSessions.ts';
import { keptVisitForm, newVisitForm, type VisitForm } from './visitForm.ts';

const GROWN_MONTHS = 24;

/** What was found sends a dog walking first, not what is still to be looked at. */
const proposed = (outcome: ScreeningOutcome | undefined): Programme =>
  outcome === 'walking only' ? 'walking' : 'running';

/** What of the plan follows from the rest of the form, until it is chosen otherwise. */
function followWhatIsTyped(values: VisitForm, outcome: () => ScreeningOutcome | undefined): void {
  // A plan and the changeover to another food begin with the visit until they are given another
  // day. At once, so that a draft that is put back, its visit first, keeps the days it has.
  let followed = values.visit.day;
  watch(
    () => values.visit.day,
    (day) => {
      if (day === '') return;
      for (const begins of [values.plan, values.food.foodSwitch]) {
        if (begins.startDay === followed) begins.startDay = day;
      }
      followed = day;
    },
    { flush: 'sync' },
  );

  // The starting level follows the finding until a plan is asked for at another level.
  watch(
    () => values.visit.conditioning,
    (state) => {
      values.plan.start = state;
    },
  );

  // The programme follows the screening until another is chosen.
  watch(
    outcome,
    (now, before) => {
      if (values.plan.programme === proposed(before)) values.plan.programme = proposed(now);
    },
    { immediate: true },
  );
}

/** The form of a visit, its draft, and all that follows from it as it is typed. */
export function useVisit(file: DogFile, visitId: string | null) {
  const practice = usePractice();
  const shown = useShown();
  const { dog } = file;
  const kept = visitId === null ? null : keptVisitForm(file, visitId);
  const form = useForm(kept ?? newVisitForm(file, practice.today, practice.choices.weightUnit));
  const { values } = form;
  const draft = useDraft(form, () => `visit:${dog.id}:${visitId ?? 'new'}`);
  const amendment = useAmendment(values, file, visitId);

  const rules = () => practice.rules;
  const hasPlan = file.plans.some((plan) => plan.current);
  const followsPlan = visitId === null && hasPlan;
  const sessions = useVisitSessions(values, file);
  const livePlan = useLivePlan(() => values.plan, rules);
  const context = { file, visitId, rules, sessions: () => sessions.all.value };
  // The review judges by what was found; the food is for the plan that the visit then leaves.
  const found = useAssessment(values, { ...context, ramp: () => livePlan.value.ramp });
  const proposal = usePlanProposal(values, {
    file,
    rules,
    sessions: () => sessions.all.value,
    screening: () => found.value.assessment?.screening.found ?? null,
  });
  const taken = computed(() => takenRamp(values, proposal.value));
  const withTaken = useAssessment(values, { ...context, ramp: () => taken.value });

  followWhatIsTyped(values, () => found.value.screening?.found);

  return {
    shown,
    form,
    draft,
    amendment,
    sessions,
    livePlan,
    proposal,
    hasPlan,
    /** The days of the two walks that a walking programme ended with; null while it did not. */
    walkBase: computed(() => {
      const plan = file.plans.find(({ current }) => current);
      return plan === undefined
        ? null
        : walkBaseWalked(plan.ramp, sessions.all.value.map(asResult));
    }),
    /** A new visit while a plan runs: its sessions are asked for, and it is reviewed. */
    followsPlan,
    /** Whether the answer to the proposal counts: a plan made anew takes its place. */
    answersPlan: () => followsPlan && !values.plan.wanted,
    live: computed(() => (taken.value === null ? found.value : withTaken.value)),
    growing: computed(
      () =>
        values.visit.day !== '' &&
        values.visit.day >= dog.birthDay &&
        monthsBetween(dog.birthDay, values.visit.day) < GROWN_MONTHS,
    ),
  };
}

export type VisitState = ReturnType<typeof useVisit>;
