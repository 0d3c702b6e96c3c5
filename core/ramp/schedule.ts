import type { Weekday } from '../day.ts';

/** The most running days in a week. */
export const MOST_RUNNING_DAYS = 4;

/** All ways to take `count` of seven days, none next to another, as offsets from the first. */
function combinations(count: number): number[][] {
  const result: number[][] = [];
  const extend = (chosen: number[], from: number): void => {
    if (chosen.length === count) {
      result.push(chosen);
      return;
    }
    for (let offset = from; offset < 7; offset += 1) extend([...chosen, offset], offset + 2);
  };
  extend([], 0);
  return result;
}

/** Higher where the smallest gap, the one round to the next week included, is wider. */
function evenness(offsets: readonly number[]): number {
  const gaps = offsets.map((offset, index) => (offsets[index + 1] ?? offsets[0]! + 7) - offset);
  return Math.min(...gaps);
}

/** By count, the most even first; among alike, the earliest days first. */
const COMBINATIONS: readonly number[][][] = [0, 1, 2, 3, 4].map((count) =>
  combinations(count).sort((a, b) => evenness(b) - evenness(a)),
);

/** By count, those that end first before the others. */
const EARLY = COMBINATIONS.map((list) => [...list].sort((a, b) => a.at(-1)! - b.at(-1)!));

/** When the owner can run. */
export interface Availability {
  readonly weekdays: readonly Weekday[];
  /** Day numbers without running. */
  readonly out: ReadonlySet<number>;
}

/** Day of the week of a day number, Monday = 0. 1970-01-01 was a Thursday. */
const weekdayOf = (day: number): Weekday => ((((day + 3) % 7) + 7) % 7) as Weekday;

/**
 * The running days, as day numbers, in the `length` days (1–7) from `first`: at most `count`, on
 * days the owner can run, never on the day after another running day, `lastRun` included. Takes
 * fewer days where `count` do not fit, and spreads them as evenly as it can.
 */
export function runningDays(
  first: number,
  count: number,
  availability: Availability,
  lastRun: number | null,
  length = 7,
): number[] {
  const earliest = lastRun === null ? first : lastRun + 2;
  const open = [0, 1, 2, 3, 4, 5, 6].map(
    (offset) =>
      offset < length &&
      first + offset >= earliest &&
      !availability.out.has(first + offset) &&
      availability.weekdays.includes(weekdayOf(first + offset)),
  );
  for (let size = Math.min(count, MOST_RUNNING_DAYS); size > 0; size -= 1) {
    // Fewer than asked for end early, so that the week after can hold its full number again.
    const known = size === count ? COMBINATIONS[size]! : EARLY[size]!;
    const best = known.find((offsets) => offsets.every((offset) => open[offset]));
    if (best !== undefined) return best.map((offset) => first + offset);
  }
  return [];
}

/** Days without a walk, as offsets: those that a week of so many walks leaves free, far apart. */
const WALK_FREE: Readonly<Record<number, readonly number[]>> = {
  3: [1, 3, 5, 6],
  4: [2, 4, 6],
  5: [2, 6],
  6: [6],
  7: [],
};

/** The days of `count` walks in the `length` days from `first`; walks may follow one another. */
export function walkingDays(
  first: number,
  count: number,
  availability: Availability,
  length = 7,
): number[] {
  const free = WALK_FREE[count] ?? [];
  const open = [0, 1, 2, 3, 4, 5, 6]
    .filter((offset) => offset < length)
    .map((offset) => ({ offset, day: first + offset }))
    .filter(({ day }) => !availability.out.has(day))
    .filter(({ day }) => availability.weekdays.includes(weekdayOf(day)));
  return open
    .sort((a, b) => Number(free.includes(a.offset)) - Number(free.includes(b.offset)))
    .slice(0, count)
    .map(({ day }) => day)
    .sort((a, b) => a - b);
}
