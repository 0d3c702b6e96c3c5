import { addDays, type IsoDay } from '../day.ts';
import { wasRun } from '../ramp/done.ts';
import type { SessionResult } from '../ramp/reviewTypes.ts';
import type { RampSession } from '../ramp/types.ts';
import { runEnergy, runningFood } from '../running/plannedRunning.ts';
import type { RunAsItWas } from '../track/types.ts';
import type { DoneRun } from '../weight/ownEnergy.ts';
import type { AssessedPlan, AssessedRunning } from './types.ts';

/** A session whose distance is known. */
type PacedSession = RampSession & { readonly distanceKm: number };

const isPaced = (session: RampSession): session is PacedSession => session.distanceKm !== null;

type Result = SessionResult & Partial<RunAsItWas>;

/** The planned climb gives way to what was climbed from so many recorded outings on (D). */
const CLIMB_FROM_OUTINGS = 2;
/** So far back an outing still says where the dog runs now, days (D). */
const CLIMB_DAYS = 28;

/** Metres climbed an outing: the mean of those recorded lately, else as the plan says. */
function climbOf(plan: AssessedPlan, results: readonly Result[], day: IsoDay) {
  const since = addDays(day, -CLIMB_DAYS);
  const climbs = results.flatMap(({ day: on, climbedM }) =>
    climbedM == null || on < since || on > day ? [] : [climbedM],
  );
  if (climbs.length < CLIMB_FROM_OUTINGS) return { metres: plan.climbM ?? 0, recorded: 0 };
  const metres = climbs.reduce((sum, climb) => sum + climb, 0) / climbs.length;
  return { metres, recorded: climbs.length };
}

/** The cost of the planned running, week by week; null without a plan, or without a pace. */
export function plannedRunning(
  plan: AssessedPlan | null | undefined,
  results: readonly Result[],
  weightKg: number,
  day: IsoDay,
): AssessedRunning | null {
  if (plan == null || !plan.ramp.weeks.some(({ sessions }) => sessions.some(isPaced))) return null;
  const climb = climbOf(plan, results, day);
  const weeks = runningFood({
    weightKg,
    weeks: plan.ramp.weeks.map(({ number, sessions }) => ({
      number,
      sessions: sessions.filter(isPaced).map((session) => ({ ...session, climbM: climb.metres })),
    })),
  });
  const index = plan.ramp.weeks.findIndex(({ startDay }) => addDays(startDay, 7) > day);
  return { climb, weeks, current: index < 0 ? null : weeks[index]! };
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
 * @example rationByWeek({ kcalPerDay: 900, runningKcalPerDay: 0 }, sample.running)[0]
 *   // => { week: 1, kcalPerDay: 906.6 }
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

/**
 * The runs that were done, kcal above rest: by the distance and climb they were recorded with, else
 * from the planned distance and what the owner told.
 */
export function runsDone(
  plan: AssessedPlan | null | undefined,
  results: readonly Result[],
  weightKg: number,
): DoneRun[] {
  const planned = new Map(
    (plan?.ramp.weeks ?? [])
      .flatMap(({ sessions }) => sessions)
      .map((session) => [session.day, session]),
  );
  return results.flatMap(({ day, outcome, runMinutes, runKm, climbedM }) => {
    const session = planned.get(day);
    if (runKm != null) {
      const { kcal } = runEnergy(
        { weightKg },
        { day, distanceKm: runKm, climbM: climbedM ?? plan?.climbM ?? 0 },
      );
      return [{ day, kcal: kcal.mid }];
    }
    if (!wasRun(outcome) || session === undefined || !isPaced(session)) return [];
    // A shortened run that was not timed counts as half, the middle of what it can have been.
    const untimed = outcome === 'shortened' ? 0.5 : 1;
    const share = runMinutes == null ? untimed : runMinutes / session.runMinutes;
    const distanceKm = session.distanceKm * share;
    const { kcal } = runEnergy(
      { weightKg },
      { day, distanceKm, climbM: (plan?.climbM ?? 0) * share },
    );
    return [{ day, kcal: kcal.mid }];
  });
}
