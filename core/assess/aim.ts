import { dayNumber, type IsoDay } from '../day.ts';
import type { FoodGoal } from '../weight/foodTypes.ts';
import { RECORD_DAYS } from '../weight/ownEnergy.ts';
import type { Weighing } from '../weight/weighing.ts';
import type { AssessedDecision, AssessedVisit } from './types.ts';

/** What of a visit says what is aimed at. */
export type AimVisit = Pick<AssessedVisit, 'day' | 'weightKg' | 'foodGoal'>;

/** The present aim: since when it stands, and from which weight. */
export interface Aim {
  readonly sinceDay: IsoDay;
  /** The first weighing with it; null before one. */
  readonly start: { readonly day: IsoDay; readonly weightKg: number } | null;
  /** Days without a weighing before `sinceDay`, where the plan began anew after them; else null. */
  readonly afterGapDays: number | null;
}

/** After so many days without a weighing a plan starts anew (D). */
const GAP_DAYS = 90;

/**
 * The aim of the latest visit, as far back as visits in a row had it, or as the weighings reach back
 * without a gap of over 90 days. `visits` is not empty; `weighings` hold those of the visits.
 */
export function presentAim(visits: readonly AimVisit[], weighings: readonly Weighing[]): Aim {
  const goal = visits.at(-1)!.foodGoal;
  const before = visits.findLastIndex(({ foodGoal }) => foodGoal !== goal);
  const sharing = visits.slice(before + 1);
  const weighed = sharing.find(({ weightKg }) => weightKg !== null);
  return (
    anewAfterGap(sharing[0]!.day, weighings) ?? {
      sinceDay: sharing[0]!.day,
      start: weighed === undefined ? null : { day: weighed.day, weightKg: weighed.weightKg! },
      afterGapDays: null,
    }
  );
}

function anewAfterGap(sinceDay: IsoDay, weighings: readonly Weighing[]): Aim | null {
  const gaps = weighings.map(({ day }, index) =>
    index === 0 ? 0 : dayNumber(day, 'weighing') - dayNumber(weighings[index - 1]!.day, 'weighing'),
  );
  const index = gaps.findLastIndex((days) => days > GAP_DAYS);
  const first = weighings[index];
  if (first === undefined || first.day <= sinceDay) return null;
  const { day, weightKg } = first;
  return { sinceDay: day, start: { day, weightKg }, afterGapDays: gaps[index]! };
}

/**
 * The weighings that speak of the present ration and aim: since the later of the two, and of the
 * last half-year. A loss under a plan that has ended is not one without a plan.
 */
export function weighingsOnAim(
  weighings: readonly Weighing[],
  since: { readonly aim: Aim; readonly ration: IsoDay | null; readonly day: IsoDay },
): Weighing[] {
  const { aim, ration, day } = since;
  const from = ration !== null && ration > aim.sinceDay ? ration : aim.sinceDay;
  const today = dayNumber(day, 'day');
  return weighings.filter(
    (weighing) =>
      weighing.day >= from && today - dayNumber(weighing.day, 'weighing') <= RECORD_DAYS,
  );
}

/** The aim under which a ration was decided: that of the latest visit up to its day. */
export function aimOfDecision(
  visits: readonly AssessedVisit[],
  { decidedOn }: AssessedDecision,
): FoodGoal | null {
  return visits.findLast(({ day }) => day <= decidedOn)?.foodGoal ?? null;
}

/** A ration that differs by less than this from the one before begins nothing, % (D). */
const SAME_RATION_PERCENT = 2;

/** Since when the dog is fed what it is fed now: a "keep" or "wait" begins nothing. Null without one. */
export function rationSince(
  decisions: readonly Pick<AssessedDecision, 'decidedOn' | 'kcalPerDay'>[],
): IsoDay | null {
  const now = decisions.at(-1);
  if (now === undefined) return null;
  const another = decisions.findLastIndex(
    ({ kcalPerDay }) =>
      100 * Math.abs(kcalPerDay - now.kcalPerDay) > SAME_RATION_PERCENT * now.kcalPerDay,
  );
  return decisions[another + 1]!.decidedOn;
}
