import type { RampRequest } from '../../core/index.ts';
import type { PlanRequest } from './records.ts';

/** The request core builds a ramp from; what was left open is left out. */
export function toRampRequest(plan: PlanRequest): RampRequest {
  const { eventDay, capPercent, weekdays, climbM: _climbM, ...rest } = plan;
  return {
    ...rest,
    ...(eventDay === null ? {} : { eventDay }),
    ...(capPercent === null ? {} : { capPercent }),
    ...(weekdays === null ? {} : { weekdays }),
  };
}
