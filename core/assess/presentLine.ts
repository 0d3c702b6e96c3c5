import { addDays, type IsoDay } from '../day.ts';
import type { Reason } from '../figure.ts';
import type { FoodGoal } from '../weight/foodTypes.ts';
import type { Weighing } from '../weight/weighing.ts';
import { lastKnown, weighingsUpTo, weightCourse, type CourseInput } from './course.ts';
import { growsOn } from './growing.ts';
import { targetInForce, toldTarget } from './target.ts';
import type { AssessedVisit } from './types.ts';
import { nextWeighIn } from './weighIn.ts';

/** What the part of a dog's present state rests on that lists of many dogs show. */
export interface LineInput extends CourseInput {
  readonly visits: readonly (CourseInput['visits'][number] & {
    readonly consent: Pick<AssessedVisit['consent'], 'given' | 'expiryDay'>;
  })[];
  readonly foodDecisions: readonly (CourseInput['foodDecisions'][number] & {
    readonly proposal: { readonly nextWeighInDay: IsoDay };
  })[];
}

/** Where the weight stands against what is aimed at. */
export type WeightAgainst = 'at target' | 'above' | 'below' | 'no target';

/** The part of a present state that needs no gait, no food log and no plan. */
export interface PresentLine {
  /** The last weighing; null before one. */
  readonly weight: {
    readonly kg: number;
    readonly day: IsoDay;
    readonly against: WeightAgainst;
    /** Distance to the target, kg, never negative; 0 without one. */
    readonly gapKg: number;
  } | null;
  /** The last score that was given. */
  readonly bcs: number | null;
  /** Null before the first visit. */
  readonly aim: FoodGoal | null;
  /** The target in force, set or frozen when the aim began; null while the weight is only held. */
  readonly targetKg: number | null;
  /** Why the weight has left its course; null while it keeps to it. */
  readonly offCourse: Reason | null;
  /** True for a dog that puts on weight and is not meant to. */
  readonly gaining: boolean;
  /** The day of the next weighing; null before the first. */
  readonly weighDay: IsoDay | null;
  /** Of the vet, at the latest visit: `endsOn` is its last day, past or ahead; null for no end. */
  readonly consent: { readonly inForce: boolean; readonly endsOn: IsoDay | null };
}

/** A weight within this share of the target is at it (D: science of the target, 2 %). */
export const AT_TARGET_SHARE = 0.02;

/** From here on a weight is not stable: under 1 % over more than 14 days is (German 2011, S). */
const GAIN_PERCENT = 1;
const GAIN_DAYS = 14;

/** What was last measured of a dog; null where nothing was. */
export interface LastMeasured {
  readonly kg: number | null;
  readonly bcs: number | null;
}

/**
 * The last weight and the last score of `presentLine` alone, for a list that is asked for at every
 * key and shows no more: no course is worked out for it.
 * @example
 * lastMeasured({ ...sample.loss, weighings: sample.weighings, day: '2026-03-20' })
 *   // => { kg: 39.2, bcs: 8 }
 */
export function lastMeasured({
  visits,
  weighings,
  day,
}: Pick<LineInput, 'visits' | 'weighings' | 'day'>): LastMeasured {
  const until = visits.filter((visit) => visit.day <= day);
  return {
    kg: weighingsUpTo(day, until, weighings).at(-1)?.weightKg ?? null,
    bcs: lastKnown(until, ({ bcs }) => bcs),
  };
}

/**
 * What of `presentLine` says when a dog is asked for next. Of the visits and weighings it rests on the
 * latest alone, from the last with a weight on, so that lists need not read the others.
 * @example
 * presentDue({ ...sample.loss, foodDecisions: [], day: '2026-03-20' })
 *   // => { weighDay: '2026-03-30', consent: { inForce: true, endsOn: '2026-12-31' } }
 */
export function presentDue(
  input: Pick<LineInput, 'visits' | 'weighings' | 'foodDecisions' | 'day'>,
): Pick<PresentLine, 'weighDay' | 'consent'> {
  const { day } = input;
  const visits = input.visits.filter((visit) => visit.day <= day);
  const weighings = weighingsUpTo(day, visits, input.weighings);
  const decision = input.foodDecisions.findLast(({ decidedOn }) => decidedOn <= day);
  const latest = visits.at(-1);
  return {
    weighDay: nextWeighIn({
      lastWeighedDay: weighedInOn(latest?.foodGoal ?? null, visits, weighings),
      proposedWeighDay: decision?.proposal.nextWeighInDay ?? null,
    }),
    consent: consentOf(latest?.consent, day),
  };
}

/**
 * The part of `presentState` that lists of many dogs show. It is taken over there as it is, so that
 * a list says nothing of its own.
 * @throws RangeError when a stored quantity is out of range
 * @example presentLine({ ...sample.loss, foodDecisions: [] })
 *   // => { bcs: 8, aim: 'lose', targetKg: 30.77, weighDay: '2026-03-30', … }
 */
export function presentLine(input: LineInput): PresentLine {
  const { day } = input;
  const visits = input.visits.filter((visit) => visit.day <= day);
  const weighings = weighingsUpTo(day, visits, input.weighings);
  const aim = visits.at(-1)?.foodGoal ?? null;
  const targetKg =
    visits.length === 0 || weighings.length === 0
      ? null
      : toldTarget(targetInForce({ visits, weighings, day }));
  const last = weighings.at(-1);
  return {
    weight: weightOf(last, targetKg),
    bcs: lastKnown(visits, ({ bcs }) => bcs),
    aim,
    targetKg,
    offCourse: weightCourse(input),
    gaining: aim !== 'gain' && hasGained(weighings) && !growsOn(input.dog, last!.weightKg, day),
    ...presentDue(input),
  };
}

/**
 * The weighing that answers a weigh-in. A dog that is to lose weight is weighed in at a visit, where
 * its food is decided anew: scales at home move that day by nothing (D).
 */
function weighedInOn(
  aim: FoodGoal | null,
  visits: LineInput['visits'],
  weighings: readonly Weighing[],
): IsoDay | null {
  if (aim !== 'lose') return weighings.at(-1)?.day ?? null;
  const seen = visits.findLast(({ weightKg }) => weightKg !== null);
  return seen?.day ?? weighings.at(-1)?.day ?? null;
}

function weightOf(last: Weighing | undefined, targetKg: number | null): PresentLine['weight'] {
  if (last === undefined) return null;
  const { weightKg: kg, day } = last;
  if (targetKg === null) return { kg, day, against: 'no target', gapKg: 0 };
  const gapKg = Math.abs(kg - targetKg);
  const near = gapKg <= targetKg * AT_TARGET_SHARE;
  return { kg, day, against: near ? 'at target' : kg > targetKg ? 'above' : 'below', gapKg };
}

/** Whether the last weighing lies 1 % and more above the one of over 14 days before. */
function hasGained(weighings: readonly Weighing[]): boolean {
  const last = weighings.at(-1);
  if (last === undefined) return false;
  const until = addDays(last.day, -GAIN_DAYS);
  const before = weighings.findLast(({ day }) => day < until);
  return before !== undefined && last.weightKg >= before.weightKg * (1 + GAIN_PERCENT / 100);
}

function consentOf(
  consent: LineInput['visits'][number]['consent'] | undefined,
  day: IsoDay,
): PresentLine['consent'] {
  if (consent?.given !== true) return { inForce: false, endsOn: null };
  const { expiryDay } = consent;
  return { inForce: expiryDay === null || expiryDay >= day, endsOn: expiryDay };
}
