import type { RampRequest, RuleChanges } from '../../core/index.ts';
import type { PlanRequest, RuleChange } from './records.ts';

/** The rule values a practice changed, as core takes them. */
export function toRuleChanges(changes: readonly RuleChange[]): RuleChanges {
  return Object.fromEntries(changes.map(({ ruleId, value }) => [ruleId, value])) as RuleChanges;
}

/** The request core builds a ramp from; what was left open is left out. */
export function toRampRequest(plan: PlanRequest, rules: RuleChanges = {}): RampRequest {
  const { eventDay, capPercent, weekdays, climbM: _climbM, paceMinPerKm, ...other } = plan;
  const { programme, ownerMinutes, walkMinutesNow, ...rest } = other;
  return {
    ...rest,
    ...(eventDay === null ? {} : { eventDay }),
    ...(capPercent === null ? {} : { capPercent }),
    ...(weekdays === null ? {} : { weekdays }),
    ...(paceMinPerKm === null ? {} : { paceMinPerKm }),
    ...(programme === undefined ? {} : { programme }),
    ...(ownerMinutes == null ? {} : { ownerMinutes }),
    ...(walkMinutesNow == null ? {} : { walkMinutesNow }),
    ...(Object.keys(rules).length === 0 ? {} : { rules }),
  };
}
