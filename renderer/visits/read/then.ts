import { presentState, type Screening } from '../../../core/index.ts';
import { presentInput } from '../../../electron/contract/visits/assessInput.ts';
import type { DogFile, Visit } from '../../../electron/contract/contract.ts';
import type { RuleChange } from '../../../electron/contract/records.ts';

/** The record as it stood at the end of a visit: what came later is none of its verdict. */
function recordThen(file: DogFile, { id, day }: Visit): DogFile {
  const plans = file.plans.filter((plan) => plan.visitId === id || plan.madeOn <= day);
  return {
    ...file,
    visits: file.visits.slice(0, file.visits.findIndex((visit) => visit.id === id) + 1),
    weighings: file.weighings.filter((weighing) => weighing.day <= day),
    sessions: file.sessions.filter((session) => session.day <= day),
    plans: plans.map((plan, index) => ({ ...plan, current: index === plans.length - 1 })),
  };
}

/** Whether the dog might run by what was recorded up to a visit; null where that cannot be said. */
export function screeningThen(
  file: DogFile,
  visit: Visit,
  rules: readonly RuleChange[],
): Screening | null {
  try {
    return presentState(presentInput(recordThen(file, visit), rules, visit.day))?.screening ?? null;
  } catch (error) {
    // A value that core refuses has no verdict; the values stand on the page.
    if (error instanceof RangeError) return null;
    throw error;
  }
}
