import { known } from '../check.ts';
import type { IsoDay } from '../day.ts';
import type { NextDayResponse, ReviewInput, SessionResult, StopSign } from '../ramp/reviewTypes.ts';
import type { Ramp } from '../ramp/types.ts';
import { unclearedGrades } from '../readiness/lameness.ts';
import type { Screening } from '../readiness/types.ts';
import type { RuleChanges } from '../rules/all.ts';
import type { RunAsItWas } from '../track/types.ts';
import type { AssessedVisit } from './types.ts';

/** What was told of a session, as a record keeps it, with the moment it was last told. */
export interface ToldResult extends Pick<SessionResult, 'day' | 'outcome'>, Partial<RunAsItWas> {
  readonly runMinutes: number | null;
  readonly nextDay: NextDayResponse | null;
  readonly signs: readonly StopSign[];
  readonly note: string;
  /** A UTC instant in ISO text. */
  readonly updatedAt: string;
}

export interface ReviewedRecord {
  readonly plan: { readonly ramp: Ramp; readonly createdAt: string };
  readonly sessions: readonly ToldResult[];
  readonly rules: RuleChanges;
  readonly day: IsoDay;
  readonly clearedByVetOn: IsoDay | null;
  /** A visit on the day of the review, whose findings count; null between visits. */
  readonly visit: Pick<
    AssessedVisit,
    'lamenessWalk' | 'lamenessTrot' | 'lamenessClearances' | 'signs' | 'wellSince'
  > | null;
  /** What the screening of that visit found; what was not looked at is no finding. */
  readonly screening: Screening['found'] | null;
  /** Days of sessions that nobody was asked for: see `unaskedDays`. */
  readonly unasked: readonly IsoDay[];
}

/**
 * What core's `reviewRamp` takes from a record: the same for the service and for the plan's page.
 * Results of days that the plan does not hold belong to an earlier version, whose review judged
 * them; what ends running and was told only since is taken up as a finding.
 * @example reviewInput(sample.reviewed).results?.map(({ day }) => day) // => ['2026-03-02']
 */
export function reviewInput(record: ReviewedRecord): ReviewInput {
  const { ramp } = record.plan;
  const days = new Set(ramp.weeks.flatMap(({ sessions }) => sessions.map(({ day }) => day)));
  const findings = findingsOf(record, toldLate(record, days));
  return {
    ramp,
    day: record.day,
    results: record.sessions.filter(({ day }) => days.has(day)).map(asResult),
    rules: record.rules,
    unasked: record.unasked,
    ...unplannedRuns(record, days),
    ...known({
      wellSince: record.visit?.wellSince,
      clearedByVetOn: record.clearedByVetOn,
      findings,
    }),
  };
}

/** Runs since this version began on days that it leaves free: they count for the longest run. */
function unplannedRuns(
  { plan, sessions, day: today }: ReviewedRecord,
  days: ReadonlySet<string>,
): Pick<ReviewInput, 'unplanned'> {
  const { startDay, resume } = plan.ramp.request;
  const since = resume?.reviewedOn ?? startDay;
  const resumed = new Set(resume?.recent?.map(({ day }) => day));
  const unplanned = sessions
    .filter(({ day }) => !days.has(day) && !resumed.has(day) && day >= since && day < today)
    .map(({ day, longestRunMinutes, runMinutes }) => ({
      day,
      minutes: longestRunMinutes ?? runMinutes ?? 0,
    }))
    .filter(({ minutes }) => minutes > 0);
  return unplanned.length === 0 ? {} : { unplanned };
}

function findingsOf(
  { visit, screening, day }: ReviewedRecord,
  late: readonly string[],
): ReviewInput['findings'] | null {
  if (visit === null) return late.length === 0 ? null : { signs: late };
  const { lamenessWalk, lamenessTrot, lamenessClearances: cleared = [] } = visit;
  return {
    // No worse than a vet cleared: the plan goes on.
    lameness: {
      walk: unclearedGrades(lamenessWalk, 'walk', cleared, day),
      trot: unclearedGrades(lamenessTrot, 'trot', cleared, day),
    },
    signs: [...visit.signs, ...late],
    ...known({ screening }),
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

/** What was told of a session, with the run as it was where that is known. */
export type ResultWithRun = SessionResult & RunAsItWas;

/**
 * What was not told is left out.
 * @example asResult(sample.told) // => { outcome: 'done', nextDay: 'normal', runKm: null, … }
 */
export function asResult({
  day,
  outcome,
  runMinutes,
  nextDay,
  signs,
  note,
  runKm = null,
  longestRunMinutes = null,
  climbedM = null,
}: Omit<ToldResult, 'updatedAt'>): ResultWithRun {
  const told = { day, outcome, nextDay, signs, note, runKm, longestRunMinutes, climbedM };
  return { ...told, ...known({ runMinutes }) };
}
