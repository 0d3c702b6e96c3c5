import { runAgainstPlan, type RampSession, type RunAgainstPlan } from '../../core/index.ts';
import type { OutingRead } from '../../electron/contract/calls/runs.ts';
import type { SessionInput } from '../../electron/contract/records.ts';
import { inputOf, outcomeOnly } from '../plans/timeline.ts';

/** The outings of one day, held against what was planned for it, and the result they propose. */
export interface RunDay {
  readonly day: string;
  readonly outings: readonly OutingRead[];
  /** Null: nothing was planned for the day. */
  readonly planned: RampSession | null;
  readonly against: RunAgainstPlan;
  /** What was told of the day before; null where nothing was. */
  readonly told: SessionInput | null;
  readonly proposed: SessionInput;
}

/** A walk counts as done from this part of its minutes on, as a run does (D). */
const WALK_SHARE = 0.9;

const tenth = (value: number): number => Math.round(value * 10) / 10;
const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** One entry a day, oldest first. */
export function runDaysOf(
  outings: readonly OutingRead[],
  planned: readonly RampSession[],
  results: readonly SessionInput[],
): readonly RunDay[] {
  const days = [...new Set(outings.map(({ day }) => day))].sort();
  return days.map((day) => {
    const own = outings.filter((outing) => outing.day === day);
    const session = planned.find((each) => each.day === day) ?? null;
    const told = results.find((result) => result.day === day) ?? null;
    return runDay(day, own, session, told === null ? null : inputOf(told));
  });
}

function runDay(
  day: string,
  outings: readonly OutingRead[],
  planned: RampSession | null,
  told: SessionInput | null,
): RunDay {
  const runs = planned === null || planned.kind === 'walk' ? null : planned;
  const against = runAgainstPlan(
    outings.map(({ outing }) => outing),
    runs === null ? null : { times: runs.repeats, runMin: runs.runMin },
  );
  const outcome = against.outcome ?? (planned === null ? 'done' : walkOutcome(planned, outings));
  const { runMinutes, longestOutingMinutes, runKm, climbM } = against;
  const proposed: SessionInput = {
    ...(told ?? outcomeOnly(day, outcome)),
    outcome,
    runMinutes: tenth(runMinutes),
    longestRunMinutes: tenth(longestOutingMinutes),
    runKm: hundredth(runKm),
    climbedM: climbM === null ? null : Math.round(climbM),
  };
  return { day, outings, planned, against, told, proposed };
}

function walkOutcome(planned: RampSession, outings: readonly OutingRead[]): 'done' | 'shortened' {
  const seconds = outings.reduce((sum, { outing }) => sum + outing.movingSeconds, 0);
  return seconds >= WALK_SHARE * planned.runMin * 60 ? 'done' : 'shortened';
}

/** True where a result tells of a run on a day for which the plan has none. */
export const isUnplanned = (result: SessionInput, planned: readonly RampSession[]): boolean =>
  result.runMinutes !== null &&
  result.runMinutes > 0 &&
  !planned.some((session) => session.day === result.day);
