import { describe, expect, it } from 'vitest';
import { BODY_CONDITION, fatPercent, idealWeight, MUSCLE_CONDITION } from '../../core/nutrition.ts';

// Marks: S read in the source, M from memory, C our arithmetic from a stated formula.

describe('target weight against the published percentages', () => {
  // 10 % per point over ideal: AAHA toolkit (S). 10–15 % per point: Vet Times, 3 Nov 2015 (S).
  // Constant lean mass, 5 points of fat per score point: Clinician's Brief 2010 (S), arithmetic (C).
  it('40 kg at score 8: 30.77 kg (27.59 to 32.5) (C)', () => {
    const ideal = idealWeight({ weightKg: 40, bcs: 8 });
    expect(ideal.mid).toBeCloseTo(30.77, 2);
    expect(ideal.low).toBeCloseTo(27.59, 2);
    expect(ideal.high).toBeCloseTo(32.5, 9);
  });

  // FEDIAF 2021 (S): scores 6, 7 and 9 are 10, 20 and 40 % over the ideal weight.
  it.each([
    [6, 11],
    [7, 12],
    [9, 14],
  ] as const)('score %i: %i kg is 10 kg and its share over (S)', (bcs, weightKg) => {
    expect(idealWeight({ weightKg, bcs }).mid).toBeCloseTo(10, 9);
  });

  // Clinician's Brief 2010 (S): 20 % body fat at ideal, 5 percentage points per score point.
  it('body fat 20 % at score 5, 40 % at score 9 (S)', () => {
    expect(fatPercent(5)).toBe(20);
    expect(fatPercent(9)).toBe(40);
  });

  // About 10 % under per point below 5 (M).
  it('18 kg at score 3 is one point under 4: 20 kg, at score 2 two: 22.5 kg (M)', () => {
    const ideal = idealWeight({ weightKg: 18, bcs: 3 });
    expect(ideal.mid).toBeCloseTo(20, 9);
    expect(idealWeight({ weightKg: 18, bcs: 2 }).mid).toBeCloseTo(22.5, 9);
    expect(ideal.figure.mark).toBe('M');
  });

  // From 5 % a point, and up to 10 % a point counted from score 5 (D).
  it.each([
    [3, 18.95, 22.5],
    [2, 20, 25.71],
    [1, 21.18, 30],
  ])('18 kg at score %i: %f to %f kg (D)', (bcs, low, high) => {
    const ideal = idealWeight({ weightKg: 18, bcs });
    expect(ideal.low).toBeCloseTo(low, 2);
    expect(ideal.high).toBeCloseTo(high, 2);
  });

  // Laflamme 1997 and the WSAVA charts (S): nine scores, 4–5 ideal; four grades of muscle.
  it('has nine scores with 4 and 5 ideal, and four grades of muscle (S)', () => {
    expect(BODY_CONDITION.map(({ score }) => score)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    const ideal = BODY_CONDITION.filter(({ name }) => /ideal/i.test(name));
    expect(ideal.map(({ score }) => score)).toEqual([4, 5]);
    expect(MUSCLE_CONDITION).toHaveLength(4);
  });

  // Greyhounds at 5/9 measured 7.2 % body fat (S).
  it('says that the score tells less about sighthounds (S)', () => {
    const { figure } = idealWeight({ weightKg: 30, bcs: 6, sighthound: true });
    expect(figure.notes.join(' ')).toContain('7.2 %');
    expect(figure.sources).toContain('greyhoundFat');
  });
});
