import type { Spread } from './types.ts';

/** Mean and sample standard deviation; null of nothing. */
export function spread(values: readonly number[]): Spread | null {
  if (values.length === 0) return null;
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  if (values.length === 1) return { mean, sd: null, count: 1 };
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, sd: Math.sqrt(squares / (values.length - 1)), count: values.length };
}

/** Mean and spread of values on a circle of 100 % (99 and 1 lie side by side). */
export function circularSpread(percents: readonly number[]): Spread | null {
  if (percents.length === 0) return null;
  const turn = (2 * Math.PI) / 100;
  const x = percents.reduce((sum, p) => sum + Math.cos(p * turn), 0);
  const y = percents.reduce((sum, p) => sum + Math.sin(p * turn), 0);
  const centre = Math.atan2(y, x) / turn;
  // Unrolled round the centre, so that an ordinary mean and deviation hold.
  const unrolled = percents.map((p) => centre + ((((p - centre + 50) % 100) + 100) % 100) - 50);
  const { mean, sd, count } = spread(unrolled)!;
  return { mean: ((mean % 100) + 100) % 100, sd, count };
}
