import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { referralFloor, type AdjustFoodInput } from '../../../core/nutrition.ts';
import { forecast, rationFor, steerHold, steerLoss } from '../../../core/weight/steer.ts';
import type { WeightState } from '../../../core/weight/weightState.ts';
import { evenly, holds } from '../../support/laws.ts';

const RUNS = { seed: 1, numRuns: 500 };
const EPSILON = 1e-6;
const KCAL_PER_KG = 7920; // Hand et al. 2010, Table 27-15 (S).

const state = (kg: number, need: number, needSd = 30): WeightState => ({
  kg,
  kgSd: 0.2,
  need,
  needSd,
  kgNeed: 0,
  surprisePercent: 0,
  lowestKg: kg,
});
/** kcal a day that a loss of 1 % of the first weight a week is worth (C). */
const percentWorth = (initialKg: number): number => (KCAL_PER_KG * initialKg) / 700;

describe('what a ration is expected to do', () => {
  // 0.3 kg a week are 2,376 kcal, 339.4 a day (C of S).
  it('339.4 kcal a day less than a dog of 30 kg needs and runs off: 1 % a week', () => {
    const running = 60;
    const at = forecast(state(30, 800, 50), 800 + running - 339.43, { initialKg: 30, running });
    expect(at.percentPerWeek).toBeCloseTo(-1, 4);
    // 90 % of a normal distribution: 1.645 standard deviations of the need, either way (C).
    expect(at.high - at.percentPerWeek).toBeCloseTo((1.645 * 50) / 339.43, 3);
    expect(at.percentPerWeek - at.low).toBeCloseTo((1.645 * 50) / 339.43, 3);
    expect(forecast(state(30, 800), 800 - 339.43).percentPerWeek).toBeCloseTo(-1, 4);
  });

  it('and back: the ration for a rate does that rate', () => {
    holds(
      fc.property(
        evenly(3, 90),
        evenly(100, 3000),
        evenly(-3, 3),
        evenly(0, 400),
        (kg, need, rate, running) => {
          const body = { initialKg: 1.2 * kg, running };
          const ration = rationFor(state(kg, need), rate, body);
          expect(forecast(state(kg, need), ration, body).percentPerWeek).toBeCloseTo(rate, 6);
        },
      ),
      RUNS,
    );
  });
});

const asked = (rest: Partial<AdjustFoodInput>): AdjustFoodInput => ({
  day: '2026-06-01',
  goal: 'lose',
  weightKg: 30,
  initialWeightKg: 30,
  targetWeightKg: 20,
  onPlan: true,
  ...rest,
});

/** The ration of a dog of 30 kg at its start, needing `need`, that loses `rate` % a week on it. */
const losingAt = (rate: number, need = 1400): number => need - rate * percentWorth(30);
const loss = (rate: number, rest: Partial<AdjustFoodInput> = {}, kg = 30, need = 1400) =>
  steerLoss(asked({ currentKcal: losingAt(rate, need), ...rest }), state(kg, need));

describe('a plan to lose, steered', () => {
  // 1.2 % a week, left alone from 0.7 to 1.7 %, changed when worth 5 %, by 20 % at most (D).
  it.each([0.75, 1.2, 1.65])('leaves a rate of %f %% alone', (rate) => {
    expect(loss(rate)).toMatchObject({ kcalPerDay: losingAt(rate), direction: 0, arriving: false });
  });

  it.each([
    [0.65, -1],
    [0.3, -1],
    [1.75, 1],
    [2.4, 1],
  ])('a loss of %f %% is steered to 1.2 %%', (rate, direction) => {
    const steered = loss(rate, { currentKcal: losingAt(rate, 3000) }, 30, 3000);
    expect(steered.direction).toBe(direction);
    expect(steered.proposed.percentPerWeek).toBeCloseTo(-1.2, 6);
    expect(steered.present.percentPerWeek).toBeCloseTo(-rate, 6);
    expect(steered).toMatchObject({ atFloor: false, arriving: false });
  });

  it('takes a running that is planned for spent', () => {
    const runs = { runningKcalPerDay: 200 };
    expect(loss(0.3, { ...runs, currentKcal: losingAt(0.3) + 200 }).present).toEqual(
      expect.objectContaining({ percentPerWeek: expect.closeTo(-0.3, 6) }),
    );
    expect(loss(0.3, runs).present.percentPerWeek).toBeLessThan(-0.8);
  });

  it('counts a rate in percent of the first weight, of the present one where none is known', () => {
    const lighter = { weightKg: 24, currentKcal: 1000 };
    const later = steerLoss(asked(lighter), state(24, 1400)).present.percentPerWeek;
    expect(later).toBeCloseTo(-400 / percentWorth(30), 6);
    const { initialWeightKg: _, ...unknown } = asked(lighter);
    const now = steerLoss(unknown, state(24, 1400)).present.percentPerWeek;
    expect(now).toBeCloseTo(-400 / percentWorth(24), 6);
  });

  it('slows near the target: two percent above it 0.7 %, four percent 1 %', () => {
    const near = (percent: number, rate: number, need = 1400) =>
      loss(rate, { targetWeightKg: 27 - (percent * 30) / 100 }, 27, need);
    expect(near(4, 1.6, 3000).proposed.percentPerWeek).toBeCloseTo(-1, 6);
    expect(near(2, 1.5, 3000).proposed.percentPerWeek).toBeCloseTo(-0.7, 6);
    expect(near(4, 1.6)).toMatchObject({ direction: 1, arriving: true });
    // It stays while it would not carry the dog over 1 % past the target in four weeks.
    expect(near(4, 1.2)).toMatchObject({ direction: 0, arriving: false });
    expect(near(4, 1.3)).toMatchObject({ direction: 1, arriving: true });
    // A change of under 5 % is not worth one.
    expect(near(4, 1.3, 3000)).toMatchObject({ direction: 0, arriving: true });
    // Faster than 1.7 % is too fast anywhere, and no arrival.
    expect(near(4, 1.75)).toMatchObject({ direction: 1, arriving: false });
  });

  it('says that it lies at the floor only where less food is wanted', () => {
    const floor = referralFloor(20);
    const need = floor + 0.3 * percentWorth(30);
    expect(loss(0.3, {}, 30, need)).toMatchObject({ atFloor: true, direction: 0 });
    expect(loss(1.2, { currentKcal: floor }, 30, floor + 1.2 * percentWorth(30)).atFloor).toBe(
      false,
    );
    expect(loss(2.5, { currentKcal: floor }, 30, floor + 2.5 * percentWorth(30)).atFloor).toBe(
      false,
    );
  });

  const cases = fc.record({
    need: evenly(300, 2500),
    rate: evenly(-2, 4),
    kg: evenly(20, 30),
    target: evenly(15, 29),
  });

  it('moves by a fifth at most, towards the rate wanted, and from above the floor never below', () => {
    holds(
      fc.property(cases, ({ need, rate, kg, target }) => {
        const present = losingAt(rate, need);
        fc.pre(present > 50);
        const input = asked({ currentKcal: present, targetWeightKg: target, weightKg: kg });
        const { kcalPerDay, direction } = steerLoss(input, state(kg, need));
        expect(direction).toBe(Math.sign(kcalPerDay - present));
        expect(Math.abs(kcalPerDay / present - 1)).toBeLessThanOrEqual(0.2 + EPSILON);
        if (present >= referralFloor(target)) {
          expect(kcalPerDay).toBeGreaterThanOrEqual(referralFloor(target) - EPSILON);
        } else expect(kcalPerDay).toBeGreaterThanOrEqual(present);
        // Never less food for a dog that loses 0.7 % or more, never more for one that does not.
        if (rate >= 0.7) expect(direction).toBeGreaterThanOrEqual(0);
        else expect(direction).toBeLessThanOrEqual(0);
        const atFloor = kcalPerDay <= referralFloor(target) + EPSILON;
        if (direction !== 0 && !atFloor) {
          expect(Math.abs(kcalPerDay / present - 1)).toBeGreaterThanOrEqual(0.05 - EPSILON);
        }
      }),
      RUNS,
    );
  });
});

const hold = (present: number, kg: number, rest: Partial<AdjustFoodInput> = {}, need = 1000) =>
  steerHold(
    asked({ goal: 'hold', currentKcal: present, targetWeightKg: 25, ...rest }),
    state(kg, need),
  );
/** kcal a day that bring the dog to 25 kg over ten weeks (D), at 7,920 kcal a kg. */
const toTarget = (kg: number): number => (KCAL_PER_KG * (25 - kg)) / 70;

describe('a target that is held', () => {
  it('feeds the need, and what brings the weight back over ten weeks', () => {
    const under = hold(1000, 24.2);
    expect(under.kcalPerDay).toBeCloseTo(1000 + toTarget(24.2), 6);
    expect(under).toMatchObject({ direction: 1, atFloor: false, arriving: false });
    const over = hold(1030, 25.9);
    expect(over.kcalPerDay).toBeCloseTo(1030 * 0.9, 6);
    expect(over.direction).toBe(-1);
    expect(hold(1000, 25.9, {}, 1010).kcalPerDay).toBeCloseTo(1010 + toTarget(25.9), 6);
  });

  it('changes nothing that is not worth 8 %', () => {
    expect(hold(1000, 25 - (70 * 79) / KCAL_PER_KG).direction).toBe(0);
    expect(hold(1000, 25 - (70 * 81) / KCAL_PER_KG).direction).toBe(1);
  });

  it('names why it changes nothing', () => {
    // Within 8 % of what would bring the weight back; under 3 % above the target; coming down to it.
    expect(hold(1000, 25).kept).toBe('kept-little');
    expect(hold(1300, 25 * 1.029).kept).toBe('kept-near');
    expect(hold(1000 - 57, 25 * 1.08).kept).toBe('kept-falling');
    expect(hold(700, 25 * 1.05).kept).toBe('kept-falling');
    expect(hold(1150, 25 * 1.031).kept).toBeNull();
    expect(hold(1000, 24.2).kept).toBeNull();
  });

  it('takes food away only from 3 % over the target, and not from a dog that falls', () => {
    expect(hold(1150, 25 * 1.029).direction).toBe(0);
    expect(hold(1150, 25 * 1.031).direction).toBe(-1);
    // 0.2 % a week are 56.6 kcal of a dog of 25 kg (C): falling.
    const falling = hold(1000 - 57, 25 * 1.05);
    expect(falling.direction).toBe(0);
    expect(falling.present.percentPerWeek).toBeCloseTo(-0.2, 2);
    expect(hold(1000 - 20, 25 * 1.05).direction).toBe(-1);
  });

  it('adds food up to 2 % over the target, and none above', () => {
    // Far too little for the need: the dog will be under the target soon.
    expect(hold(700, 25 * 1.019).direction).toBe(1);
    expect(hold(700, 25 * 1.021).direction).toBe(0);
  });

  it('steps by 10 % at most, by 20 % where a dog still loses over half a percent a week', () => {
    expect(hold(700, 25).kcalPerDay).toBeCloseTo(840, 6);
    // 0.5 % a week are 141.4 kcal of a dog of 25 kg (C).
    expect(hold(1000 - 130, 24).kcalPerDay).toBeCloseTo(870 * 1.1, 6);
    expect(hold(1000 - 150, 24).kcalPerDay).toBeCloseTo(850 * 1.2, 0);
    expect(hold(2000, 27).kcalPerDay).toBeCloseTo(1800, 6);
  });

  it('counts the running that the ration holds; on a plan to lose the one planned', () => {
    const runs = { runningKcalPerDay: 300, runningInRationKcalPerDay: 100 };
    const rate = (rest: Partial<AdjustFoodInput>) => hold(1000, 25, rest).present.percentPerWeek;
    const percent = percentWorth(25);
    expect(rate({ goal: 'hold', ...runs })).toBeCloseTo(-100 / percent, 6);
    expect(rate({ goal: 'hold', runningKcalPerDay: 300 })).toBeCloseTo(-300 / percent, 6);
    expect(rate({ goal: 'lose', ...runs })).toBeCloseTo(-300 / percent, 6);
    expect(rate({ goal: 'hold' })).toBeCloseTo(0, 6);
    expect(hold(1000, 25, { runningKcalPerDay: 95 }).kcalPerDay).toBeCloseTo(1095, 6);
  });
});
