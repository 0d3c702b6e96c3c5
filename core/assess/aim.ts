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
}

/** The aim of the latest visit, as far back as visits in a row had it. `visits` is not empty. */
export function presentAim(visits: readonly AimVisit[]): Aim {
  const goal = visits.at(-1)!.foodGoal;
  const before = visits.findLastIndex(({ foodGoal }) => foodGoal !== goal);
  const sharing = visits.slice(before + 1);
  const weighed = sharing.find(({ weightKg }) => weightKg !== null);
  return {
    sinceDay: sharing[0]!.day,
    start: weighed === undefined ? null : { day: weighed.day, weightKg: weighed.weightKg! },
  };
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
