import type { IsoDay } from '../day.ts';
import type { Reason } from '../figure.ts';
import { lossCorridor, type CorridorPoint } from '../weight/corridor.ts';
import { weightDrift } from '../weight/drift.ts';
import { offCorridor } from '../weight/offCorridor.ts';
import { weightTrend, type WeightTrend } from '../weight/trend.ts';
import type { Weighing } from '../weight/weighing.ts';
import { presentAim, rationSince, weighingsOnAim, type Aim, type AimVisit } from './aim.ts';
import { growsOn } from './growing.ts';
import { targetInForce } from './target.ts';
import type { AssessedDecision, AssessedDog, AssessedVisit } from './types.ts';

/** What of a visit says where the weight stands. */
export type CourseVisit = AimVisit &
  Pick<AssessedVisit, 'bcs' | 'targetWeightKg' | 'weighingMethod' | 'scaleStepKg'>;

export interface CourseInput {
  readonly dog: Pick<AssessedDog, 'birthDay' | 'adultWeightKg'>;
  /** Oldest first. */
  readonly visits: readonly CourseVisit[];
  /** Weighings beside those of the visits. */
  readonly weighings?: readonly Weighing[];
  /** Oldest first. */
  readonly foodDecisions: readonly Pick<AssessedDecision, 'decidedOn' | 'kcalPerDay'>[];
  readonly day: IsoDay;
}

/**
 * Whether a dog's weight has left its course: outside the corridor of a plan to lose, or drifting
 * without a plan. A part of `assess` that needs few figures, for lists of many dogs.
 * @throws RangeError when a stored quantity is out of range
 * @example
 * weightCourse({
 *   ...sample.loss,
 *   weighings: [{ day: '2026-03-30', weightKg: 41 }],
 *   day: '2026-03-30',
 * })?.code
 *   // => 'above-corridor'
 */
export function weightCourse(input: CourseInput): Reason | null {
  const { day } = input;
  const visits = input.visits.filter((visit) => visit.day <= day);
  const latest = visits.at(-1);
  const weighings = weighingsUpTo(day, visits, input.weighings);
  if (latest === undefined || weighings.length === 0) return null;
  const { kg: targetWeightKg } = targetInForce({ visits, weighings, day });
  const aim = presentAim(visits, weighings);
  const decisions = input.foodDecisions.filter(({ decidedOn }) => decidedOn <= day);
  const decision = decisions.at(-1);
  const ration = rationSince(decisions);
  const trendOnRation = weightTrend(weighingsOnAim(weighings, { aim, ration, day }));
  const growing = growsOn(input.dog, weighings.at(-1)!.weightKg, day);
  const course = courseOf({
    latest,
    aim,
    targetWeightKg,
    weighings,
    trendOnRation,
    decision,
    growing,
  });
  return course.offCorridor ?? course.drift;
}

/** What `courseOf` rests on. */
interface Standing {
  readonly latest: AimVisit;
  readonly aim: Aim;
  readonly targetWeightKg: number;
  readonly weighings: readonly Weighing[];
  readonly trendOnRation: WeightTrend;
  readonly decision: Pick<AssessedDecision, 'decidedOn'> | undefined;
  readonly growing: boolean;
}

/** The corridor, and how the weight keeps to it, or drifts where there is neither plan nor ration. */
export function courseOf({
  latest,
  aim,
  targetWeightKg,
  weighings,
  trendOnRation,
  decision,
  growing,
}: Standing) {
  const corridor = corridorOf(latest, aim.start, targetWeightKg);
  const free = latest.foodGoal === 'hold' && decision === undefined;
  const drift = free ? weightDrift(trendOnRation) : null;
  return {
    corridor,
    offCorridor: offCorridor(corridor, weighings.at(-1) ?? null),
    // That a growing dog gains is no drift.
    drift: drift?.code === 'drift-up' && growing ? null : drift,
  };
}

function corridorOf(visit: AimVisit, plan: Aim['start'], targetKg: number): CorridorPoint[] {
  if (visit.foodGoal !== 'lose' || plan === null || plan.weightKg <= targetKg) return [];
  return lossCorridor({ startDay: plan.day, initialKg: plan.weightKg, targetKg });
}

/**
 * The weighings of the visits and those between, oldest first. Of one day that of the visit comes
 * last: it is the one the food is decided by.
 * @example
 * weighingsUpTo('2026-03-10', [], sample.weighings).map(({ weightKg }) => weightKg)
 *   // => [40, 39.6]
 */
export function weighingsUpTo(
  day: IsoDay,
  visits: readonly Parameters<typeof toWeighing>[0][],
  between: readonly Weighing[] = [],
): Weighing[] {
  return [...between, ...visits.filter(({ weightKg }) => weightKg !== null).map(toWeighing)]
    .filter((weighing) => weighing.day <= day)
    .sort((a, b) => a.day.localeCompare(b.day));
}

/** A visit's weighing; only for visits with a weight. */
function toWeighing(
  visit: Pick<AssessedVisit, 'day' | 'weightKg' | 'weighingMethod' | 'scaleStepKg'>,
): Weighing {
  return {
    day: visit.day,
    weightKg: visit.weightKg!,
    method: visit.weighingMethod,
    scaleStepKg: visit.scaleStepKg,
  };
}

/**
 * The latest that is known of something.
 * @example lastKnown([{ bcs: 8 }, { bcs: 7 }, { bcs: null }], ({ bcs }) => bcs) // => 7
 */
export function lastKnown<V, T>(visits: readonly V[], pick: (visit: V) => T | null): T | null {
  for (let index = visits.length - 1; index >= 0; index -= 1) {
    const value = pick(visits[index]!);
    if (value !== null) return value;
  }
  return null;
}
