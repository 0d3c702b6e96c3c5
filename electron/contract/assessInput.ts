import type { AssessInput, SessionResult, Weighing } from '../../core/index.ts';
import type { DogFile } from './contract.ts';
import { toRuleChanges } from './rampRequest.ts';
import type { RuleChange, SessionInput } from './records.ts';
import type { WeighingInput } from './weighing.ts';

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
): AssessInput {
  const current = record.plans.find((plan) => plan.current);
  return {
    dog: record.dog,
    visits: record.visits,
    weighings: record.weighings.map(toWeighing),
    foodDecisions: record.foodDecisions.filter(({ visitId }) => visitId !== decidingVisitId),
    day,
    plan: current === undefined ? null : { ramp: current.ramp, climbM: current.request.climbM },
    sessions: record.sessions.map(toSessionResult),
    rules: toRuleChanges(rules),
  };
}

/** A stored weighing between visits as core takes it. */
export function toWeighing({
  day,
  weightKg,
  weighingMethod,
  scaleStepKg,
}: WeighingInput): Weighing {
  return { day, weightKg, method: weighingMethod, scaleStepKg };
}

/** A stored result as core takes it: what was not told is left out. */
export function toSessionResult(record: SessionInput): SessionResult {
  const { day, outcome, runMinutes, nextDay, signs, note } = record;
  return { day, outcome, nextDay, signs, note, ...(runMinutes === null ? {} : { runMinutes }) };
}
