import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseFoodEnergy, foodEnergy } from '../../../core/nutrition.ts';
import { evenly, holds } from '../../support/laws.ts';

const RUNS = { seed: 1, numRuns: 500 };
const share = evenly(0, 30);
const label = fc.record({
  proteinPct: share,
  fatPct: share,
  fibrePct: evenly(0, 15),
  moisturePct: evenly(0, 15),
  ashPct: evenly(0, 10),
});
const analysis = { proteinPct: 26, fatPct: 15, fibrePct: 3, moisturePct: 9, ashPct: 7 };

describe('energy of a food', () => {
  it('is a number above nothing by both methods, and at most that of fat', () => {
    holds(
      fc.property(label, (any) => {
        for (const kcal of Object.values(foodEnergy(any))) {
          expect(kcal).toBeGreaterThanOrEqual(0);
          expect(kcal).toBeLessThan(950);
        }
      }),
      RUNS,
    );
  });

  it('refuses shares that sum to more than 100 %, naming the sum', () => {
    const wrong = { proteinPct: 50, fatPct: 30, fibrePct: 10, moisturePct: 10, ashPct: 10 };
    expect(() => foodEnergy(wrong)).toThrow(/sum to 110 %/);
    expect(() => foodEnergy({ ...wrong, fatPct: -1 })).toThrow(/fatPct must be from 0 to 100 %/);
  });

  it('takes a label that sums to 100 % as one without any other extract', () => {
    const whole = { proteinPct: 40, fatPct: 20, fibrePct: 10, moisturePct: 20, ashPct: 10 };
    // 3.5 × 40 + 8.5 × 20.
    expect(foodEnergy(whole).atwater).toBeCloseTo(310, 9);
  });

  it('takes the declared energy, else the four steps, and refuses to guess', () => {
    expect(chooseFoodEnergy({ declaredKcalPer100g: 380 })).toMatchObject({
      method: 'declared',
      predictive: null,
      warning: null,
    });
    expect(chooseFoodEnergy({ label: analysis }).method).toBe('four steps');
    expect(() => chooseFoodEnergy({})).toThrow(/declaredKcalPer100g must be from 5 to 950/);
    const declared = (kcal: number) => () => chooseFoodEnergy({ declaredKcalPer100g: kcal });
    for (const kcal of [4.9, 951]) expect(declared(kcal)).toThrow(/must be from 5 to 950/);
    for (const kcal of [5, 950]) expect(declared(kcal)().kcalPer100g).toBe(kcal);
  });

  // Protein 26, fat 15, fibre 3, moisture 9, ash 7: 376 by the four steps, 359 by Atwater's factors.
  // A declared 341.4 is 10 % of itself below the one, 398.3 above the other.
  it.each([
    [341.3, true],
    [341.5, false],
    [398.2, false],
    [398.4, true],
  ])(
    'feeds by the %d kcal declared; told that the ways differ by over 10 %%: %s',
    (kcal, differ) => {
      const choice = chooseFoodEnergy({ declaredKcalPer100g: kcal, label: analysis });
      expect(choice.kcalPer100g).toBe(kcal);
      const all = `declared ${Math.round(kcal)} kcal, four steps 376 kcal, Atwater factors 359 kcal`;
      expect(choice.warning?.text ?? '').toEqual(differ ? expect.stringContaining(all) : '');
      expect(choice.figure.notes).toHaveLength(differ ? 1 : 0);
    },
  );

  it('tells the analysis it was worked out from, or that it was declared', () => {
    const computed = chooseFoodEnergy({ label: analysis }).figure;
    expect(
      computed.inputs.map(({ label: name, value, unit }) => `${name} ${value} ${unit}`),
    ).toEqual(['Protein 26 %', 'Fat 15 %', 'Fibre 3 %', 'Moisture 9 %', 'Ash 7 %']);
    expect(computed.formula).toContain('5.7 P');
    expect(computed.sources).toContain('fediaf2017');
    const declared = chooseFoodEnergy({ declaredKcalPer100g: 380 }).figure;
    expect(declared.inputs).toEqual([]);
    expect(declared.formula).toBe('declared on the pack');
    expect(declared.notes).toEqual([]);
  });

  it('warns where any two of the known values differ by more than 10 % of the one used', () => {
    const fibrous = { proteinPct: 20, fatPct: 10, fibrePct: 22, moisturePct: 9, ashPct: 6 };
    const { predictive, atwater } = foodEnergy(fibrous);
    expect(Math.abs(atwater / predictive - 1)).toBeGreaterThan(0.1);
    const warned = chooseFoodEnergy({ label: fibrous });
    expect(warned.warning?.params).toEqual({
      predictive: Math.round(predictive),
      atwater: Math.round(atwater),
    });
    expect(warned.figure.notes).toHaveLength(1);
  });
});
