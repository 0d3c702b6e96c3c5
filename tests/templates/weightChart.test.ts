import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lossCorridor, weightTrend } from '../../core/index.ts';
import { chartFrame, nearCorridor } from '../../templates/charts/chartFrame.ts';
import { axis, niceStep, spread } from '../../templates/charts/scale.ts';
import { createFormat } from '../../templates/format.ts';
import { en } from '../../templates/index.ts';
import { practice } from './support/people.ts';

describe('axis', () => {
  it('steps by 1, 2 or 5 times a power of ten', () => {
    expect([niceStep(10, 5), niceStep(3.1, 5), niceStep(70, 5)]).toEqual([2, 1, 20]);
  });

  it('encloses every value between round ends', () => {
    const value = fc.double({ min: 0.5, max: 300, noNaN: true });
    fc.assert(
      fc.property(value, value, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const { min, max, ticks } = axis(low, high);
        expect(min).toBeLessThanOrEqual(low);
        expect(max).toBeGreaterThanOrEqual(high);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
        expect(ticks.length).toBeLessThanOrEqual(9);
      }),
      { seed: 1, numRuns: 500 },
    );
  });

  it('thins a list out but keeps its ends', () => {
    expect(spread([1, 2, 3, 4, 5, 6, 7, 8, 9], 4)).toEqual([1, 4, 6, 9]);
    expect(spread([1, 2], 4)).toEqual([1, 2]);
  });
});

describe('chart', () => {
  const data = {
    trend: weightTrend([
      { day: '2025-12-01', weightKg: 24.2 },
      { day: '2025-12-15', weightKg: 23.9 },
    ]),
    corridor: lossCorridor({ startDay: '2025-12-01', initialKg: 24.2, targetKg: 15 }),
    targetKg: 15,
  };
  const format = createFormat(practice, en.frame.numbers);

  it('draws the course some weeks ahead, not a year', () => {
    expect(data.corridor.at(-1)?.day.slice(0, 4)).toBe('2027');
    expect(nearCorridor(data).at(-1)?.day).toBe('2026-02-09');
  });

  it('places later days further right and heavier weights higher, inside the plot', () => {
    const frame = chartFrame({ ...data, corridor: nearCorridor(data) }, format, 493);
    expect(frame.x('2025-12-01')).toBeLessThan(frame.x('2025-12-15'));
    expect(frame.y(24.2)).toBeLessThan(frame.y(23.9));
    for (const { day, weightKg, sdKg } of data.trend.points) {
      expect(frame.x(day)).toBeGreaterThan(frame.left);
      expect(frame.x(day)).toBeLessThan(frame.right);
      expect(frame.y(weightKg + sdKg)).toBeGreaterThanOrEqual(frame.top);
      expect(frame.y(weightKg - sdKg)).toBeLessThanOrEqual(frame.bottom);
    }
  });

  it('gives a single weighing room', () => {
    const one = {
      trend: weightTrend([{ day: '2025-12-01', weightKg: 24 }]),
      corridor: [],
      targetKg: null,
    };
    const frame = chartFrame(one, format, 493);
    expect(Number.isFinite(frame.x('2025-12-01'))).toBe(true);
    expect(frame.axis.max).toBeGreaterThan(frame.axis.min);
  });
});
