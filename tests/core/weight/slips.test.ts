import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slipAt, type Weighing } from '../../../core/index.ts';
import { addDays } from '../../../core/day.ts';
import { holds } from '../../support/laws.ts';

const START = '2026-01-05';
const weekly = (kg: readonly number[]): Weighing[] =>
  kg.map((weightKg, week) => ({ day: addDays(START, 7 * week), weightKg }));
const slipsOf = (weighings: readonly Weighing[]) =>
  weighings.flatMap((_, index) => (slipAt(weighings, index) === null ? [] : [index]));

describe('a weighing that may be a slip', () => {
  it('is one with its digits turned round, its point moved, or its unit mistaken', () => {
    const steady = [24.2, 24.1, 24.1, 24, 23.9, 23.8, 23.8];
    for (const slip of [42.1, 2.41, 241 / 2, 24.1 / 0.45359237]) {
      expect(slipsOf(weekly(steady.with(3, slip)))).toEqual([3]);
    }
    expect(slipsOf(weekly(steady))).toEqual([]);
  });

  it('is told by the weighings near it: a puppy that grows in a year makes none', () => {
    // Grows fast, then slowly, as puppies do; 30 kg in the end (invented).
    const growing = Array.from({ length: 52 }, (_, week) => 30 * (1 - Math.exp(-(week + 8) / 15)));
    expect(slipsOf(weekly(growing))).toEqual([]);
    expect(slipsOf(weekly(growing.with(30, 9)))).toEqual([30]);
  });

  it('of two, far apart within days, is either', () => {
    expect(slipsOf(weekly([30, 66]))).toEqual([0, 1]);
    expect(slipsOf(weekly([30, 29.2]))).toEqual([]);
    expect(slipsOf(weekly([30]))).toEqual([]);
  });

  it('is found in a long record wherever it stands', () => {
    holds(
      fc.property(fc.integer({ min: 0, max: 39 }), fc.constantFrom(0.1, 2, 10), (at, factor) => {
        const kg = Array.from({ length: 40 }, (_, week) => 12 - week * 0.01);
        const slips = slipsOf(weekly(kg.with(at, kg[at]! * factor)));
        expect(slips).toEqual([at]);
      }),
      { seed: 1 },
    );
  });
});
