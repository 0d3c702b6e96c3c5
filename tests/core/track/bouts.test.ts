import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gaitsOf } from '../../../core/track/bouts.ts';
import { evenly, holds } from '../../support/laws.ts';

const ENDS = { slowestRunMps: 1.7, fastestWalkMps: 2.3 };
const times = (count: number, speed: number) => Array.from({ length: count }, () => speed);
const told = (speeds: readonly number[], ends = ENDS) =>
  gaitsOf(speeds, ends)
    .runs.map((run) => (run ? 'r' : 'w'))
    .join('');

describe('the speed that parts run from walk', () => {
  it('is the middle between the mean walk and the mean run', () => {
    expect(gaitsOf([...times(90, 1.4), ...times(30, 2.8)], ENDS).splitMps).toBeCloseTo(2.1, 9);
    // Standing still is neither: walks of 1.2 and 1.6 and runs of 2.6 part at (1.4 + 2.6) / 2.
    const mixed = [...times(50, 0.2), ...times(20, 1.2), ...times(20, 1.6), ...times(30, 2.6)];
    expect(gaitsOf(mixed, ENDS).splitMps).toBeCloseTo(2, 9);
  });

  it('is kept between its ends, and halfway where all go at one speed', () => {
    expect(gaitsOf([...times(60, 1), ...times(60, 1.9)], ENDS).splitMps).toBe(1.7);
    expect(gaitsOf([...times(60, 2.1), ...times(60, 3.5)], ENDS).splitMps).toBe(2.3);
    expect(gaitsOf(times(60, 1.4), ENDS).splitMps).toBeCloseTo(2, 9);
    expect(gaitsOf([], ENDS)).toEqual({ runs: [], splitMps: 2 });
  });

  it('parts three speeds where the groups are furthest apart', () => {
    // Of 1.0, 1.9 and 2.2: 40 × 80 × 1.05² = 3528 beside 80 × 40 × 0.75² = 1800.
    const three = [...times(40, 1), ...times(40, 1.9), ...times(40, 2.2)];
    expect(gaitsOf(three, { slowestRunMps: 1.5, fastestWalkMps: 2.3 }).splitMps).toBeCloseTo(
      1.525,
      9,
    );
    // Of 1.0, 1.3 and 2.2: 80 × 40 × 1.05² beside 40 × 80 × 0.75².
    const other = [...times(40, 1), ...times(40, 1.3), ...times(40, 2.2)];
    expect(gaitsOf(other, { slowestRunMps: 1.1, fastestWalkMps: 2.3 }).splitMps).toBeCloseTo(
      1.675,
      9,
    );
  });
});

describe('run and walk, second by second', () => {
  it('change after about eight seconds of the other gait, wherever they stand', () => {
    const walkRunWalk = (seconds: number) =>
      told([...times(60, 1.4), ...times(seconds, 2.6), ...times(60, 1.4)]);
    expect(walkRunWalk(15)).toBe('w'.repeat(135));
    expect(walkRunWalk(17)).toBe(`${'w'.repeat(60)}${'r'.repeat(17)}${'w'.repeat(60)}`);
    expect(told([...times(7, 2.6), ...times(60, 1.4)])).toBe('w'.repeat(67));
    expect(told([...times(9, 2.6), ...times(60, 1.4)])).toBe(`${'r'.repeat(9)}${'w'.repeat(60)}`);
    expect(told([...times(60, 2.6), ...times(9, 1.4)])).toBe(`${'r'.repeat(60)}${'w'.repeat(9)}`);
  });

  it('are not turned by a spike of the receiver', () => {
    const spiked = [...times(60, 1.4), 40, 40, 40, ...times(60, 1.4)];
    expect(told(spiked)).toBe('w'.repeat(123));
    const stopped = [...times(60, 2.6), 0, 0, 0, ...times(60, 2.6), ...times(60, 1.4)];
    expect(told(stopped)).toBe(`${'r'.repeat(123)}${'w'.repeat(60)}`);
  });

  // The cost of a telling: what each second lies on the wrong side of the split, a metre a second at
  // most, and for each change eight times the mean distance from the split.
  it('fit better than any other telling with up to three changes', () => {
    const speeds = fc
      .array(fc.tuple(fc.integer({ min: 1, max: 16 }), evenly(0, 4)), {
        minLength: 2,
        maxLength: 6,
      })
      .map((blocks) => blocks.flatMap(([seconds, speed]) => times(seconds, speed)));
    holds(
      fc.property(speeds, (of) => {
        const { runs, splitMps } = gaitsOf(of, ENDS);
        const off = of.map((speed) => Math.max(-1, Math.min(1, speed - splitMps)));
        const change = (8 * off.reduce((sum, one) => sum + Math.abs(one), 0)) / off.length;
        const cost = (telling: readonly boolean[]) =>
          telling.reduce(
            (sum, run, at) =>
              sum +
              Math.max(0, run ? -off[at]! : off[at]!) +
              (at > 0 && run !== telling[at - 1] ? change : 0),
            0,
          );
        const found = cost(runs);
        const n = of.length;
        for (const first of [true, false]) {
          for (let a = 0; a <= n; a += 1) {
            for (let b = a; b <= n; b += 2) {
              const c = Math.min(n, b + 9);
              const other = of.map((_, at) => (at < a || (at >= b && at < c) ? first : !first));
              expect(found).toBeLessThanOrEqual(cost(other) + 1e-9);
            }
          }
        }
      }),
      { seed: 1, numRuns: 60 },
    );
  });
});
