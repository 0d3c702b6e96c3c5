import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fatPercent, idealWeight } from '../../../core/nutrition.ts';
import { holds } from '../../support/laws.ts';

const weight = fc.integer({ min: 1, max: 1500 }).map((tenths) => tenths / 10);
const score = fc.integer({ min: 1, max: 9 });
const RUNS = { seed: 1, numRuns: 500 };

describe('weight in ideal condition', () => {
  it('is an ordered range that rises with weight', () => {
    holds(
      fc.property(weight, weight, score, (a, b, bcs) => {
        fc.pre(a < b);
        const light = idealWeight({ weightKg: a, bcs });
        expect(light.low).toBeGreaterThan(0);
        expect(light.low).toBeLessThanOrEqual(light.mid);
        expect(light.mid).toBeLessThanOrEqual(light.high);
        expect(light.mid).toBeLessThan(idealWeight({ weightKg: b, bcs }).mid);
      }),
      RUNS,
    );
  });

  it('falls as the score rises', () => {
    const mids = [1, 2, 3, 4, 5, 6, 7, 8, 9].map((bcs) => idealWeight({ weightKg: 20, bcs }).mid);
    for (let index = 1; index < mids.length; index += 1) {
      expect(mids[index]).toBeLessThanOrEqual(mids[index - 1]!);
    }
  });

  it('leaves a dog at 4 or 5 where it is, with room for one point at 4', () => {
    expect(idealWeight({ weightKg: 20, bcs: 5 })).toMatchObject({ mid: 20, low: 20, high: 20 });
    const lean = idealWeight({ weightKg: 20, bcs: 4 });
    expect(lean).toMatchObject({ mid: 20, low: 20 });
    expect(lean.high).toBeCloseTo(20 / 0.9, 9);
  });

  it('sends scores 1 and 2 to the vet, and no others', () => {
    const referred = [1, 2, 3, 4, 5, 6, 7, 8, 9].filter(
      (bcs) => idealWeight({ weightKg: 20, bcs }).referral !== null,
    );
    expect(referred).toEqual([1, 2]);
  });

  it('says that the high end of a heavy dog is from memory', () => {
    expect(idealWeight({ weightKg: 40, bcs: 8 }).figure.notes.join(' ')).toMatch(
      /high end .* from memory/,
    );
  });

  it('mentions sighthounds only for sighthounds', () => {
    const notes = (sighthound: boolean) =>
      idealWeight({ weightKg: 30, bcs: 7, sighthound }).figure.notes.join(' ');
    expect(notes(true)).toContain('Sighthounds');
    expect(notes(false)).not.toContain('Sighthounds');
  });

  it.each([
    [3, 'kg / (1 − 0.10 × points under 4)', ['ownDecision'], /percentage is published for thin/],
    [
      4,
      'the present weight (body condition 4–5 of 9 is ideal)',
      ['laflamme1997', 'wsavaNutrition'],
      /^$/,
    ],
    [
      5,
      'the present weight (body condition 4–5 of 9 is ideal)',
      ['laflamme1997', 'wsavaNutrition'],
      /^$/,
    ],
    [6, 'kg / (1 + 0.10 × points over 5)', ['aahaWeight'], /not a point/],
  ])('tells at score %i how it was found, and from what', (bcs, formula, sources, notes) => {
    const { figure } = idealWeight({ weightKg: 20, bcs });
    expect(figure.formula).toBe(formula);
    expect(figure.sources).toEqual(expect.arrayContaining(sources));
    expect(figure.notes.join(' ')).toMatch(notes);
    expect(figure.inputs.map(({ value, unit }) => `${value} ${unit}`)).toEqual([
      '20 kg',
      `${bcs} of 9`,
    ]);
  });

  it('refuses a weight out of range', () => {
    expect(() => idealWeight({ weightKg: 151, bcs: 5 })).toThrow(
      /weightKg must be from 0.1 to 150/,
    );
  });

  it('has no less than no fat at low scores', () => {
    expect(fatPercent(1)).toBe(0);
  });

  it.each([0, 10, 5.5, Number.NaN])('refuses score %d', (bcs) => {
    expect(() => idealWeight({ weightKg: 20, bcs })).toThrow(/bcs must be .*from 1 to 9/);
  });
});
