import { known, walkBaseGoal, type RampRequest, type RuleChanges } from '../../../core/index.ts';
import type { PlanRequest, RuleChange } from '../records.ts';

/** The rule values a practice changed, as core takes them. */
export function toRuleChanges(changes: readonly RuleChange[]): RuleChanges {
  return Object.fromEntries(changes.map(({ ruleId, value }) => [ruleId, value])) as RuleChanges;
}

/**
 * The request core builds a ramp from; what was left open is left out. A walking programme walks up
 * to the walk base: what is asked for the running after it stays with the request as it is kept.
 */
export function toRampRequest(plan: PlanRequest, rules: RuleChanges = {}): RampRequest {
  if (plan.programme === 'walking') return toWalkRequest(plan, rules);
  const { eventDay, capPercent, weekdays, climbM: _climbM, paceMinPerKm, ...other } = plan;
  const { programme, ownerMinutes, walkMinutesNow: _walk, ...rest } = other;
  return {
    ...rest,
    ...known({ eventDay, capPercent, weekdays, paceMinPerKm, programme, ownerMinutes }),
    ...(Object.keys(rules).length === 0 ? {} : { rules }),
  };
}

function toWalkRequest(plan: PlanRequest, rules: RuleChanges): RampRequest {
  const { startDay, start, sessionsPerWeek, weekdays, daysOut, walkMinutesNow } = plan;
  return {
    programme: 'walking',
    startDay,
    start,
    sessionsPerWeek,
    goal: walkBaseGoal(rules),
    daysOut,
    ...known({ weekdays, walkMinutesNow }),
    ...(Object.keys(rules).length === 0 ? {} : { rules }),
  };
}
