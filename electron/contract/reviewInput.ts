import type { ReviewInput, Screening } from '../../core/index.ts';
import { toSessionResult } from './assessInput.ts';
import type { Plan } from './contract.ts';
import { toRuleChanges } from './rampRequest.ts';
import type { RuleChange, SessionInput, VisitFacts } from './records.ts';

/** A result with the moment it was last told. */
export type ToldResult = SessionInput & { readonly updatedAt: string };

export interface ReviewedRecord {
  readonly plan: Pick<Plan, 'ramp' | 'createdAt'>;
  readonly sessions: readonly ToldResult[];
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
 * Results of days that the plan does not hold belong to an earlier version, whose review judged
 * them; what ends running and was told only since is taken up as a finding.
 */
export function reviewInput(record: ReviewedRecord): ReviewInput {
  const { ramp } = record.plan;
  const days = new Set(ramp.weeks.flatMap(({ sessions }) => sessions.map(({ day }) => day)));
  const findings = findingsOf(record, toldLate(record, days));
  return {
    ramp,
    day: record.day,
    results: record.sessions.filter(({ day }) => days.has(day)).map(toSessionResult),
    rules: toRuleChanges(record.rules),
    ...(record.clearedByVetOn === null ? {} : { clearedByVetOn: record.clearedByVetOn }),
    ...(findings === null ? {} : { findings }),
  };
}

function findingsOf(
  { visit, screening }: ReviewedRecord,
  late: readonly string[],
): ReviewInput['findings'] | null {
  if (visit === null) return late.length === 0 ? null : { signs: late };
  return {
    lameness: { walk: visit.lamenessWalk, trot: visit.lamenessTrot },
    signs: [...visit.signs, ...late],
    ...(screening === null ? {} : { screening }),
  };
}

/** Stop signs of sessions before this version, told after it was made and not settled by a vet. */
function toldLate(record: ReviewedRecord, days: ReadonlySet<string>): string[] {
  const { clearedByVetOn, plan, sessions } = record;
  return sessions
    .filter(({ day, updatedAt }) => !days.has(day) && updatedAt > plan.createdAt)
    .filter(({ day }) => clearedByVetOn === null || clearedByVetOn <= day)
    .flatMap(({ day, signs, nextDay }) => [
      ...signs.map((sign) => `Told since of ${day}: ${sign}`),
      ...(nextDay === 'stiffness over 48 h' ? [`Told since of ${day}: ${nextDay}`] : []),
    ]);
}
