import { computed, type ComputedRef } from 'vue';
import { buildRamp, type Ramp } from '../../core/index.ts';
import { toRampRequest, toRuleChanges } from '../../electron/contract/plans/request.ts';
import type { RuleChange } from '../../electron/contract/records.ts';
import { planRequestOf, type PlanEntry } from './visitForm.ts';

/** The plan as it would be kept, or why it cannot be made; both null while it is not complete. */
export interface LivePlan {
  readonly ramp: Ramp | null;
  readonly problem: string | null;
}

/** Builds the plan again with every change of what is asked for. */
export function useLivePlan(
  plan: () => PlanEntry,
  rules: () => readonly RuleChange[],
): ComputedRef<LivePlan> {
  return computed(() => {
    const request = planRequestOf(plan());
    if (request === null) return { ramp: null, problem: null };
    try {
      const ramp = buildRamp(toRampRequest(request, toRuleChanges(rules())));
      return { ramp, problem: null };
    } catch (error) {
      if (error instanceof RangeError) return { ramp: null, problem: error.message };
      throw error;
    }
  });
}
