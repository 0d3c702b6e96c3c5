import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { maintenanceEnergy } from '../../../core/nutrition.ts';
import { holds } from '../../support/laws.ts';
import { ask, codes, falling } from './asked.ts';

describe('a growing dog', () => {
  // NRC 2006 growth equation (S): 9 kg of an expected 30 kg need 1,449 kcal a day.
  const puppy = {
    goal: 'hold',
    growing: true,
    weightKg: 9,
    adultWeightKg: 30,
    targetWeightKg: 9,
    initialWeightKg: 9,
    bcs: 5,
    maintenance: undefined,
  } as const;

  const kcal = fc.integer({ min: 340, max: 4000 });
  const growth = maintenanceEnergy({ weightKg: 9, lifeStage: 'puppy', adultWeightKg: 30 });

  it.each(['hold', 'gain'] as const)('starts at the energy of growth: %s', (goal) => {
    const proposal = ask({ ...puppy, goal, onPlan: false, currentKcal: 0 });
    expect(proposal).toMatchObject({ verdict: 'start', kcalPerDay: expect.closeTo(1449, 0) });
    expect(codes(proposal.reasons)).toEqual(['growth-food']);
    expect(proposal.warnings).toEqual([]);
  });

  it.each(['hold', 'gain'] as const)('is never fed less because it grows: %s', (goal) => {
    const trend = falling(-3, 6, 8);
    const proposal = ask({ ...puppy, goal, trend, currentKcal: 1400 });
    expect(proposal).toMatchObject({ verdict: 'keep', kcalPerDay: 1400 });
  });

  it('goes a tenth at a time towards the energy of growth from a ration outside its range', () => {
    const proposal = ask({ ...puppy, currentKcal: 500 });
    expect(proposal).toMatchObject({ verdict: 'change', kcalPerDay: expect.closeTo(550, 6) });
    // A heavy dog gets more no faster.
    expect(ask({ ...puppy, bcs: 7, currentKcal: 500 }).kcalPerDay).toBeCloseTo(550, 6);
    expect(ask({ ...puppy, bcs: 3, currentKcal: 500 }).kcalPerDay).toBeCloseTo(1449, 0);
  });

  it('has its range with the running on top', () => {
    const at = (currentKcal: number) =>
      ask({ ...puppy, currentKcal, runningKcalPerDay: 100 }).kcalPerDay;
    expect(at(growth.low + 50)).toBeCloseTo(1.1 * (growth.low + 50), 6);
    expect(at(growth.low + 150)).toBe(growth.low + 150);
    expect(at(growth.high + 50)).toBe(growth.high + 50);
    expect(at(growth.high + 150)).toBeCloseTo(0.9 * (growth.high + 150), 6);
  });

  it('goes in ideal condition by a tenth from above the range, and at once when heavy', () => {
    expect(ask({ ...puppy, bcs: 5, currentKcal: 3000 }).kcalPerDay).toBeCloseTo(2700, 6);
    expect(ask({ ...puppy, bcs: 6, currentKcal: 3000 }).kcalPerDay).toBeCloseTo(growth.mid, 6);
    expect(ask({ ...puppy, bcs: 3, currentKcal: 3000 }).kcalPerDay).toBe(3000);
  });

  it('keeps more when thin, and less when heavy', () => {
    expect(ask({ ...puppy, bcs: 3, currentKcal: 1200 }).kcalPerDay).toBeCloseTo(growth.mid, 6);
    expect(ask({ ...puppy, bcs: 5, currentKcal: 1700 }).kcalPerDay).toBe(1700);
    expect(ask({ ...puppy, bcs: 5, currentKcal: 1200 }).kcalPerDay).toBe(1200);
    expect(ask({ ...puppy, bcs: 3, currentKcal: 1700 }).kcalPerDay).toBe(1700);
    expect(ask({ ...puppy, bcs: 7, currentKcal: 1200 }).kcalPerDay).toBe(1200);
    expect(ask({ ...puppy, bcs: 7, currentKcal: 1700 }).kcalPerDay).toBeCloseTo(1449, 0);
  });

  it('takes a growth estimate in place of the adult weight', () => {
    const { adultWeightKg: _, ...rest } = puppy;
    const maintenance = maintenanceEnergy({ weightKg: 9, lifeStage: 'puppy', adultWeightKg: 30 });
    const proposal = ask({ ...rest, maintenance, onPlan: false, currentKcal: 0 });
    expect(proposal.kcalPerDay).toBeCloseTo(1449, 0);
  });

  it('gets no less than it eats while it is thin, nor less than growth asks, with running on top', () => {
    holds(
      fc.property(kcal, fc.integer({ min: 0, max: 200 }), (currentKcal, runningKcalPerDay) => {
        const { kcalPerDay } = ask({ ...puppy, bcs: 3, currentKcal, runningKcalPerDay });
        expect(kcalPerDay).toBeGreaterThanOrEqual(currentKcal);
        expect(kcalPerDay).toBeGreaterThanOrEqual((growth.mid + runningKcalPerDay) * 0.95);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it('keeps in ideal condition what lies in the range, and moves by a tenth at most from outside', () => {
    holds(
      fc.property(kcal, fc.constantFrom(4, 5), (currentKcal, bcs) => {
        const { kcalPerDay, verdict } = ask({ ...puppy, bcs, currentKcal });
        const change = kcalPerDay! / currentKcal - 1;
        expect(Math.abs(change)).toBeLessThanOrEqual(0.1 + 1e-9);
        expect(verdict).toBe(change === 0 ? 'keep' : 'change');
        if (currentKcal >= growth.low && currentKcal <= growth.high) expect(change).toBe(0);
        else expect(Math.sign(change)).toBe(currentKcal < growth.low ? 1 : -1);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it('is fed by growth alone where it was not scored, and kept within 5 % of it (D)', () => {
    const { bcs: _, ...unscored } = puppy;
    const at = (share: number) =>
      ask({ ...unscored, currentKcal: growth.mid * share, ...{ bcs: undefined } });
    expect(at(0.96)).toMatchObject({ verdict: 'keep', kcalPerDay: growth.mid * 0.96 });
    expect(at(1.04)).toMatchObject({ verdict: 'keep', kcalPerDay: growth.mid * 1.04 });
    expect(at(0.94).kcalPerDay).toBeCloseTo(growth.mid, 9);
    expect(at(2).kcalPerDay).toBeCloseTo(growth.mid, 9);
    const first = { ...unscored, bcs: undefined, onPlan: false };
    expect(ask({ ...first, currentKcal: growth.mid * 0.96 })).toMatchObject({
      verdict: 'start',
      kcalPerDay: growth.mid,
    });
  });

  it('tells the running, and is weighed each week (D)', () => {
    const proposal = ask({ ...puppy, currentKcal: 1400, runningKcalPerDay: 40 });
    expect(codes(proposal.reasons)).toEqual(['growth-food', 'running-food']);
    expect(proposal.nextWeighInDay).toBe('2026-06-08');
  });

  it('says where its ration comes from: kept as it is, or the energy of growth', () => {
    const formula = (changes: object) => ask({ ...puppy, ...changes }).figure!.formula;
    expect(formula({ currentKcal: 1400 })).toContain('present ration');
    expect(formula({ currentKcal: 1400, bcs: 7 })).toContain('present ration');
    expect(formula({ currentKcal: 1500, bcs: 7 })).toBe(growth.figure.formula);
    expect(formula({ currentKcal: 300 })).toBe(growth.figure.formula);
  });
});
