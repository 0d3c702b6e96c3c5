import type { IsoDay } from '../day.ts';
import { intakeEnergy } from '../food/ration.ts';
import type { AssessedDecision, AssessedVisit } from './types.ts';

/** So near to the ration decided, a diet told is that ration in whole grams, % (D). */
const SAME_PERCENT = 1;

/**
 * A ration decided at or after the latest visit stands; before that, what was told there, unless it is
 * the ration decided as the kitchen scale weighs it.
 */
export function presentIntake(
  latest: AssessedVisit,
  decisions: readonly AssessedDecision[],
): number {
  const decided = decisions.at(-1);
  if (decided !== undefined && decided.decidedOn >= latest.day) return decided.kcalPerDay;
  const told = intakeEnergy(latest.diet);
  if (decided === undefined) return told;
  const same = Math.abs(told - decided.kcalPerDay) <= (SAME_PERCENT / 100) * decided.kcalPerDay;
  return told <= 0 || same ? decided.kcalPerDay : told;
}

/**
 * What was eaten from visit to visit: the diet told at the later visit, else the rations decided
 * from the earlier one on, else the diet told there. After the last visit every ration decided
 * counts from its day, so that weighings since then are laid to what was fed.
 */
export function intakesBetween(
  visits: readonly AssessedVisit[],
  decisions: readonly AssessedDecision[],
): { readonly fromDay: IsoDay; readonly kcalPerDay: number }[] {
  return visits.flatMap((visit, index) => {
    const next = visits[index + 1];
    const told = intakeEnergy(next?.diet ?? []);
    if (told > 0) return [{ fromDay: visit.day, kcalPerDay: told }];
    const before = decisions.findLast(({ decidedOn }) => decidedOn <= visit.day)?.kcalPerDay;
    const since = decisions
      .filter(({ decidedOn: on }) => on > visit.day && (next === undefined || on < next.day))
      .map(({ decidedOn, kcalPerDay }) => ({ fromDay: decidedOn, kcalPerDay }));
    const first = { fromDay: visit.day, kcalPerDay: before ?? intakeEnergy(visit.diet) };
    return [first, ...since].filter(({ kcalPerDay }) => kcalPerDay >= 1);
  });
}
