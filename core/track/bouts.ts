/** Run or walk of every second, from its speed. */
export interface Gaits {
  readonly runs: readonly boolean[];
  readonly splitMps: number;
}

/** A change of gait is believed from about this many seconds of it on (D). */
const SHORTEST_S = 8;
/** A speed counts for no more than this off the split: a spike of the receiver turns nothing (D). */
const MOST_OFF_MPS = 1;

/**
 * Tells run from walk, second by second. The split is the speed that parts the outing's speeds best
 * into two groups (Otsu 1979, IEEE Trans SMC 9:62-66, from memory), kept between the given ends; the
 * changes are those that fit best at a price for each (exact, by dynamic programming). Error: a
 * change is placed within some 12 s at one point a second; bouts under some 15 s are not seen.
 */
export function gaitsOf(
  speeds: readonly number[],
  ends: { readonly slowestRunMps: number; readonly fastestWalkMps: number },
): Gaits {
  const splitMps = splitOf(speeds, ends.slowestRunMps, ends.fastestWalkMps);
  const price = SHORTEST_S * typicalOff(speeds, splitMps);
  // cost[0]: cheapest history that walks now; cost[1]: that runs now. `from` remembers the way.
  let cost: readonly [number, number] = [0, 0];
  const from: [boolean, boolean][] = [];
  for (const speed of speeds) {
    const off = Math.max(-MOST_OFF_MPS, Math.min(MOST_OFF_MPS, speed - splitMps));
    const walkFromRun = cost[1] + price < cost[0];
    const runFromRun = cost[1] <= cost[0] + price;
    from.push([walkFromRun, runFromRun]);
    cost = [
      (walkFromRun ? cost[1] + price : cost[0]) + Math.max(0, off),
      (runFromRun ? cost[1] : cost[0] + price) + Math.max(0, -off),
    ];
  }
  const runs: boolean[] = [];
  let running = cost[1] < cost[0];
  for (let at = speeds.length - 1; at >= 0; at -= 1) {
    runs.push(running);
    running = from[at]![running ? 1 : 0];
  }
  return { runs: runs.reverse(), splitMps };
}

/** The mean distance from the split, so that the price of a change is in seconds of a clear gait. */
function typicalOff(speeds: readonly number[], split: number): number {
  const off = speeds.map((speed) => Math.min(MOST_OFF_MPS, Math.abs(speed - split)));
  return off.length === 0 ? 0 : off.reduce((sum, one) => sum + one, 0) / off.length;
}

function splitOf(speeds: readonly number[], lowest: number, highest: number): number {
  const moving = speeds.filter((speed) => speed > 0.5);
  let best = { middle: (lowest + highest) / 2, between: 0 };
  for (let split = lowest; split <= highest + 1e-9; split += 0.05) {
    const [slow, fast] = [
      moving.filter((speed) => speed <= split),
      moving.filter((speed) => speed > split),
    ];
    if (slow.length === 0 || fast.length === 0) continue;
    const [low, high] = [mean(slow), mean(fast)];
    const between = slow.length * fast.length * (high - low) ** 2;
    if (between > best.between) best = { middle: (low + high) / 2, between };
  }
  return Math.min(Math.max(best.middle, lowest), highest);
}

const mean = (of: readonly number[]): number => of.reduce((sum, one) => sum + one, 0) / of.length;
