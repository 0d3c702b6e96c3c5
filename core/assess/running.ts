import { addDays, type IsoDay } from '../day.ts';
import type { SessionResult } from '../ramp/reviewTypes.ts';
import type { RampSession } from '../ramp/types.ts';
import { runEnergy, runningFood } from '../running/plannedRunning.ts';
import type { DoneRun } from '../weight/ownEnergy.ts';
import type { AssessedPlan, AssessedRunning } from './types.ts';

/** A session whose distance is known. */
type PacedSession = RampSession & { readonly distanceKm: number };

const isPaced = (session: RampSession): session is PacedSession => session.distanceKm !== null;

/** The cost of the planned running, week by week; null without a plan, or without a pace. */
export function plannedRunning(
  plan: AssessedPlan | null | undefined,
  weightKg: number,
  day: IsoDay,
): AssessedRunning | null {
  if (plan == null || !plan.ramp.weeks.some(({ sessions }) => sessions.some(isPaced))) return null;
  const climbM = plan.climbM ?? 0;
  const weeks = runningFood({
    weightKg,
    weeks: plan.ramp.weeks.map(({ sessions }) => ({
      sessions: sessions.filter(isPaced).map((session) => ({ ...session, climbM })),
    })),
  });
  const index = plan.ramp.weeks.findIndex(({ startDay }) => addDays(startDay, 7) > day);
  return { weeks, current: index < 0 ? null : weeks[index]! };
}

/** The day's energy of one week of the plan. */
export interface WeekRation {
  readonly week: number;
  readonly kcalPerDay: number;
}

/** Weeks printed ahead: about as far as the next weigh-ins reach (D). */
const WEEKS_AHEAD = 8;

/**
 * How a ration follows the plan: from the present week on, the day's energy with that week's running
 * in place of the running it holds now. Empty without a plan or where no week differs by 1 kcal.
 */
export function rationByWeek(
  ration: { readonly kcalPerDay: number; readonly runningKcalPerDay: number },
  running: AssessedRunning | null,
): WeekRation[] {
  const current = running?.current ?? null;
  if (running === null || current === null) return [];
  const weeks = running.weeks
    .filter(({ week }) => week >= current.week)
    .slice(0, WEEKS_AHEAD)
    .map(({ week, kcalPerDay }) => ({
      week,
      kcalPerDay: ration.kcalPerDay - ration.runningKcalPerDay + kcalPerDay,
    }));
  const differs = weeks.some(({ kcalPerDay }) => Math.abs(kcalPerDay - ration.kcalPerDay) >= 1);
  return differs ? weeks : [];
}

/** The runs that were done, kcal above rest, from the planned distance and what the owner told. */
export function runsDone(
  plan: AssessedPlan | null | undefined,
  results: readonly SessionResult[],
  weightKg: number,
): DoneRun[] {
  if (plan == null) return [];
  const planned = new Map(
    plan.ramp.weeks.flatMap(({ sessions }) => sessions).map((session) => [session.day, session]),
  );
  return results.flatMap(({ day, outcome, runMinutes }) => {
    const session = planned.get(day);
    if (outcome === 'missed' || session === undefined || !isPaced(session)) return [];
    // A shortened run that was not timed counts as half, the middle of what it can have been.
    const untimed = outcome === 'shortened' ? 0.5 : 1;
    const share = runMinutes == null ? untimed : runMinutes / session.runMinutes;
    const distanceKm = session.distanceKm * share;
    const { kcal } = runEnergy(
      { weightKg },
      { day, distanceKm, climbM: (plan.climbM ?? 0) * share },
    );
    return [{ day, kcal: kcal.mid }];
  });
}
