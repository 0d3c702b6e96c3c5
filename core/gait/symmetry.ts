import { ArgumentError, inRange } from '../check.ts';

const READING = { min: 0, max: 1e6 } as const;

/**
 * Symmetry index, %: `200 (a − b) / (a + b)`. 0 = alike; positive where `a` is the larger.
 *
 * @param a one side, any unit, 0 or more
 * @param b the other side, same unit, 0 or more; not both 0
 * @throws RangeError when a number is out of range or both are 0
 * @example symmetryIndex(40, 36) // => 10.526
 * Source: arithmetic (C).
 */
export function symmetryIndex(a: number, b: number): number {
  inRange('a', a, '', READING);
  inRange('b', b, '', READING);
  if (a + b > 0) return (200 * (a - b)) / (a + b);
  throw new ArgumentError('a', '', READING, 'a and b must not both be 0');
}
