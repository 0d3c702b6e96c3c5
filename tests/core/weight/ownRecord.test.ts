import { describe, expect, it } from 'vitest';
import { estimateMaintenance, maintenanceEnergy } from '../../../core/nutrition.ts';
import { course, START, weighed } from './asked.ts';

const prior = maintenanceEnergy({ weightKg: 25 });
const intakes = [{ fromDay: START, kcalPerDay: 900 }];

describe('the record behind the dog’s own energy', () => {
  // Medians of three: 25 kg on the first two days, 24 on the others: 25 for 14 days, 24.5 for 14
  // and 24 for 42 come to 1701 kg × days.
  it('belongs to the mean weight over the days of the record', () => {
    const weighings = [weighed(0, 26), weighed(14, 25), weighed(28, 24), weighed(70, 23)];
    const own = estimateMaintenance({ prior, weighings, intakes });
    expect(own.atWeightKg).toBeCloseTo(1701 / 70, 9);
    expect(own.figure.inputs.map(({ value, unit }) => `${value} ${unit}`.trim())).toEqual([
      `${Math.round(prior.mid)} kcal/day`,
      '4',
      '70 days',
      '24.3 kg',
    ]);
    expect(own.figure.sources).toContain('hand2010');
    expect(own.figure.notes).toContain(own.sentence);
    const bare = estimateMaintenance({ prior, weighings: [weighed(0, 26)], intakes });
    expect(bare.atWeightKg).toBeNull();
    expect(bare.flagged).toEqual([]);
    expect(bare.figure.inputs.map(({ value }) => value)).toEqual([Math.round(prior.mid), 1, 0]);
  });

  // 1 % of 25 kg and a step of 0.1 kg are 0.2517 kg for each of two weighings, 0.3559 for their
  // difference: 7920 × 0.3559 / 56 is 50.3 kcal a day, 1.645 of that 82.8.
  it('has the record alone with its own interval', () => {
    const weighings = [weighed(0, 25), weighed(56, 25)];
    const { recordAlone } = estimateMaintenance({ prior, weighings, intakes });
    expect(recordAlone!.mid).toBeCloseTo(900, 9);
    expect(recordAlone!.low).toBeCloseTo(817.2, 1);
    expect(recordAlone!.high).toBeCloseTo(982.8, 1);
  });

  it('tells more than the formula after more than 14 days, once 0.6 of its doubt is left', () => {
    const of = (days: number, modelErrorSd: number) =>
      estimateMaintenance({
        prior,
        weighings: [0, days].flatMap((day) => Array.from({ length: 60 }, () => weighed(day, 25))),
        intakes,
        modelErrorSd,
      });
    expect(of(14, 0)).toMatchObject({ informative: false, spanDays: 14 });
    expect(of(15, 0)).toMatchObject({ informative: true, spanDays: 15 });
    for (const modelErrorSd of [0, 0.1, 0.2, 0.22, 0.25, 0.4]) {
      const { informative, doubtLeft, low, high } = of(56, modelErrorSd);
      expect(informative).toBe(doubtLeft <= 0.6);
      const [left, first] = [high / low, prior.high / prior.low];
      expect(first ** doubtLeft).toBeCloseTo(left, 9);
    }
    expect(of(56, 0.4).informative).toBe(false);
  });

  it('says so where it agrees with the formula', () => {
    const weighings = course(prior.mid, 14, 9);
    expect(estimateMaintenance({ prior, weighings, intakes }).sentence).toBe(
      'The record of this dog agrees with the formula.',
    );
  });

  // Beside a formula that says next to nothing the record decides: 50.3 kcal of its own and 13 % of
  // 900 that the model leaves out (C), 127.4 together, ± 209.5 at 90 %.
  it('is as unsure as its own error and the model’s together', () => {
    const vague = { mid: 900, low: 20, high: 40_500 };
    const weighings = [weighed(0, 25), weighed(56, 25)];
    const { low, high } = estimateMaintenance({ prior: vague, weighings, intakes });
    expect((high - low) / 2 / 209.5).toBeCloseTo(1, 1);
  });
});
