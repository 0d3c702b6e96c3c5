// Every figure is a ratio of two things timed in turn in one run, so that a noisy machine slows both.

/** One line of the table. */
export interface BenchLine {
  readonly name: string;
  /** What is measured against what. */
  readonly against: string;
  readonly value: number;
  readonly unit: '×' | 'ms' | 'kB' | 'MB';
  /** The most it may be; absent where there is none. */
  readonly target?: number;
  readonly note?: string;
}

export const median = (values: readonly number[]): number => percentile(values, 50);

/** The value that `percent` of the values do not exceed (nearest rank). */
export function percentile(values: readonly number[], percent: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const rank = Math.ceil((percent / 100) * sorted.length);
  return sorted[Math.min(sorted.length, Math.max(1, rank)) - 1]!;
}

type Task = () => unknown;

/** For `--hurry`: every measurement is taken, and none of its times means much. */
const IN_A_HURRY = 1;
const HURRIED = process.argv.includes('--hurry');

/** How often to do what makes a figure steady with so many rounds. */
export const roundsOf = (rounds: number): number =>
  HURRIED ? Math.min(IN_A_HURRY, rounds) : rounds;

/** Milliseconds one run takes. */
export async function timed(task: Task): Promise<number> {
  const start = performance.now();
  await task();
  return performance.now() - start;
}

export interface Compared {
  readonly ratio: number;
  readonly oursMs: number;
  readonly theirsMs: number;
}

/**
 * Runs both in turn, so that neither has the quieter moments, and compares the medians. `after`
 * tidies up behind ours and is not timed.
 */
export async function compare(
  ours: Task,
  theirs: Task,
  {
    rounds = 15,
    warmUp = 2,
    after = () => undefined,
  }: { readonly rounds?: number; readonly warmUp?: number; readonly after?: Task } = {},
): Promise<Compared> {
  const times = { ours: [] as number[], theirs: [] as number[] };
  for (let round = -roundsOf(warmUp); round < roundsOf(rounds); round += 1) {
    const a = await timed(ours);
    await after();
    const b = await timed(theirs);
    if (round < 0) continue;
    times.ours.push(a);
    times.theirs.push(b);
  }
  const [oursMs, theirsMs] = [median(times.ours), median(times.theirs)];
  return { ratio: oursMs / theirsMs, oursMs, theirsMs };
}
