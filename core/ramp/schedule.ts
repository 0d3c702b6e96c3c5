import { addDays, dayNumber, weekday, type IsoDay, type Weekday } from '../day.ts';

/** All ways to take `count` of seven days, as offsets from the first. */
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

const COMBINATIONS = [0, 1, 2, 3, 4].map(combinations);

/**
 * The running days of the week that begins on `startDay`: at most `count`, on days of the week the
 * owner can run, never on the day after another running day, `lastRun` of the week before
 * included, and never on a day out. Takes fewer days where `count` do not fit, and spreads them as evenly as it can.
 */
export function runningDays(
  startDay: IsoDay,
  count: number,
  weekdays: readonly Weekday[],
  lastRun: IsoDay | null,
  daysOut: readonly IsoDay[] = [],
): IsoDay[] {
  const first = dayNumber(startDay);
  const earliest = lastRun === null ? first : dayNumber(lastRun) + 2;
  const open = [0, 1, 2, 3, 4, 5, 6].map((offset) => {
    const day = addDays(startDay, offset);
    return first + offset >= earliest && weekdays.includes(weekday(day)) && !daysOut.includes(day);
  });
  for (let size = Math.min(count, 4); size > 0; size -= 1) {
    const fitting = COMBINATIONS[size]!.filter((offsets) => offsets.every((o) => open[o]));
    if (fitting.length === 0) continue;
    const best = fitting.reduce((a, b) => (evenness(b) > evenness(a) ? b : a));
    return best.map((offset) => addDays(startDay, offset));
  }
  return [];
}

/** Higher where the smallest gap, the one round to the next week included, is wider. */
function evenness(offsets: readonly number[]): number {
  const gaps = offsets.map((offset, index) => (offsets[index + 1] ?? offsets[0]! + 7) - offset);
  return Math.min(...gaps);
}
