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
