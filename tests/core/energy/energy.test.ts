import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ACTIVITY_LEVELS,
  growthEnergy,
  growthEnergyBySteps,
  growthEstimate,
  growthMultiple,
  maintenanceEnergy,
  NEUTER_STATUSES,
  publishedReferences,
  restingEnergy,
  restingEnergyFigure,
  SPREAD_90,
  type MaintenanceInput,
} from '../../../core/nutrition.ts';
import { product, toldBy } from '../../support/captions.ts';
import { evenly, holds } from '../../support/laws.ts';

const weight = fc.integer({ min: 1, max: 1500 }).map((tenths) => tenths / 10);
const RUNS = { seed: 1, numRuns: 500 };
const adult = fc.record({
  lifeStage: fc.constantFrom('adult' as const, 'senior' as const),
  neuter: fc.constantFrom(...NEUTER_STATUSES),
  activity: fc.constantFrom(...ACTIVITY_LEVELS),
  afterWeightLoss: fc.boolean(),
});

describe('resting energy', () => {
  it('rises with weight', () => {
    holds(
      fc.property(weight, weight, (a, b) => {
        fc.pre(a < b);
        expect(restingEnergy(a)).toBeLessThan(restingEnergy(b));
      }),
      RUNS,
    );
  });

  it.each([Number.NaN, -1, 0, 151, Infinity])(
    'refuses %d kg, naming unit and range',
    (weightKg) => {
      expect(() => restingEnergy(weightKg)).toThrow(/weightKg must be from 0.1 to 150 kg/);
      expect(() => restingEnergy(weightKg)).toThrow(RangeError);
    },
  );

  it('explains itself', () => {
    expect(restingEnergyFigure(20)).toMatchObject({
      unit: 'kcal/day',
      sources: ['hand2010', 'kleiber1961', 'nrc2006'],
      inputs: [{ label: 'Body weight', value: 20, unit: 'kg' }],
      notes: [expect.stringMatching(/resting dog .* maintenance energy/)],
    });
  });
});

describe('maintenance energy', () => {
  it('rises with weight and keeps its range around the middle', () => {
    holds(
      fc.property(weight, weight, adult, (a, b, dog) => {
        fc.pre(a < b);
        const [light, heavy] = [a, b].map((weightKg) => maintenanceEnergy({ ...dog, weightKg }));
        for (const end of ['low', 'mid', 'high'] as const) {
          expect(light![end]).toBeLessThan(heavy![end]);
        }
        expect(light!.low).toBeGreaterThan(0);
        expect(light!.low).toBeLessThan(light!.mid);
        expect(light!.mid).toBeLessThan(light!.high);
        expect(light!.figure.value).toBe(light!.mid);
      }),
      RUNS,
    );
  });

  it('rises with activity', () => {
    const mids = ACTIVITY_LEVELS.map(
      (activity) => maintenanceEnergy({ weightKg: 20, activity }).mid,
    );
    expect(mids).toEqual([...mids].sort((a, b) => a - b));
    expect(new Set(mids).size).toBe(ACTIVITY_LEVELS.length);
  });

  it('takes an adult of unknown neuter status and low activity when told the weight alone', () => {
    const told = { lifeStage: 'adult', neuter: 'unknown', activity: 'low' } as const;
    expect(maintenanceEnergy({ weightKg: 20 })).toEqual(
      maintenanceEnergy({ weightKg: 20, ...told }),
    );
  });

  it('keeps the published values beside the estimate, ranges included', () => {
    const { references } = maintenanceEnergy({ weightKg: 20, activity: 'working' });
    expect(references[0]!.label).toContain('2.0–5.0 × RER');
    for (const { kcalPerDay, low, high } of references) {
      expect(kcalPerDay).toBeGreaterThan(0);
      if (low === undefined || high === undefined) continue;
      expect(low).toBeLessThan(kcalPerDay);
      expect(high).toBeGreaterThan(kcalPerDay);
    }
  });

  it('says when a value is from memory or carried over', () => {
    const mark = (dog: object) => maintenanceEnergy({ weightKg: 20, ...dog }).figure.mark;
    expect(mark({})).toBe('S');
    expect(mark({ lifeStage: 'senior' })).toBe('M');
    expect(mark({ activity: 'working' })).toBe('M');
    expect(mark({ neuter: 'intact' })).toBe('C');
  });

  it('is no surer than its least sure part', () => {
    const of = (input: Partial<MaintenanceInput>) =>
      maintenanceEnergy({ weightKg: 20, ...input }).figure;
    expect(of({})).toMatchObject({ evidence: 'A', mark: 'S' });
    for (const activity of ['moderate', 'high', 'working'] as const) {
      expect(of({ activity })).toMatchObject({ evidence: 'C', mark: 'M' });
      expect(of({ activity }).sources).toContain('fediaf2017Activity');
    }
    expect(of({ neuter: 'intact' })).toMatchObject({ evidence: 'C', mark: 'C' });
    const senior = of({ lifeStage: 'senior' });
    expect(senior).toMatchObject({ evidence: 'C', mark: 'M' });
    expect(senior.sources).toContain('hand2010Senior');
    expect(senior.sources).not.toContain('fediaf2017Activity');
  });

  it('is what its formula says, worked out', () => {
    holds(
      fc.property(weight, adult, (weightKg, dog) => {
        const { mid, figure } = maintenanceEnergy({ ...dog, weightKg });
        expect(product(figure.formula, weightKg) / mid).toBeCloseTo(1, 12);
      }),
      RUNS,
    );
  });

  // Multiples of RER for intact adults 1.8, neutered 1.6, seniors 1.4.
  it('gives a senior an eighth less, an intact dog an eighth more', () => {
    const of = (dog: Partial<MaintenanceInput>) => maintenanceEnergy({ weightKg: 16, ...dog }).mid;
    expect(of({})).toBeCloseTo(95 * 8, 9);
    expect(of({ lifeStage: 'senior' })).toBeCloseTo(95 * 7, 9);
    expect(of({ neuter: 'intact' })).toBeCloseTo(95 * 9, 9);
  });

  it('sets beside it what the captions say', () => {
    for (const kg of [3, 20, 60]) {
      const of = { kg, rer: 70 * kg ** 0.75 };
      const puppy = { weightKg: kg, lifeStage: 'puppy', adultWeightKg: 70 } as const;
      const multiples = maintenanceEnergy(puppy).references.slice(2);
      for (const activity of [...ACTIVITY_LEVELS, undefined]) {
        for (const shown of [...publishedReferences(kg, activity), ...multiples]) {
          const told = toldBy(shown.label, of);
          expect(shown.kcalPerDay / told.mid).toBeCloseTo(1, 12);
          expect(shown.low === undefined).toBe(told.low === undefined);
          expect((shown.low ?? 1) / (told.low ?? 1)).toBeCloseTo(1, 12);
          expect((shown.high ?? 1) / (told.high ?? 1)).toBeCloseTo(1, 12);
        }
      }
    }
    const working = (activity: MaintenanceInput['activity']) =>
      publishedReferences(20, activity).filter(({ label }) => label.includes('working'));
    expect(working('working')).toHaveLength(1);
    expect(working('high')).toHaveLength(0);
  });

  // 90 of 100 lie within 1.645 standard deviations of the logarithm, 13.1 / 68.1 of it measured.
  it('is narrower after weight loss, by the spread measured in 24 dogs', () => {
    const { mid, low, high, logSd } = maintenanceEnergy({ weightKg: 20, afterWeightLoss: true });
    expect(logSd).toBeCloseTo(0.1924, 4);
    expect(high / mid).toBeCloseTo(Math.exp(0.3164), 3);
    expect(mid / low).toBeCloseTo(Math.exp(0.3164), 3);
  });

  it('names what it was told of the dog, its sources and how far to trust it', () => {
    const told = (dog: Partial<MaintenanceInput>) => {
      const { inputs, sources, notes } = maintenanceEnergy({ weightKg: 20, ...dog }).figure;
      expect(notes.length).toBeGreaterThan(0);
      return [...inputs.map(({ value, unit }) => `${value} ${unit}`.trim()), ...sources];
    };
    expect(told({ neuter: 'neutered', lifeStage: 'senior' })).toEqual(
      expect.arrayContaining(['20 kg', 'under 1 h a day', 'neutered', 'senior', 'lmuThesis']),
    );
    expect(told({ afterWeightLoss: true })).toEqual(['20 kg', 'german2011']);
    const small = told({ lifeStage: 'puppy', adultWeightKg: 22 });
    expect(small).toEqual(expect.arrayContaining(['20 kg', '22 kg', 'fediafGrowthSteps']));
    const large = told({ lifeStage: 'puppy', adultWeightKg: 30 });
    expect(large).toEqual(expect.arrayContaining(['20 kg', '30 kg', 'nrcGrowth']));
  });

  it('feeds a puppy by the growth equation and asks for its adult weight', () => {
    const puppy = { weightKg: 9, lifeStage: 'puppy' } as const;
    const grown = maintenanceEnergy({ ...puppy, adultWeightKg: 30 });
    expect(grown.mid).toBeCloseTo(growthEnergy({ weightKg: 9, adultWeightKg: 30 }), 9);
    expect(grown.references.map(({ label }) => label.slice(0, 3))).toEqual([
      '130',
      '210',
      '3.0',
      '2.0',
    ]);
    expect(() => maintenanceEnergy(puppy)).toThrow(/adultWeightKg must be from 0.5 to 150 kg/);
  });

  it('refuses a weight out of range, and words it does not know', () => {
    const puppy = { lifeStage: 'puppy', adultWeightKg: 20 } as const;
    for (const dog of [{}, puppy, { afterWeightLoss: true }]) {
      expect(() => maintenanceEnergy({ ...dog, weightKg: 151 })).toThrow(/weightKg must be/);
    }
    const wrong = (dog: object) => () => maintenanceEnergy({ weightKg: 20, ...dog });
    expect(wrong({ activity: 'lazy' })).toThrow(/activity must be one of low, moderate/);
    expect(wrong({ lifeStage: 'old' })).toThrow(/lifeStage/);
    expect(wrong({ neuter: 'yes' })).toThrow(/neuter/);
  });
});

describe('growth energy', () => {
  it('falls towards adult energy as the puppy grows up', () => {
    holds(
      fc.property(fc.integer({ min: 1, max: 100 }), fc.integer({ min: 1, max: 100 }), (p, q) => {
        fc.pre(p < q);
        expect(growthMultiple(p / 100)).toBeGreaterThan(growthMultiple(q / 100));
      }),
      RUNS,
    );
    expect(growthMultiple(1)).toBeCloseTo(1.02, 2);
  });

  it('is a number above nothing for any puppy', () => {
    holds(
      fc.property(weight, evenly(1, 90), (weightKg, adultWeightKg) => {
        const kcal = growthEnergy({ weightKg, adultWeightKg });
        expect(kcal).toBeGreaterThan(0);
        expect(Number.isFinite(kcal)).toBe(true);
      }),
      RUNS,
    );
  });

  // FEDIAF: 210 below half of the adult weight, 175 from half to four fifths, 140 over them.
  it.each([
    [15.9, 210],
    [16, 175],
    [25.6, 175],
    [25.7, 140],
  ])('of %d kg that will weigh 32: %i kcal/kg^0.75 by the steps', (weightKg, perKg075) => {
    const kcal = growthEnergyBySteps({ weightKg, adultWeightKg: 32 });
    expect(kcal / weightKg ** 0.75).toBeCloseTo(perKg075, 9);
  });

  it('refuses a puppy without a weight', () => {
    const puppy = { weightKg: Number.NaN, adultWeightKg: 20 };
    expect(() => growthEnergy(puppy)).toThrow(/weightKg must be from 0.1 to 150 kg/);
    expect(() => growthEnergyBySteps(puppy)).toThrow(/weightKg must be from 0.1 to 150 kg/);
  });

  it('counts a puppy above its expected adult weight as grown', () => {
    const kcal = growthEnergy({ weightKg: 12, adultWeightKg: 10 });
    expect(kcal).toBeCloseTo(130 * 12 ** 0.75 * growthMultiple(1), 9);
  });

  it('has the spread between dogs as its range', () => {
    const { mid, low, high } = growthEstimate({ weightKg: 9, adultWeightKg: 30 }, SPREAD_90);
    expect(high / mid).toBeCloseTo(SPREAD_90, 9);
    expect(mid / low).toBeCloseTo(SPREAD_90, 9);
  });
});
