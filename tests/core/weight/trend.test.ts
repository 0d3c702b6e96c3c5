import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, dayNumber } from '../../../core/day.ts';
import {
  projectTarget,
  trendOn,
  weighingSd,
  weightDrift,
  weightTrend,
  type Weighing,
} from '../../../core/nutrition.ts';
import { holds } from '../../support/laws.ts';

const START = '2026-03-01';
const RUNS = { seed: 1, numRuns: 300 };

/** Weighings every `apart` days, kg. */
const every = (apart: number, weights: readonly number[], more: Partial<Weighing> = {}) =>
  weights.map((weightKg, index) => ({ day: addDays(START, index * apart), weightKg, ...more }));

const record = fc.array(
  fc.record({
    day: fc.integer({ min: 0, max: 700 }).map((days) => addDays(START, days)),
    weightKg: fc.integer({ min: 50, max: 600 }).map((tenths) => tenths / 10),
    method: fc.constantFrom('same scale', 'other scale', 'harness on', 'wet coat'),
  }) as fc.Arbitrary<Weighing>,
  { maxLength: 12 },
);

describe('the trend of weight', () => {
  it('has an ordered interval of numbers, or none and cannot tell yet', () => {
    holds(
      fc.property(record, (weighings) => {
        const trend = weightTrend(weighings);
        expect(trend.points).toHaveLength(weighings.length);
        if (trend.percentPerWeek === null) {
          expect(trend).toMatchObject({
            low: null,
            high: null,
            status: 'cannot tell yet',
            line: [],
          });
          return;
        }
        expect(Number.isFinite(trend.percentPerWeek)).toBe(true);
        expect(trend.low!).toBeLessThan(trend.percentPerWeek);
        expect(trend.high!).toBeGreaterThan(trend.percentPerWeek);
        for (const { low, kg, high } of trend.line) {
          expect(low).toBeLessThan(kg);
          expect(kg).toBeLessThan(high);
        }
      }),
      RUNS,
    );
  });

  it('names a weighing in the wrong unit, and gives no rate around it', () => {
    const { sentence, status } = weightTrend(every(14, [24.8, 24.6, 54.5, 24.3, 24.2]));
    expect(status).toBe('cannot tell yet');
    expect(sentence).toBe(
      'One weighing stands out and should be checked: {54.5 kg} on 2026-03-29. Until then the record cannot tell.',
    );
  });

  it('names two that no dog does, beside what they would mean', () => {
    const { sentence } = weightTrend(every(14, [24, 53]));
    expect(sentence).toMatch(/^The dog is gaining weight: .* Weighings stand out .*24 kg.*53 kg/);
  });

  it('sends a slow loss to the vet by what it comes to in half a year', () => {
    const lost = (kg: number, weeks: number) =>
      weightDrift(
        weightTrend(
          every(
            28,
            Array.from({ length: weeks / 4 + 1 }, (_, i) => 30 - (kg * 4 * i) / weeks),
          ),
        ),
      );
    expect(lost(2.4, 26)!.code).toBe('drift-vet');
    expect(lost(2.4, 104)!.code).toBe('drift-down');
    expect(lost(9, 104)!.code).toBe('drift-vet');
  });

  it('asks for a list, by name', () => {
    const none = undefined as unknown as readonly Weighing[];
    expect(() => weightTrend(none)).toThrow(/weighings must be a list/);
    expect(() => weightTrend(none)).toThrow(RangeError);
  });

  it('does not depend on the order in which weighings are given', () => {
    holds(
      fc.property(record, (weighings) => {
        fc.pre(new Set(weighings.map(({ day }) => day)).size === weighings.length);
        const rate = (list: readonly Weighing[]) => weightTrend(list).percentPerWeek;
        expect(rate([...weighings].reverse())).toEqual(rate(weighings));
      }),
      RUNS,
    );
  });

  it.each([
    ['no weighing', []],
    ['one weighing', every(7, [20])],
    ['two on one day', [...every(7, [20]), ...every(7, [20.2])]],
  ])('cannot tell yet with %s', (_, weighings) => {
    const trend = weightTrend(weighings);
    expect(trend.status).toBe('cannot tell yet');
    expect(trend.sentence).toMatch(/^There is no rate of change yet: .* two different days\.$/);
    expect(trend.figure).toBeNull();
  });

  it('is losing or gaining only with the whole interval on one side', () => {
    expect(weightTrend(every(14, [30, 29.4, 28.9, 28.2])).status).toBe('losing');
    expect(weightTrend(every(14, [28.2, 28.9, 29.4, 30])).status).toBe('gaining');
    const two = weightTrend(every(14, [30, 29.7]));
    expect(two.status).toBe('cannot tell yet');
    expect(two.sentence).toContain('within the error of the scale');
    expect(two.high).toBeGreaterThan(0);
  });

  it('is stable only when the interval lies inside half a percent a week', () => {
    expect(weightTrend(every(14, [20, 20.1, 20, 20.05, 20])).status).toBe('stable');
    expect(weightTrend(every(20, [20, 20])).status).toBe('cannot tell yet');
    expect(weightTrend(every(7, [20, 20])).status).toBe('cannot tell yet');
  });

  it('knows the step of the scale', () => {
    const width = (scaleStepKg: number) => {
      const { low, high } = weightTrend(every(14, [8, 8, 8], { scaleStepKg }));
      return high! - low!;
    };
    expect(width(0.5)).toBeGreaterThan(1.5 * width(0.05));
    expect(weighingSd({ day: START, weightKg: 8, scaleStepKg: 0.5 })).toBeGreaterThan(0.14);
  });

  it('is surer with more weighings over the same time', () => {
    const few = weightTrend(every(42, [25, 24.5]));
    const many = weightTrend(every(14, [25, 24.8, 24.7, 24.5]));
    expect(many.high! - many.low!).toBeLessThan(few.high! - few.low!);
  });
});

describe('another scale', () => {
  const half = (weights: readonly number[], method: Weighing['method']) =>
    every(14, weights).map((weighing, index) =>
      index < 2 ? weighing : { ...weighing, ...(method === undefined ? {} : { method }) },
    );

  it('is flagged and makes the rate less sure, for its offset does not average out', () => {
    const same = weightTrend(every(14, [30, 29.8, 29.6, 29.4]));
    const other = weightTrend(half([30, 29.8, 29.6, 29.4], 'other scale'));
    expect(other.flagged.map(({ why }) => why)).toEqual(
      Array(2).fill('weighed differently (other scale)'),
    );
    expect(other.high! - other.low!).toBeGreaterThan(1.5 * (same.high! - same.low!));
  });

  it('does not pass a jump between scales off as a gain', () => {
    const jump = [30, 29.7, 30.5, 30.2];
    const trusted = weightTrend(every(14, jump));
    const told = weightTrend(half(jump, 'other scale'));
    expect(trusted.percentPerWeek).toBeGreaterThan(0);
    expect(told.percentPerWeek!).toBeLessThan(trusted.percentPerWeek!);
    expect(told.low).toBeLessThan(-0.5);
  });

  it('does no harm when all weighings are on it', () => {
    const all = weightTrend(every(14, [30, 29.4, 28.9, 28.2], { method: 'other scale' }));
    const same = weightTrend(every(14, [30, 29.4, 28.9, 28.2]));
    expect(all.percentPerWeek).toBeCloseTo(same.percentPerWeek!, 6);
    expect(all.low).toBeCloseTo(same.low!, 6);
  });
});

describe('a slip of the pen', () => {
  const weights = [30, 29.8, 29.9, 35.4, 29.5, 29.4];

  it('is flagged, stays in, and the rate without it stands beside', () => {
    const trend = weightTrend(every(14, weights));
    expect(trend.flagged).toEqual([
      {
        day: addDays(START, 42),
        weightKg: 35.4,
        why: expect.stringContaining('slip'),
        outlier: true,
      },
    ]);
    expect(trend.points).toHaveLength(6);
    expect(trend.withoutOutliers!.percentPerWeek).toBeCloseTo(-0.2, 1);
    expect(trend.status).toBe('cannot tell yet');
  });

  it('of a whole digit does not count as the most exact weighing of all', () => {
    const trend = weightTrend(every(14, [30, 29.8, 2.98, 29.7, 29.5, 29.4]));
    expect(trend.flagged.map(({ weightKg }) => weightKg)).toEqual([2.98]);
    expect(trend.points[2]!.sdKg).toBeGreaterThan(0.25);
  });

  it('among three casts doubt on all three', () => {
    const trend = weightTrend(every(14, [30, 36, 29.8]));
    expect(trend.flagged).toHaveLength(3);
    expect(trend.flagged[0]!.why).toContain('do not fit one line');
  });

  it('between two shows as a change no dog makes', () => {
    const { flagged } = weightTrend(every(14, [30, 66]));
    expect(flagged.map(({ why }) => why)).toEqual(Array(2).fill(expect.stringContaining('slip')));
    expect(weightTrend(every(14, [30, 29.2])).flagged).toEqual([]);
  });
});

describe('bad weighings', () => {
  it.each([
    [{ day: START, weightKg: -2 }, /weighings\[1\].weightKg must be from 0.1 to 150 kg/],
    [{ day: '2026-02-30', weightKg: 20 }, /weighings\[1\].day must be a calendar day/],
    [{ day: START, weightKg: 20, scaleStepKg: 0 }, /scaleStepKg must be from 0.001 to 5 kg/],
    [{ day: START, weightKg: 20, method: 'guess' as never }, /method must be one of same scale/],
  ])('are refused by name: %o', (weighing, message) => {
    expect(() => weightTrend([{ day: START, weightKg: 20 }, weighing])).toThrow(message);
    expect(() => weightTrend([{ day: START, weightKg: 20 }, weighing])).toThrow(RangeError);
  });
});

describe('the day the target is met', () => {
  const losing = weightTrend(every(14, [30, 29.4, 28.8, 28.2, 27.6]));

  it('is a range around the middle', () => {
    const { earliest, mid, latest, sentence } = projectTarget(losing, 26);
    // 0.3 kg a week: 1.6 kg are 37.3 days from the last weighing.
    expect(mid).toBe(addDays(START, 56 + 38));
    expect(dayNumber(earliest!)).toBeLessThan(dayNumber(mid!));
    expect(dayNumber(latest!)).toBeGreaterThan(dayNumber(mid!));
    expect(sentence).toContain(earliest!);
    expect(sentence).toContain(latest!);
  });

  it('is where the band of the chart meets the target', () => {
    const { earliest, latest } = projectTarget(losing, 26);
    const on = (day: string) => trendOn(losing, dayNumber(day))!;
    expect(on(earliest!).low).toBeLessThanOrEqual(26);
    expect(on(addDays(earliest!, -1)).low).toBeGreaterThan(26);
    expect(on(latest!).high).toBeLessThanOrEqual(26);
    expect(on(addDays(latest!, -1)).high).toBeGreaterThan(26);
  });

  it('is open at the late end while the record cannot tell', () => {
    const unsure = projectTarget(weightTrend(every(14, [30, 29.7])), 29);
    expect(unsure.mid).not.toBeNull();
    expect(unsure.latest).toBeNull();
    expect(unsure.sentence).toContain(`from ${unsure.earliest} on`);
  });

  it('is nowhere when the weight goes the other way, or is not known', () => {
    expect(projectTarget(weightTrend(every(14, [28, 28.6, 29.2])), 26).mid).toBeNull();
    expect(projectTarget(weightTrend([]), 26)).toMatchObject({ earliest: null, latest: null });
    expect(projectTarget(losing, 40).sentence).toBe('At this trend the target is not met.');
    expect(() => projectTarget(losing, 151)).toThrow(/targetKg must be from 0.1 to 150 kg/);
  });

  it('is looked for over two years from the last weighing, and no further', () => {
    // 0.01 kg a day: 7.3 kg in 730 days.
    const slow = weightTrend(every(20, [30.2, 30, 29.8]));
    expect(projectTarget(slow, 29.8 - 7.295).mid).toBe(addDays(START, 40 + 730));
    expect(projectTarget(slow, 29.8 - 7.305).mid).toBeNull();
    expect(projectTarget(losing, losing.line.at(-1)!.kg).mid).toBe(addDays(START, 56));
  });

  it('works upwards as well', () => {
    const gaining = weightTrend(every(14, [18, 18.3, 18.6, 18.9]));
    const { earliest, mid, latest } = projectTarget(gaining, 19.5);
    expect(mid).toBe(addDays(START, 42 + 28));
    expect(earliest! < mid! && mid! < latest!).toBe(true);
  });
});

describe('drift on no plan', () => {
  it('is told once the whole interval and one percent in all are on one side', () => {
    expect(weightDrift(weightTrend(every(28, [20, 20.3, 20.5, 20.8])))?.code).toBe('drift-up');
    expect(weightDrift(weightTrend(every(28, [20, 19.8, 19.6, 19.4])))?.code).toBe('drift-down');
    expect(weightDrift(weightTrend(every(28, [20, 20.1])))).toBeNull();
    expect(weightDrift(weightTrend(every(7, [20, 21.5])))).toBeNull();
    expect(weightDrift(weightTrend([]))).toBeNull();
  });

  it('sends five percent lost without a plan to the vet', () => {
    const drift = weightDrift(weightTrend(every(28, [20, 19.5, 19, 18.5])));
    expect(drift?.code).toBe('drift-vet');
    expect(drift?.text).toContain('vet');
  });

  // 5 % over half a year (D).
  it.each([
    [4.7, 'drift-down'],
    [5.3, 'drift-vet'],
  ])('%f percent lost without a plan: %s', (percent, code) => {
    const weights = [0, 1, 2, 3].map((step) => 20 * (1 - (percent * step) / 300));
    expect(weightDrift(weightTrend(every(28, weights)))?.code).toBe(code);
  });
});
