import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import { trendOn, weightTrend, type Weighing } from '../../../core/nutrition.ts';

// The errors by hand: 1 % of the usual weight and the step of 0.1 kg as d / √12, 0.0289 kg, for each
// weighing; 1.645 of the line's standard deviation to either side is 90 %.

const START = '2026-03-01';
const on = (day: number, weightKg: number, more: Partial<Weighing> = {}): Weighing => ({
  day: addDays(START, day),
  weightKg,
  ...more,
});
const line = (apart: number, weights: readonly number[]) =>
  weights.map((kg, index) => on(index * apart, kg));
/** So often weighed on two days that little doubt is left. */
const often = (times: number, days: number, fromKg: number, toKg: number) =>
  Array.from({ length: times }, () => [on(0, fromKg), on(days, toKg)]).flat();

describe('the rate', () => {
  // 40 to 39.2 kg: 0.397 kg for each of two weighings around 39.6, 0.5615 kg for their difference,
  // ± 0.9236 kg or 2.309 % of 40 at 90 %.
  it('comes with the change over the whole time, in the same interval', () => {
    const trend = weightTrend([on(0, 40), on(28, 39.2)]);
    expect(trend.kgPerWeek).toBeCloseTo(-0.2, 9);
    expect(trend.change!.mid).toBeCloseTo(-2, 9);
    expect(trend.change!.low).toBeCloseTo(-4.309, 3);
    expect(trend.change!.high).toBeCloseTo(0.309, 3);
    expect(trend.low).toBeCloseTo(-4.309 / 4, 3);
    expect(trend.high).toBeCloseTo(0.309 / 4, 3);
  });

  // A line through 12, 12, 12, 12 and 60 kg starts at 2.4 and rises by 4.8 kg a week.
  it('leans on the weight the dog had where a slip draws its line to half of that', () => {
    const { percentPerWeek, line: drawn } = weightTrend(line(14, [12, 12, 12, 12, 60]));
    expect(drawn[0]!.kg).toBeCloseTo(2.4, 6);
    expect(percentPerWeek).toBeCloseTo((100 * 4.8) / 12, 6);
  });

  it('draws no line before there is one', () => {
    expect(trendOn(weightTrend([on(0, 20)]), 20_600)).toBeNull();
  });

  it('draws its line once a day, through as many weighings as there were', () => {
    const trend = weightTrend([on(0, 20), on(0, 20.2), on(14, 20), on(28, 19.8), on(28, 20)]);
    expect(trend.points).toHaveLength(5);
    expect(trend.line.map(({ day }) => day)).toEqual([0, 14, 28].map((day) => addDays(START, day)));
  });
});

describe('what a trend says of the dog', () => {
  const status = (weighings: readonly Weighing[]) => weightTrend(weighings).status;

  it('needs more than 14 days to call a weight stable, however often it was weighed', () => {
    expect(status(often(30, 14, 20, 20))).toBe('cannot tell yet');
    expect(status(often(30, 15, 20, 20))).toBe('stable');
  });

  // Two weighings 28 days apart leave ± 0.58 % a week.
  it.each([
    [20, 19.76, -0.3],
    [20, 20.24, 0.3],
  ])('cannot call %d to %d kg stable: at %d a week one end lies beyond 0.5', (from, to, rate) => {
    const trend = weightTrend([on(0, from), on(28, to)]);
    expect(trend.percentPerWeek).toBeCloseTo(rate, 6);
    expect(trend.status).toBe('cannot tell yet');
  });

  // 40 weighings on each of two days leave ± 0.37 % of change.
  it.each([
    [100 - 0.9, 'stable'],
    [100 + 0.9, 'stable'],
    [100 - 1.1, 'losing'],
    [100 + 1.1, 'gaining'],
  ])(
    'calls 100 kg and %d kg eight weeks later, both sure, %s: from 1 % on it is a change',
    (kg, told) => {
      const trend = weightTrend(often(40, 56, 100, kg));
      expect(Math.sign(trend.low!)).toBe(Math.sign(trend.high!));
      expect(Math.max(-trend.low!, trend.high!)).toBeLessThan(0.5);
      expect(trend.status).toBe(told);
    },
  );

  // Two weighings leave ± 2.3 %, over half a year less than 0.1 % a week.
  it('calls a change of 1.5 % that may be none stable', () => {
    expect(status([on(0, 20), on(182, 19.7)])).toBe('stable');
    expect(status([on(0, 20), on(182, 20.3)])).toBe('stable');
  });

  // 40 and 36 kg: 0.381 kg for each, ± 0.8865 kg of 4 kg in ten weeks.
  it('tells the interval with its signs, in percent of the weight at the start', () => {
    const sentence = (weighings: readonly Weighing[]) => weightTrend(weighings).sentence;
    expect(sentence([on(0, 40), on(70, 36)])).toContain('losing weight: between −1.2 and −0.8 %');
    expect(sentence([on(0, 36), on(70, 40)])).toContain('gaining weight: between +0.9 and +1.4 %');
    expect(sentence(often(30, 182, 20, 20))).toContain('over 182 days: between 0.0 and 0.0 %');
  });

  it('tells how many weighings and what error stand behind it', () => {
    const { figure, low, high } = weightTrend([
      on(0, 40),
      on(14, 40),
      on(28, 40, { method: 'other scale' }),
    ]);
    // √(1² + 2²) % of 40 kg.
    expect(figure!.inputs.map(({ value, unit }) => `${value} ${unit}`.trim())).toEqual([
      '3',
      '28 days',
      '0.89 kg',
    ]);
    expect(figure).toMatchObject({ low, high, unit: '% a week', mark: 'D' });
    expect(figure!.sources).toContain('german2011');
    expect(figure!.notes.join()).toContain('our own choice');
  });
});

describe('a weighing that stands out', () => {
  const outliers = (weighings: readonly Weighing[]) =>
    weightTrend(weighings)
      .flagged.filter(({ outlier }) => outlier)
      .map(({ weightKg }) => weightKg);

  // Three standard deviations of itself and the line through the others, 0.401 kg each: beside
  // four even ones 3 × 0.401 × √(1 + 1/4) = 1.345 kg, beside two 3 × 0.401 × √(1 + 1/2) = 1.474 kg.
  it.each([
    [[40, 40, 41.34, 40, 40], []],
    [[40, 40, 41.35, 40, 40], [41.35]],
    [[40, 40, 38.66, 40, 40], []],
    [[40, 40, 38.65, 40, 40], [38.65]],
    [[40, 41.47, 40], []],
    [
      [40, 41.48, 40],
      [40, 41.48, 40],
    ],
  ])('in %j is %j: further than three standard deviations off', (weights, found) => {
    expect(outliers(line(14, weights))).toEqual(found);
  });

  // Another scale's 2 % of 40 kg, 0.8 kg, are added in squares: 3 × √(0.401² × 5/4 + 0.8²) = 2.753 kg.
  it('may lie further off on another scale, by what scales differ', () => {
    const off = (kg: number) => line(14, [40, 40, 40, 40, 40]).with(2, on(28, kg, OTHER));
    expect(outliers(off(42.74))).toEqual([]);
    expect(outliers(off(42.76))).toEqual([42.76]);
  });

  const OTHER = { method: 'other scale' } as const;

  // 5 % of the first weight a week; less than a week counts as one.
  it.each([
    [7, 20.99, false],
    [7, 21.01, true],
    [7, 19.01, false],
    [7, 18.99, true],
    [2, 20.99, false],
    [2, 21.01, true],
    [28, 23.9, false],
    [28, 24.1, true],
  ])(
    'of two is either, faster than a twentieth a week: after %i days 20 to %d kg, %s',
    (days, kg, fast) => {
      expect(outliers([on(0, 20), on(days, kg)])).toEqual(fast ? [20, kg] : []);
    },
  );

  it('is looked for again without the worst, while more than three are left', () => {
    expect(outliers(line(14, [30, 30.1, 36, 30, 29.9, 24, 30.1]))).toEqual([36, 24]);
    // 40, 36 and 36 do not fit one line either, and nothing tells which of the three is off.
    expect(outliers(line(14, [40, 36, 60, 36]))).toEqual([60]);
  });

  it('is none among weighings of one day alone', () => {
    expect(outliers([on(0, 20), on(0, 24), on(0, 30)])).toEqual([]);
    expect(outliers([on(0, 20), on(0, 24), on(0, 30), on(0, 20)])).toEqual([]);
  });

  it('is all that the rate without outliers leaves out', () => {
    const even = [...line(28, [32, 31.5, 31, 30.5, 30, 29.5]), on(70, 31, OTHER)];
    // One slip on the day of a good weighing, the other of the weight of a good one.
    const { flagged, withoutOutliers, sentence } = weightTrend([...even, on(140, 35), on(120, 32)]);
    expect(flagged.map(({ weightKg, outlier }) => [weightKg, outlier])).toEqual([
      [31, false],
      [32, true],
      [35, true],
    ]);
    const without = weightTrend(even);
    expect(withoutOutliers!.percentPerWeek).toBeCloseTo(without.percentPerWeek!, 3);
    expect(withoutOutliers!.high).toBeCloseTo(without.high!, 2);
    expect(sentence).toContain(
      'Weighings stand out and should be checked: {32 kg} on 2026-06-29, {35 kg}',
    );
    const one = weightTrend([...even, on(140, 35)]).sentence;
    expect(one).toContain('One weighing stands out and should be checked: {35 kg} on 2026-07-19');
  });

  it('is none that was only weighed differently', () => {
    const { flagged, withoutOutliers, sentence } = weightTrend([
      ...line(14, [30, 29.8, 29.6]),
      on(42, 29.4, OTHER),
    ]);
    expect(flagged).toHaveLength(1);
    expect(withoutOutliers).toBeNull();
    expect(sentence).not.toContain('stand');
  });
});
