import { describe, expect, it } from 'vitest';
import { lossCorridor, weightSeries, weightTrend } from '../../../core/index.ts';

const NOTHING = { corridor: [], targetKg: null, holdKg: null };

describe('the series of the weight', () => {
  it('flag a weighing on another scale, and not the one of the same day beside it', () => {
    const trend = weightTrend([
      { day: '2026-01-01', weightKg: 30 },
      { day: '2026-01-15', weightKg: 29.8 },
      { day: '2026-01-15', weightKg: 29.2, method: 'other scale' },
    ]);
    const flags = weightSeries({ ...NOTHING, trend }).points.map(({ kg, flag }) => [
      kg,
      flag !== '',
    ]);
    expect(flags).toContainEqual([29.8, false]);
    expect(flags).toContainEqual([29.2, true]);
  });

  it('carry the line of the trend with its band, and a weight to hold only where one is', () => {
    const trend = weightTrend([
      { day: '2026-01-01', weightKg: 30 },
      { day: '2026-01-15', weightKg: 29.6 },
    ]);
    const series = weightSeries({ ...NOTHING, trend });
    expect(series.hold).toBeNull();
    expect(series.trend).toHaveLength(2);
    series.trend.forEach(({ day, low, mid, high }, at) => {
      expect({ day, low, kg: mid, high }).toEqual(trend.line[at]);
    });
  });

  it('flag the weighing of its day alone, where another weighed the same', () => {
    const trend = weightTrend([
      { day: '2026-01-01', weightKg: 30, method: 'other scale' },
      { day: '2026-01-15', weightKg: 30 },
    ]);
    const flags = weightSeries({ ...NOTHING, trend }).points.map(({ flag }) => flag !== '');
    expect(flags).toEqual([true, false]);
  });

  it('carry the corridor eight weeks past the last weighing, not a year', () => {
    const corridor = lossCorridor({ startDay: '2025-12-01', initialKg: 24.2, targetKg: 15 });
    expect(corridor.at(-1)!.day.slice(0, 4)).toBe('2027');
    const trend = weightTrend([{ day: '2025-12-15', weightKg: 23.9 }]);
    const series = weightSeries({ ...NOTHING, trend, corridor });
    expect(series.corridor.at(-1)!.day).toBe('2026-02-09');
    expect(series.days).toEqual(['2025-12-01', '2026-02-09']);
  });

  it('give one weighing four weeks to stand in, and none no days', () => {
    const one = weightTrend([{ day: '2026-01-01', weightKg: 30 }]);
    expect(weightSeries({ ...NOTHING, trend: one }).days).toEqual(['2026-01-01', '2026-01-29']);
    expect(weightSeries({ ...NOTHING, trend: weightTrend([]) }).days).toBeNull();
  });

  it('hold a weight between 2 % under and 3 % over it', () => {
    const trend = weightTrend([{ day: '2026-01-01', weightKg: 30 }]);
    const { hold } = weightSeries({ ...NOTHING, trend, holdKg: 30 });
    expect(hold!.low).toBeCloseTo(29.4);
    expect(hold!.high).toBeCloseTo(30.9);
  });
});
