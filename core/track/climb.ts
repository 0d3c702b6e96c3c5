/** A rise counts once it is higher than a receiver's error, m (D). */
const HYSTERESIS_M = 5;
/** Heights are the middle of so many around them. */
const MEDIAN_OVER = 9;

/**
 * Metres climbed: rises from the lowest since the last fall, counted once they pass the hysteresis,
 * so that an error of the receiver does not add up. Null where fewer than two heights are known.
 */
export function climbOf(heights: readonly (number | null)[]): number | null {
  const known = heights.filter((height) => height !== null);
  if (known.length < 2) return null;
  const [first, ...rest] = known.map((_, at) => medianAround(known, at));
  let [low, high, climbed] = [first!, first!, 0];
  let rising = false;
  for (const height of rest) {
    if (rising) {
      high = Math.max(high, height);
      if (high - height >= HYSTERESIS_M) {
        climbed += high - low;
        [rising, low] = [false, height];
      }
    } else {
      low = Math.min(low, height);
      if (height - low >= HYSTERESIS_M) [rising, high] = [true, height];
    }
  }
  return climbed + (rising ? high - low : 0);
}

function medianAround(heights: readonly number[], at: number): number {
  const half = Math.floor(MEDIAN_OVER / 2);
  const around = heights.slice(Math.max(0, at - half), at + half + 1).toSorted((a, b) => a - b);
  return around[Math.floor(around.length / 2)]!;
}
