import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import {
  balanceSd,
  energyBalance,
  energyBalanceFigure,
  estimateMaintenance,
  maintenanceEnergy,
  ownEnergyAt,
  type Intake,
  type OwnEnergyInput,
  type Weighing,
} from '../../../core/nutrition.ts';
import { holds } from '../../support/laws.ts';
import { course, START, weighed } from './asked.ts';

const RUNS = { seed: 1, numRuns: 300 };
const prior = maintenanceEnergy({ weightKg: 25 });
const intakes: readonly Intake[] = [{ fromDay: START, kcalPerDay: 900 }];

describe('the dog’s own maintenance energy', () => {
  it('is the formula while there is no record', () => {
    const records = [
      [],
      [weighed(0, 25)],
      [weighed(0, 25), weighed(0, 24.9)],
      [weighed(-30, 25), weighed(-10, 24)],
    ];
    for (const weighings of records) {
      const own = estimateMaintenance({ prior, weighings, intakes });
      expect(own).toMatchObject({ mid: prior.mid, low: prior.low, high: prior.high, doubtLeft: 1 });
      expect(own.informative).toBe(false);
      expect(own.sentence).toBe('The record does not yet tell more than the formula.');
      expect(own.recordAlone).toBeNull();
    }
    const unlogged = estimateMaintenance({ prior, weighings: course(800, 14, 5), intakes: [] });
    expect(unlogged.mid).toBe(prior.mid);
  });

  it('is barely informed by two visits two weeks apart, and says so', () => {
    const own = estimateMaintenance({ prior, weighings: course(800, 14, 2), intakes });
    expect(own.informative).toBe(false);
    expect(own.doubtLeft).toBeGreaterThan(0.5);
    expect(own.sentence).toBe('The record does not yet tell more than the formula.');
  });

  it('closes in on the truth as the record grows', () => {
    const widths = [2, 3, 5, 9, 13].map((count) => {
      const own = estimateMaintenance({ prior, weighings: course(800, 14, count), intakes });
      return own.high - own.low;
    });
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
    const long = estimateMaintenance({ prior, weighings: course(800, 14, 13), intakes });
    expect(Math.abs(long.mid - 800)).toBeLessThan(10);
    const byModel = { prior, weighings: course(800, 14, 13), intakes, modelErrorSd: 0 };
    expect(estimateMaintenance(byModel).mid).toBeCloseTo(800, -1);
    expect(long.informative).toBe(true);
    expect(long.sentence).toMatch(/needs about 2\d % less than the formula/);
  });

  it.each([
    [14, 0.13],
    [56, 0.13],
    [70, 0.095],
    [84, 0.06],
    [182, 0.06],
  ])('allows for what the model leaves out: over %i days a log-SD of %f (C)', (days, logSd) => {
    const weighings = [weighed(0, 25), weighed(days, 25)];
    const by = (changes: object) => estimateMaintenance({ prior, weighings, intakes, ...changes });
    expect(by({ modelErrorSd: logSd }).high).toBeCloseTo(by({}).high, 6);
    expect(by({ modelErrorSd: logSd - 0.01 }).high).toBeLessThan(by({}).high);
  });

  it('is shown to 10 kcal, and fed by as it is', () => {
    const own = estimateMaintenance({ prior, weighings: course(803, 14, 9), intakes });
    expect([own.figure.value, own.figure.low!, own.figure.high!].map((kcal) => kcal % 10)).toEqual([
      0, 0, 0,
    ]);
    expect(Math.abs(own.figure.value - own.mid)).toBeLessThanOrEqual(5);
    expect(own.mid % 10).not.toBe(0);
  });

  it('lies between the formula and the record alone', () => {
    const own = estimateMaintenance({ prior, weighings: course(700, 14, 2), intakes });
    expect(own.recordAlone!.mid).toBeCloseTo(700, 6);
    expect(own.mid).toBeGreaterThan(700);
    expect(own.mid).toBeLessThan(prior.mid);
  });

  it('follows an intake that changes, whatever the name of its day', () => {
    // 28 days at 900, 28 at 700: a dog that needs 800 ends where it began.
    const changing: readonly Intake[] = [
      { day: START, kcalPerDay: 900 },
      { day: addDays(START, 28), kcalPerDay: 700 },
    ];
    const weighings = [weighed(0, 25), weighed(28, 25 + 2800 / 7920), weighed(56, 25)];
    const own = estimateMaintenance({ prior, weighings, intakes: changing });
    expect(own.recordAlone!.mid).toBeCloseTo(800, 6);
  });

  it('takes runs that were done out of the need', () => {
    const runs = Array.from({ length: 28 }, (_, index) => ({
      day: addDays(START, 2 * index),
      kcal: 100,
    }));
    const weighings = course(800, 14, 5);
    const without = estimateMaintenance({ prior, weighings, intakes });
    const own = estimateMaintenance({ prior, weighings, intakes, runs });
    expect(own.recordAlone!.mid).toBeCloseTo(without.recordAlone!.mid - 50, 0);
  });

  it('counts the last half-year only', () => {
    const old = course(1200, 14, 14);
    const recent = course(800, 14, 14).map((weighing) => ({
      ...weighing,
      day: addDays(weighing.day, 400),
    }));
    const both = estimateMaintenance({ prior, weighings: [...old, ...recent], intakes });
    const alone = estimateMaintenance({ prior, weighings: recent, intakes });
    expect(both.mid).toBeCloseTo(alone.mid, 2);
    expect(both.weighings).toBe(14);
  });

  it('flags a slip and grows less sure by it, without dropping it', () => {
    const good = course(800, 14, 8);
    const slipped = good.map((weighing, index) =>
      index === 3 ? { ...weighing, weightKg: 52.4 } : weighing,
    );
    const own = estimateMaintenance({ prior, weighings: slipped, intakes });
    const clean = estimateMaintenance({ prior, weighings: good, intakes });
    expect(own.flagged.map(({ weightKg }) => weightKg)).toEqual([52.4]);
    expect(own.weighings).toBe(8);
    expect(own.high - own.low).toBeGreaterThan(3 * (clean.high - clean.low));
  });

  it('is always an ordered range above nothing, whatever the record', () => {
    const record = fc.array(
      fc.record({
        day: fc.integer({ min: 0, max: 400 }).map((days) => addDays(START, days)),
        weightKg: fc.integer({ min: 1, max: 1500 }).map((tenths) => tenths / 10),
        method: fc.constantFrom('same scale', 'other scale', 'wet coat'),
      }) as fc.Arbitrary<Weighing>,
      { maxLength: 10 },
    );
    const logged = fc.array(
      fc.record({
        fromDay: fc.integer({ min: 0, max: 400 }).map((days) => addDays(START, days)),
        kcalPerDay: fc.integer({ min: 0, max: 5000 }),
      }),
      { maxLength: 5 },
    );
    holds(
      fc.property(record, logged, (weighings, eaten) => {
        const own = estimateMaintenance({ prior, weighings, intakes: eaten });
        expect(own.low).toBeGreaterThan(0);
        expect(own.low).toBeLessThan(own.mid);
        expect(own.mid).toBeLessThan(own.high);
        expect(Number.isFinite(own.high)).toBe(true);
      }),
      RUNS,
    );
  });

  it('carries to another weight by metabolic size, and a bare formula not at all', () => {
    const own = estimateMaintenance({ prior, weighings: course(800, 14, 9), intakes });
    const lighter = ownEnergyAt(own, own.atWeightKg! / 16 ** (1 / 3));
    expect(lighter.mid).toBeCloseTo(own.mid / 2, 6);
    for (const end of ['low', 'high'] as const) expect(lighter[end]).toBeCloseTo(own[end] / 2, 6);
    expect(() => ownEnergyAt(own, 0)).toThrow(/weightKg must be from 0.1 to 150 kg/);
    const bare = estimateMaintenance({ prior, weighings: [], intakes });
    expect(ownEnergyAt(bare, 10).mid).toBe(prior.mid);
  });

  it('counts a first weighing up to three days before the food log', () => {
    const late = (days: number) =>
      estimateMaintenance({
        prior,
        weighings: course(1012, 14, 5),
        intakes: [{ fromDay: addDays(START, days), kcalPerDay: 900 }],
      });
    expect(late(3)).toMatchObject({ weighings: 5, spanDays: 56 });
    expect(late(3).mid).toBeCloseTo(late(0).mid, 6);
    expect(late(4)).toMatchObject({ weighings: 4, spanDays: 42 });
  });

  it('asks for the food log where the dog would lie outside the formula’s range', () => {
    const need = (kcal: number) =>
      estimateMaintenance({ prior, weighings: course(kcal, 7, 9), intakes });
    expect(need(450).sentence).toMatch(/% less than the formula\. .*check the food log/);
    expect(need(2200).sentence).toMatch(/% more than the formula\. .*check the food log/);
    expect(need(900).sentence).not.toContain('food log');
  });

  it.each([
    ['prior', { weighings: [], intakes }],
    ['prior', { prior: null, weighings: [], intakes }],
    ['weighings', { prior, intakes }],
    ['intakes', { prior, weighings: [] }],
  ])('asks for %s, by name', (name, input) => {
    const ask = () => estimateMaintenance(input as unknown as OwnEnergyInput);
    expect(ask).toThrow(new RegExp(`^${name} must be`));
    expect(ask).toThrow(RangeError);
  });

  it('refuses a prior out of order and intakes out of range, by name', () => {
    const ask = (changes: object) => () =>
      estimateMaintenance({ prior, weighings: [], intakes, ...changes });
    expect(ask({ prior: { mid: 900, low: 950, high: 1200 } })).toThrow(/prior.low/);
    expect(ask({ prior: { mid: 900, low: 700, high: 900 } })).toThrow(/prior.high .*kcal\/day/);
    expect(ask({ intakes: [{ fromDay: START, kcalPerDay: -1 }] })).toThrow(
      /intakes\[0\].kcalPerDay must be from 0 to 20000 kcal\/day/,
    );
    expect(ask({ intakes: [{ fromDay: 'soon', kcalPerDay: 900 }] })).toThrow(
      /intakes\[0\].fromDay/,
    );
    expect(ask({ runs: [{ day: START, kcal: Number.NaN }] })).toThrow(/runs\[0\].kcal/);
  });
});

describe('the bare energy balance', () => {
  it('is what was eaten while the weight stands', () => {
    expect(energyBalance({ intakeKcalPerDay: 900, changeKg: 0, days: 10 })).toBe(900);
  });

  it('explains itself', () => {
    const input = { intakeKcalPerDay: 900, changeKg: -0.2, days: 14, weightKg: 25 };
    expect(energyBalanceFigure(input)).toMatchObject({ unit: 'kcal/day', mark: 'C' });
  });

  it('refuses bad input, naming it', () => {
    expect(() => energyBalance({ intakeKcalPerDay: 900, changeKg: 0, days: 0 })).toThrow(
      /days must/,
    );
    expect(() => balanceSd({ weighingSdKg: -1, days: 14 })).toThrow(/weighingSdKg .* kg/);
  });
});
