import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import { lossCorridor, weeksToTarget } from '../../../core/nutrition.ts';
import { holds } from '../../support/laws.ts';

const START = '2026-03-01';
const weight = fc.integer({ min: 10, max: 900 }).map((tenths) => tenths / 10);

describe('the corridor of a loss plan', () => {
  it('is ordered, never rises, never passes the target, and ends on it', () => {
    holds(
      fc.property(weight, fc.integer({ min: 40, max: 99 }), (initialKg, share) => {
        const targetKg = Math.max(0.1, (initialKg * share) / 100);
        const points = lossCorridor({ startDay: START, initialKg, targetKg });
        expect(points[0]).toEqual({ day: START, high: initialKg, aim: initialKg, low: initialKg });
        points.forEach(({ low, aim, high }, index) => {
          expect(low).toBeLessThanOrEqual(aim);
          expect(aim).toBeLessThanOrEqual(high);
          expect(low).toBeGreaterThanOrEqual(targetKg);
          if (index > 0) expect(high).toBeLessThanOrEqual(points[index - 1]!.high);
        });
        expect(points.at(-1)!.high).toBeCloseTo(targetKg, 9);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('has one point a week', () => {
    const points = lossCorridor({ startDay: START, initialKg: 20, targetKg: 19 });
    expect(points.map(({ day }) => day)).toEqual(
      Array.from({ length: 11 }, (_, week) => addDays(START, 7 * week)),
    );
  });

  it('is a single point when there is nothing to lose', () => {
    expect(lossCorridor({ startDay: START, initialKg: 20, targetKg: 20 })).toHaveLength(1);
    expect(weeksToTarget(20, 22, 1)).toBe(0);
  });

  it('refuses bad weights, naming them', () => {
    const plan = { startDay: START, initialKg: 20, targetKg: 18 };
    expect(() => lossCorridor({ ...plan, initialKg: 0 })).toThrow(/initialKg/);
    expect(() => lossCorridor({ ...plan, targetKg: 200 })).toThrow(/targetKg must be .* kg/);
  });
});
