import type { TrackOuting } from './types.ts';

/** A run that is this share of the planned one counts as done (D). */
const BOUT_SHARE = 0.8;
/** So is an outing with this share of the planned run-minutes (D). */
const OUTING_SHARE = 0.9;

/** The planned outing of a day: so many runs of so many minutes. */
export interface PlannedRuns {
  readonly times: number;
  readonly runMin: number;
}

type Figures = Omit<TrackOuting, 'startS' | 'speedsMps'>;

/** What was really run on a day, against what was planned for it. */
export interface RunAgainstPlan {
  readonly runMinutes: number;
  /** The longest run without a walk between, min. */
  readonly longestRunMinutes: number;
  /** Run-minutes of the longest outing: what the cap of a single session looks back on. */
  readonly longestOutingMinutes: number;
  readonly runKm: number;
  /** Mean speed of the runs, m/s; null where nothing was run. */
  readonly runSpeedMps: number | null;
  readonly climbM: number | null;
  /** Planned bouts that were run, of how many; null where nothing was planned for the day. */
  readonly boutsDone: number | null;
  /** What the run proposes as the outcome of the planned outing; null where none was planned. */
  readonly outcome: 'done' | 'shortened' | null;
}

/**
 * Adds up all outings of one day and holds them against the one that was planned. A run that was not
 * planned is seen as such: it has no outcome, and its minutes count for the cap all the same.
 * `outings` is not empty.
 * @example runAgainstPlan(trackOutings(sample.track), { times: 1, runMin: 5 })
 *   // => { boutsDone: 1, outcome: 'done', climbM: null, … }
 */
export function runAgainstPlan(
  outings: readonly Figures[],
  planned: PlannedRuns | null,
): RunAgainstPlan {
  const sum = (of: (outing: Figures) => number): number =>
    outings.reduce((total, outing) => total + of(outing), 0);
  const climbs = outings.map(({ climbM }) => climbM).filter((climb) => climb !== null);
  const runMinutes = sum((outing) => outing.runMinutes);
  const runKm = sum((outing) => outing.runKm);
  const runs = outings.flatMap(({ bouts }) => bouts.filter(({ kind }) => kind === 'run'));
  return {
    runMinutes,
    longestRunMinutes: Math.max(...outings.map((outing) => outing.longestRunMinutes)),
    longestOutingMinutes: Math.max(...outings.map((outing) => outing.runMinutes)),
    runKm,
    runSpeedMps: runMinutes === 0 ? null : (runKm * 1000) / (runMinutes * 60),
    climbM: climbs.length === 0 ? null : climbs.reduce((total, climb) => total + climb, 0),
    boutsDone: planned === null ? null : boutsDone(runs, planned),
    outcome: planned === null ? null : outcomeOf(runMinutes, planned),
  };
}

/** A run as long as several planned ones holds several. */
function boutsDone(runs: readonly { readonly seconds: number }[], planned: PlannedRuns): number {
  const plannedS = planned.runMin * 60;
  const held = runs.reduce(
    (total, { seconds }) => total + Math.floor(seconds / plannedS + (1 - BOUT_SHARE)),
    0,
  );
  return Math.min(held, planned.times);
}

const outcomeOf = (runMinutes: number, { times, runMin }: PlannedRuns): 'done' | 'shortened' =>
  runMinutes >= OUTING_SHARE * times * runMin ? 'done' : 'shortened';
