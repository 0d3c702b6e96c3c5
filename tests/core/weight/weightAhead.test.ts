import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import { aheadFigure, maintenanceEnergy, weightAhead } from '../../../core/nutrition.ts';
import { weightState, type WeightState } from '../../../core/weight/weightState.ts';
import { random } from '../../calibration/random.ts';

const DAY = '2026-03-01';
const body: WeightState = {
  kg: 25,
  kgSd: 0,
  need: 900,
  needSd: 0,
  kgNeed: 0,
  surprisePercent: 0,
  lowestKg: 25,
};
const last = (kcalPerDay: number, change: Partial<Parameters<typeof weightAhead>[0]> = {}) =>
  weightAhead({ body, day: DAY, kcalPerDay, ...change }).at(-1)!;

describe('the weight ahead', () => {
  it('stays where as much is eaten as needed, and begins today', () => {
    const ahead = weightAhead({ body, day: DAY, kcalPerDay: 900 });
    expect(ahead[0]).toMatchObject({ day: DAY, kg: 25 });
    expect(ahead).toHaveLength(9);
    expect(ahead.at(-1)!.day).toBe(addDays(DAY, 56));
    for (const { kg } of ahead) expect(kg).toBeCloseTo(25, 9);
  });

  // Energy in adipose change 7,920 kcal/kg (Hand Table 27-15, S): 113 kcal less for 14 days are 0.2 kg (C).
  it('loses by the energy of what is not eaten', () => {
    expect(last(900 - (0.2 * 7920) / 14, { weeks: 2 }).kg).toBeCloseTo(24.8, 2);
  });

  it('counts running like food that is not eaten', () => {
    expect(last(900, { runningKcalPerDay: 100 }).kg).toBeCloseTo(last(800).kg, 12);
  });

  it('slows down as the body that is fed grows less', () => {
    const ahead = weightAhead({ body, day: DAY, kcalPerDay: 500, weeks: 26 });
    const lost = ahead.slice(1).map(({ kg }, week) => ahead[week]!.kg - kg);
    expect(lost.at(-1)!).toBeLessThan(lost[0]! * 0.9);
  });

  it('is less sure the further it looks and the less the need is known', () => {
    const width = (needSd: number) =>
      weightAhead({ body: { ...body, needSd }, day: DAY, kcalPerDay: 700 }).map(
        ({ low, high }) => high - low,
      );
    const wide = width(150);
    expect(wide.every((value, week) => week === 0 || value > wide[week - 1]!)).toBe(true);
    expect(wide.at(-1)!).toBeGreaterThan(width(50).at(-1)!);
  });

  it('refuses what is no ration', () => {
    expect(() => last(0)).toThrow(/kcalPerDay must be from 1 to 20000 kcal\/day/);
    expect(() => last(900, { weeks: 0 })).toThrow(/weeks must be from 1 to 26/);
    expect(() => last(900, { runningKcalPerDay: -1 })).toThrow(/runningKcalPerDay/);
  });

  it('explains itself', () => {
    const explained = aheadFigure({ body, day: DAY, kcalPerDay: 787 });
    expect(explained).toMatchObject({ unit: 'kg', sources: ['hand2010', 'ownDecision'] });
    expect(explained.value).toBe(last(787).kg);
    const asked = { body: { ...body, kg: 25.04, need: 899.6 }, day: DAY, kcalPerDay: 787.2 };
    const { label, inputs, low, high, notes } = aheadFigure({ ...asked, runningKcalPerDay: 40.4 });
    expect(label).toBe('Weight in 8 weeks');
    expect(inputs.map(({ value, unit }) => `${value} ${unit}`)).toEqual([
      '787 kcal/day',
      '40 kcal/day',
      '900 kcal/day',
      '25 kg',
    ]);
    expect(notes.join()).toContain('food that is not told');
    expect(low!).toBeLessThan(high!);
  });

  // Dogs whose need follows the body by kg^0.75 from day to day; four weighings with their error.
  it('holds the later weight of a simulated dog nine times in ten', () => {
    const draw = random(11);
    const dogs = 2000;
    let inside = 0;
    for (let index = 0; index < dogs; index += 1) {
      const startKg = draw.uniform(8, 40);
      const prior = maintenanceEnergy({ weightKg: startKg });
      const logSd = Math.log(prior.high / prior.low) / (2 * 1.6448536);
      const need = prior.mid * Math.exp(logSd * draw.normal());
      const after = (from: number, kcal: number, days: number): number => {
        let kg = from;
        for (let day = 0; day < days; day += 1) {
          kg += (kcal - need * (kg / startKg) ** 0.75) / 7920;
        }
        return kg;
      };
      const fed = prior.mid * 0.9;
      const weighings = [0, 14, 28, 42].map((days) => ({
        day: addDays(DAY, days),
        weightKg: after(startKg, fed, days) * (1 + 0.012 * draw.normal()),
      }));
      const intakes = [{ fromDay: DAY, kcalPerDay: fed }];
      const state = weightState({ prior, weighings, intakes })!;
      const kcalPerDay = fed * draw.uniform(0.8, 1.1);
      const ahead = weightAhead({ body: state, day: addDays(DAY, 42), kcalPerDay }).at(-1)!;
      const truth = after(after(startKg, fed, 42), kcalPerDay, 56);
      if (truth >= ahead.low && truth <= ahead.high) inside += 1;
    }
    expect(inside / dogs).toBeGreaterThan(0.86);
    expect(inside / dogs).toBeLessThan(0.96);
  });
});
