import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import { weightTrend } from '../../../core/nutrition.ts';
import { weighingsUntil } from '../../../core/weight/waiting.ts';

const START = '2026-03-01';
/** Weighings two weeks apart, kg. */
const trendOf = (weights: readonly number[]) =>
  weightTrend(weights.map((weightKg, index) => ({ day: addDays(START, 14 * index), weightKg })));

describe('how many weighings are still needed', () => {
  it('is true: with that many more on the same line the interval is that narrow', () => {
    for (const step of [-0.03, 0.02]) {
      const trend = trendOf([30, 30 + step]);
      const half = (more: number) => {
        const { low, high } = trendOf(
          Array.from({ length: 2 + more }, (_, index) => 30 + step * index),
        );
        return (high! - low!) / 2;
      };
      for (let more = 1; more <= 6; more += 1) {
        expect(weighingsUntil(trend, half(more) * 1.02)).toBe(more);
      }
      // Seven would be needed: nobody is told a number.
      expect(weighingsUntil(trend, half(7) * 1.02)).toBeNull();
    }
  });

  it('takes the scatter so far to go on, and counts it once', () => {
    const even = trendOf([30, 30, 30, 30]);
    const scattered = trendOf([30, 31, 29, 30.5]);
    const { widened } = scattered.fit!;
    expect(widened).toBeGreaterThan(3);
    expect(even.fit!.widened).toBe(1);
    for (const half of [0.35, 0.25, 0.18, 0.14]) {
      const count = weighingsUntil(even, half)!;
      expect(count).toBeGreaterThan(0);
      expect(weighingsUntil(scattered, half * widened)).toBe(count);
    }
    expect(weighingsUntil(scattered, 0.25)).toBeNull();
  });

  it('is no number without a rate, or where no interval is narrow enough', () => {
    expect(weighingsUntil(trendOf([30, 29.97]), 0.01)).toBeNull();
    for (const none of [0, -1]) expect(weighingsUntil(trendOf([30, 29.97]), none)).toBeNull();
    expect(weighingsUntil(trendOf([]), 1)).toBeNull();
    expect(weighingsUntil(trendOf([30]), 1)).toBeNull();
  });
});
