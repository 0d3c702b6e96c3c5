import type { Ramp, ReviewInput, Screening } from '../../core/index.ts';
import { toSessionResult } from './assessInput.ts';
import { toRuleChanges } from './rampRequest.ts';
import type { RuleChange, SessionInput, VisitFacts } from './records.ts';

export interface ReviewedRecord {
  readonly ramp: Ramp;
  readonly sessions: readonly SessionInput[];
  readonly rules: readonly RuleChange[];
  readonly day: string;
  readonly clearedByVetOn: string | null;
  /** A visit on the day of the review, whose findings count; null between visits. */
  readonly visit: Pick<VisitFacts, 'lamenessWalk' | 'lamenessTrot' | 'signs'> | null;
  /** The screening of that visit. */
  readonly screening: Screening['outcome'] | null;
}

/**
 * What core's `reviewRamp` takes from a record: the same for the service and for the plan's page.
 * Results of days that the plan does not hold belong to an earlier version and are left out.
 */
export function reviewInput(record: ReviewedRecord): ReviewInput {
  const { ramp, visit, screening } = record;
  const days = new Set(ramp.weeks.flatMap(({ sessions }) => sessions.map(({ day }) => day)));
  return {
    ramp,
    day: record.day,
    results: record.sessions.filter(({ day }) => days.has(day)).map(toSessionResult),
    rules: toRuleChanges(record.rules),
    ...(record.clearedByVetOn === null ? {} : { clearedByVetOn: record.clearedByVetOn }),
    ...(visit === null
      ? {}
      : {
          findings: {
            lameness: { walk: visit.lamenessWalk, trot: visit.lamenessTrot },
            signs: visit.signs,
            ...(screening === null ? {} : { screening }),
          },
        }),
  };
}
