import {
  asResult,
  type AssessInput,
  type PresentInput,
  type Weighing,
} from '../../../core/index.ts';
import type { DogFile, FoodDecision, Plan } from '../contract.ts';
import { toRuleChanges } from '../plans/request.ts';
import type { RuleChange } from '../records.ts';
import type { WeighingInput } from '../weighings/weighing.ts';

/** The parts of a dog's record that an assessment rests on. */
export type AssessedRecord = Pick<
  DogFile,
  'dog' | 'visits' | 'weighings' | 'plans' | 'foodDecisions' | 'sessions'
>;

/**
 * What core's `assess` takes from a record: the same for the service and for a form being filled.
 * A decision of `decidingVisitId` is left out: it is the one that is being taken.
 */
export function assessInput(
  record: AssessedRecord,
  rules: readonly RuleChange[],
  day: string,
  decidingVisitId: string | null,
) {
  const current = record.plans.find((plan) => plan.current);
  return {
    dog: record.dog,
    visits: record.visits,
    weighings: record.weighings.map(toWeighing),
    foodDecisions: record.foodDecisions.filter(({ visitId }) => visitId !== decidingVisitId),
    day,
    plan: current === undefined ? null : { ramp: current.ramp, climbM: current.request.climbM },
    sessions: record.sessions.map(asResult),
    rules: toRuleChanges(rules),
  } satisfies AssessInput;
}

/** What core's `presentState` takes from a record. */
export function presentInput(
  record: AssessedRecord,
  rules: readonly RuleChange[],
  day: string,
): PresentInput<Plan, FoodDecision> {
  return {
    record: assessInput(record, rules, day, null),
    plans: record.plans,
    results: record.sessions,
  };
}

/** A stored weighing between visits as core takes it. */
export function toWeighing({
  day,
  weightKg,
  weighingMethod,
  scaleStepKg,
}: Omit<WeighingInput, 'note'>): Weighing {
  return { day, weightKg, method: weighingMethod, scaleStepKg };
}
