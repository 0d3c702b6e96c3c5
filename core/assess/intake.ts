import type { IsoDay } from '../day.ts';
import { intakeEnergy } from '../food/ration.ts';
import type { AssessedDecision, AssessedVisit } from './types.ts';

/** A ration decided at or after the latest visit stands; before that, what was told there. */
export function presentIntake(
  latest: AssessedVisit,
  decisions: readonly AssessedDecision[],
): number {
  const decided = decisions.at(-1);
  if (decided !== undefined && decided.decidedOn >= latest.day) return decided.kcalPerDay;
  const told = intakeEnergy(latest.diet);
  return told > 0 ? told : (decided?.kcalPerDay ?? 0);
}

/**
 * What was eaten between visits: the diet told at the later visit, else the ration decided at the
 * earlier one, else the diet told there.
 */
export function intakesBetween(
  visits: readonly AssessedVisit[],
  decisions: readonly AssessedDecision[],
): { readonly fromDay: IsoDay; readonly kcalPerDay: number }[] {
  return visits.slice(0, -1).flatMap((visit, index) => {
    const told = intakeEnergy(visits[index + 1]!.diet);
    const decided = decisions.filter(({ decidedOn }) => decidedOn <= visit.day).at(-1)?.kcalPerDay;
    const kcalPerDay = told > 0 ? told : (decided ?? intakeEnergy(visit.diet));
    return kcalPerDay >= 1 ? [{ fromDay: visit.day, kcalPerDay }] : [];
  });
}
