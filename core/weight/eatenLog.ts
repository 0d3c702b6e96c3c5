import { inRange } from '../check.ts';
import { dayNumber, type IsoDay } from '../day.ts';

/** What the dog ate from a day on, treats included, until the next entry. */
export type Intake = { readonly kcalPerDay: number } & (
  { readonly fromDay: IsoDay } | { readonly day: IsoDay }
);

/** A run that was done, kcal above rest (see `runningCost`). */
export interface DoneRun {
  readonly day: IsoDay;
  readonly kcal: number;
}

const INTAKE_RANGE = { min: 0, max: 20000 };

/** Energy on a day, or from it on; days as `dayNumber` counts them. */
export interface DatedKcal {
  readonly day: number;
  readonly kcal: number;
}

/** What was eaten, oldest first. @throws RangeError for energies outside 0–20000 kcal/day */
export function orderedIntakes(intakes: readonly Intake[]): DatedKcal[] {
  return intakes
    .map((intake, index) => {
      const from = 'fromDay' in intake ? intake.fromDay : intake.day;
      const name = `intakes[${index}].kcalPerDay`;
      return {
        day: dayNumber(from, `intakes[${index}].fromDay`),
        kcal: inRange(name, intake.kcalPerDay, 'kcal/day', INTAKE_RANGE),
      };
    })
    .sort((a, b) => a.day - b.day);
}

/** Runs that were done. @throws RangeError for energies outside 0–20000 kcal */
export function checkedRuns(runs: readonly DoneRun[]): DatedKcal[] {
  return runs.map(({ day, kcal }, index) => ({
    day: dayNumber(day, `runs[${index}].day`),
    kcal: inRange(`runs[${index}].kcal`, kcal, 'kcal', INTAKE_RANGE),
  }));
}

/** Energy eaten from the first intake up to `day`, less the runs done since, kcal. */
export function surplusUpTo(
  day: number,
  intakes: readonly DatedKcal[],
  runs: readonly DatedKcal[],
): number {
  const start = intakes[0]?.day ?? day;
  const eaten = intakes.reduce((sum, intake, index) => {
    const end = Math.min(day, intakes[index + 1]?.day ?? day);
    return sum + Math.max(0, end - intake.day) * intake.kcal;
  }, 0);
  const spent = runs.filter((run) => run.day >= start && run.day < day);
  return eaten - spent.reduce((sum, run) => sum + run.kcal, 0);
}
