import { ArgumentError, inRange, weightInRange } from '../check.ts';
import type { IsoDay } from '../day.ts';
import type { Estimate, Reason } from '../figure.ts';
import { from } from '../origin.ts';
import { saying } from '../quantityText.ts';
import { runningCost } from './cost.ts';

/** One planned or done run: a distance, or minutes with a pace. A session of a ramp fits as it is. */
export interface PlannedRun {
  readonly day: IsoDay;
  readonly distanceKm?: number | null;
  readonly runMinutes?: number;
  readonly paceMinPerKm?: number;
  /** Metres climbed; 0 if absent. */
  readonly climbM?: number;
}

export interface RunEnergy {
  readonly day: IsoDay;
  readonly distanceKm: number;
  readonly kcal: Estimate;
}

/** A week of running in terms of food. */
export interface WeekOfRunning {
  /** Counted from 1. */
  readonly week: number;
  readonly runningDays: number;
  readonly runs: readonly RunEnergy[];
  /** Extra energy of the whole week above rest, kcal. */
  readonly kcalPerWeek: number;
  readonly low: number;
  readonly high: number;
  /** The same spread over the running days, and over all seven days. */
  readonly kcalPerRunningDay: number;
  readonly kcalPerDay: number;
  readonly reason: Reason;
}

export interface RunningPlanInput {
  readonly weightKg: number;
  /** `number`: the plan's own, where it has one; else weeks count from 1. */
  readonly weeks: readonly {
    readonly number?: number;
    readonly sessions: readonly PlannedRun[];
  }[];
  /** The owner's pace, for sessions that know only their minutes, min/km. */
  readonly paceMinPerKm?: number;
  /** Metres climbed per km run on the usual route; 0 if absent. */
  readonly climbMPerKm?: number;
  /** Running that the counted daily activity already holds, km a week; 0 if absent. */
  readonly countedKmPerWeek?: number;
}

const PACE = { min: 2, max: 20 };

/**
 * What each week of a running plan asks of the food, kcal above rest: per run, per running day and
 * averaged over the week, each with its range. Running that the daily activity already holds is
 * taken off, week by week, never below nothing.
 *
 * @throws RangeError for a session without distance that has no minutes or pace, a pace outside
 *   2–20 min/km, or numbers out of range
 * @example
 * runningFood({ weightKg: 20, weeks: [{ sessions: [{ day: '2026-03-02', distanceKm: 7 }] }] })
 *   // => [{ week: 1, runningDays: 1, kcalPerWeek: 138.9, kcalPerDay: 19.8, … }]
 * Source: cost of running (see `runningCost`).
 */
export function runningFood(plan: RunningPlanInput): WeekOfRunning[] {
  weightInRange('weightKg', plan.weightKg);
  const counted = inRange('countedKmPerWeek', plan.countedKmPerWeek ?? 0, 'km', {
    min: 0,
    max: 500,
  });
  return plan.weeks.map(({ number, sessions }, index) =>
    weekOfRunning(
      number ?? index + 1,
      sessions.map((session) => runEnergy(plan, session)),
      counted,
    ),
  );
}

/**
 * Energy of one run, kcal above rest. See `runningFood` for errors.
 * @example
 * runEnergy({ weightKg: 20, paceMinPerKm: 6 }, { day: '2026-03-02', runMinutes: 30 }).distanceKm
 *   // => 5
 */
export function runEnergy(
  plan: Pick<RunningPlanInput, 'weightKg' | 'paceMinPerKm' | 'climbMPerKm'>,
  run: PlannedRun,
): RunEnergy {
  const distanceKm = distanceOf(run, plan.paceMinPerKm);
  const perKm = inRange('climbMPerKm', plan.climbMPerKm ?? 0, 'm per km', { min: 0, max: 300 });
  const climbM = run.climbM ?? perKm * distanceKm;
  const kcal = runningCost({ weightKg: plan.weightKg, distanceKm, climbM });
  return { day: run.day, distanceKm, kcal };
}

function distanceOf(run: PlannedRun, usualPace: number | undefined): number {
  if (run.distanceKm !== undefined && run.distanceKm !== null) return run.distanceKm;
  const pace = run.paceMinPerKm ?? usualPace;
  if (run.runMinutes === undefined || pace === undefined) {
    throw new ArgumentError(
      'paceMinPerKm',
      'min/km',
      PACE,
      'a run needs a distance in km, or minutes with a pace from 2 to 20 min/km',
    );
  }
  inRange('runMinutes', run.runMinutes, 'min', { min: 0, max: 1440 });
  return run.runMinutes / inRange('paceMinPerKm', pace, 'min/km', PACE);
}

function weekOfRunning(week: number, runs: readonly RunEnergy[], countedKm: number): WeekOfRunning {
  const total = (pick: (run: RunEnergy) => number): number =>
    runs.reduce((sum, run) => sum + pick(run), 0);
  const km = total(({ distanceKm }) => distanceKm);
  const beyond = km > countedKm ? (km - countedKm) / km : 0;
  const kcalPerWeek = beyond * total(({ kcal }) => kcal.mid);
  const runningDays = new Set(runs.map(({ day }) => day)).size;
  const kcalPerRunningDay = runningDays === 0 ? 0 : kcalPerWeek / runningDays;
  return {
    week,
    runningDays,
    runs,
    kcalPerWeek,
    low: beyond * total(({ kcal }) => kcal.low),
    high: beyond * total(({ kcal }) => kcal.high),
    kcalPerRunningDay,
    kcalPerDay: kcalPerWeek / 7,
    reason: weekReason(week, kcalPerRunningDay, kcalPerWeek / 7),
  };
}

function weekReason(week: number, perRunningDay: number, perDay: number): Reason {
  const [running, average] = [Math.round(perRunningDay), Math.round(perDay)];
  return {
    code: 'running-food-week',
    ...saying(
      running === 0
        ? `Week ${week}: no more food for running.`
        : `Week ${week}: {${running} kcal} more on running days ({${average} kcal} a day on average).`,
    ),
    params: { week, kcalPerRunningDay: running, kcalPerDay: average },
    ...from('A', 'C', 'taylor1982', 'bryce2017'),
  };
}
