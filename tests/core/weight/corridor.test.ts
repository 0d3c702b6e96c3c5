import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import { lossCorridor, weeksToTarget, weightTrend } from '../../../core/nutrition.ts';
import { weightDrift } from '../../../core/weight/drift.ts';
import { offCorridor } from '../../../core/weight/offCorridor.ts';
import { weighingSd } from '../../../core/weight/weighing.ts';
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

describe('a weighing against the corridor', () => {
  const corridor = lossCorridor({ startDay: START, initialKg: 30, targetKg: 27 });
  const scale = { method: 'same scale', scaleStepKg: 0.1 } as const;
  const off = (days: number, weightKg: number) =>
    offCorridor(corridor, { ...scale, day: addDays(START, days), weightKg })?.code ?? null;
  // One side of 90 % of a normal distribution: 1.645 errors of that weighing (D).
  const margin = (weightKg: number) => 1.645 * weighingSd({ ...scale, day: START, weightKg });

  it('counts from an error outside the straight line between two weeks', () => {
    holds(
      fc.property(fc.integer({ min: 1, max: 140 }), (days) => {
        // 0.5 and 2 % of 30 kg a week, down to the target of 27 kg (Hand 2010; S).
        const high = Math.max(27, 30 - (0.15 * days) / 7);
        // The fastest reaches the target after five weeks.
        const low = Math.max(27, 30 - (0.6 * days) / 7);
        expect(off(days, high + margin(high) + 0.03)).toBe('above-corridor');
        expect(off(days, high + margin(high) - 0.03)).toBeNull();
        expect(off(days, low - margin(low) - 0.03)).toBe('below-corridor');
        expect(off(days, low - margin(low) + 0.03)).toBeNull();
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it('holds the target once the slowest loss has come to it', () => {
    for (const days of [141, 400]) {
      expect(off(days, 27 + margin(27) + 0.03)).toBe('above-corridor');
      expect(off(days, 27)).toBeNull();
      expect(off(days, 27 - margin(27) - 0.03)).toBe('below-corridor');
    }
  });

  it('says nothing up to the first day, without a corridor, or without a weighing', () => {
    expect(off(0, 40)).toBeNull();
    expect(off(-3, 40)).toBeNull();
    expect(off(1, 40)).toBe('above-corridor');
    expect(offCorridor(corridor, null)).toBeNull();
    expect(offCorridor([], { ...scale, day: START, weightKg: 40 })).toBeNull();
  });
});

describe('a drift', () => {
  const weighed = (days: number, ...weights: readonly number[]) =>
    weightTrend(weights.map((weightKg, i) => ({ day: addDays(START, days * i), weightKg })));

  it('is told of a record of over 14 days alone (German 2011; S)', () => {
    const rising = [20, 20.6, 21.2, 21.8, 22.4, 23, 23.6, 24.2];
    expect(weightDrift(weighed(2, ...rising))).toBeNull();
    expect(weightDrift(weighed(3, ...rising))?.code).toBe('drift-up');
  });

  it('is told from 1 % in all on, with its size and its days', () => {
    const line = (percent: number) =>
      weightDrift(
        weighed(2, ...Array.from({ length: 121 }, (_, i) => 20 * (1 + (percent * i) / 12000))),
      );
    expect(line(0.95)).toBeNull();
    expect(line(1.08)).toMatchObject({ code: 'drift-up', params: { percent: 1.1, days: 240 } });
    expect(line(-1.08)).toMatchObject({ code: 'drift-down', params: { percent: -1.1 } });
    expect(line(0)).toBeNull();
  });

  it('of a year goes to the vet by what it comes to in half of it, and no gain does', () => {
    const year = (percent: number) =>
      weightDrift(
        weighed(28, ...Array.from({ length: 14 }, (_, i) => 20 * (1 + (percent * i) / 1300))),
      )!.code;
    // 182 of 364 days: half of it.
    expect(year(-9.5)).toBe('drift-down');
    expect(year(-10.5)).toBe('drift-vet');
    expect(year(12)).toBe('drift-up');
  });
});
