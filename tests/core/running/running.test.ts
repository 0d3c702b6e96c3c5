import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  runEnergy,
  runningCost,
  runningFood,
  runningPower,
  runningPowerFigure,
} from '../../../core/nutrition.ts';
import { holds } from '../../support/laws.ts';

const RUNS = { seed: 1, numRuns: 500 };
const weight = fc.integer({ min: 1, max: 1500 }).map((tenths) => tenths / 10);
const km = fc.integer({ min: 0, max: 2000 }).map((tenths) => tenths / 10);
const climb = fc.integer({ min: 0, max: 10000 });

describe('cost of a run', () => {
  it('is an ordered range of numbers that never falls with weight, distance or climb', () => {
    holds(
      fc.property(weight, weight, km, km, climb, (a, b, near, far, climbM) => {
        fc.pre(a < b && near < far);
        const light = runningCost({ weightKg: a, distanceKm: near, climbM });
        expect(light.low).toBeGreaterThanOrEqual(0);
        expect(light.low).toBeLessThanOrEqual(light.mid);
        expect(light.mid).toBeLessThanOrEqual(light.high);
        const mid = (weightKg: number, distanceKm: number, up: number) =>
          runningCost({ weightKg, distanceKm, climbM: up }).mid;
        expect(mid(b, near, climbM)).toBeGreaterThanOrEqual(light.mid);
        expect(mid(a, far, climbM)).toBeGreaterThan(light.mid);
        expect(mid(a, near, climbM / 2)).toBeLessThanOrEqual(light.mid);
      }),
      RUNS,
    );
  });

  it('needs no climb, and a run of no length costs nothing', () => {
    expect(runningCost({ weightKg: 20, distanceKm: 0 }).mid).toBe(0);
  });

  // 1 km of 20 kg: 10.7 · 20^0.684 · 1000 J = 83.0 kJ = 19.85 kcal, 14.9 to 24.8 within 25 %. Northern
  // breeds were measured at 2.1 J/kg/m: 42 kJ = 10.04 kcal, which only counts from 20 kg on (C from S).
  it('reaches down to the least cost measured in dogs, from 20 kg on', () => {
    const low = (weightKg: number) => runningCost({ weightKg, distanceKm: 1 });
    expect(low(20).low).toBeCloseTo(10.04, 2);
    expect(low(19.9).low / low(19.9).mid).toBeCloseTo(0.75, 9);
    expect(low(20).high / low(20).mid).toBeCloseTo(1.25, 9);
  });

  it('tells weight, distance and climb, and what is not in it', () => {
    const { figure } = runningCost({ weightKg: 20, distanceKm: 5, climbM: 100 });
    expect(figure).toMatchObject({
      unit: 'kcal',
      inputs: [
        { label: 'Body weight', value: 20, unit: 'kg' },
        { label: 'Distance', value: 5, unit: 'km' },
        { label: 'Climb', value: 100, unit: 'm' },
      ],
      sources: ['taylor1982', 'bryce2017', 'climbEfficiency'],
    });
    expect(figure.notes[0]).toMatch(/^Above what the dog spends at rest/);
  });

  it('refuses bad input, naming it', () => {
    for (const weightKg of [0, 151]) {
      const message = /weightKg must be from 0.1 to 150 kg/;
      expect(() => runningCost({ weightKg, distanceKm: 1 })).toThrow(message);
      expect(() => runningPower({ weightKg, speedMps: 1 })).toThrow(message);
      expect(() => runningFood({ weightKg, weeks: [] })).toThrow(message);
    }
    expect(() => runningCost({ weightKg: 20, distanceKm: -1 })).toThrow(/distanceKm must be .* km/);
    expect(() => runningCost({ weightKg: 20, distanceKm: 1, climbM: Number.NaN })).toThrow(
      /climbM/,
    );
    expect(() => runningPower({ weightKg: 20, speedMps: 21 })).toThrow(/speedMps .* m\/s/);
  });
});

describe('power while running', () => {
  it('falls with body size and rises with speed', () => {
    const at = (weightKg: number, speedMps: number) => runningPower({ weightKg, speedMps });
    expect(at(40, 3)).toBeLessThan(at(10, 3));
    expect(at(20, 4)).toBeGreaterThan(at(20, 3));
  });

  it('prints the formula that gives its value', () => {
    // Taylor, Heglund & Maloiy 1982 (S): 14.889 W/kg for 20 kg at 3 m/s (C).
    const { figure } = runningPowerFigure({ weightKg: 20, speedMps: 3 });
    expect(figure.formula).toBe('10.7 × kg^−0.316 × m/s + 6.03 × kg^−0.303');
    const printed = 10.7 * 20 ** -0.316 * 3 + 6.03 * 20 ** -0.303;
    expect(figure.value).toBeCloseTo(printed, 9);
    expect(figure.value).toBeCloseTo(14.889, 3);
    expect(figure.inputs).toEqual([
      { label: 'Body weight', value: 20, unit: 'kg' },
      { label: 'Speed', value: 3, unit: 'm/s' },
    ]);
    expect(figure.sources).toEqual(['taylor1982']);
    expect(figure.notes[0]).toContain('what the dog spends at rest is in it');
  });

  it('has a quarter to either side as its range', () => {
    const { mid, low, high } = runningPowerFigure({ weightKg: 20, speedMps: 3 });
    expect([low / mid, high / mid]).toEqual([0.75, 1.25]);
  });
});

describe('food for a running plan', () => {
  const sessions = [
    { day: '2026-03-02', distanceKm: 2 },
    { day: '2026-03-04', distanceKm: 1 },
    { day: '2026-03-06', distanceKm: 1.5 },
  ];
  const perKm = runningCost({ weightKg: 25, distanceKm: 1 }).mid;

  it('adds up each week, per running day and on average', () => {
    const [week] = runningFood({ weightKg: 25, weeks: [{ sessions }] });
    expect(week).toMatchObject({ week: 1, runningDays: 3 });
    expect(week!.kcalPerWeek).toBeCloseTo(4.5 * perKm, 9);
    expect(week!.kcalPerRunningDay).toBeCloseTo(1.5 * perKm, 9);
    expect(week!.kcalPerDay).toBeCloseTo((4.5 * perKm) / 7, 9);
    expect(week!.low).toBeLessThan(week!.kcalPerWeek);
    expect(week!.high).toBeGreaterThan(week!.kcalPerWeek);
    const kcal = Math.round(1.5 * perKm);
    const average = Math.round((4.5 * perKm) / 7);
    expect(week!.reason.text).toBe(
      `Week 1: ${kcal} kcal more on running days (${average} kcal a day on average).`,
    );
    expect(week!.reason).toMatchObject({
      params: { week: 1, kcalPerRunningDay: kcal, kcalPerDay: average },
      sources: ['taylor1982', 'bryce2017'],
    });
  });

  it('tells distance from minutes and pace, and climbs with the route', () => {
    const run = runEnergy(
      { weightKg: 25, paceMinPerKm: 6, climbMPerKm: 20 },
      { day: '2026-03-02', runMinutes: 30, distanceKm: null },
    );
    expect(run.distanceKm).toBeCloseTo(5, 9);
    const expected = runningCost({ weightKg: 25, distanceKm: 5, climbM: 100 }).mid;
    expect(run.kcal.mid).toBeCloseTo(expected, 9);
  });

  it('takes off what the daily activity already holds, never below nothing', () => {
    const plan = { weightKg: 25, weeks: [{ sessions }] };
    const kcal = (countedKmPerWeek: number) =>
      runningFood({ ...plan, countedKmPerWeek })[0]!.kcalPerWeek;
    expect(kcal(1.5)).toBeCloseTo(3 * perKm, 9);
    // A third of 4.5 km is taken off the range as well.
    const whole = runningFood(plan)[0]!;
    const { low, high } = runningFood({ ...plan, countedKmPerWeek: 1.5 })[0]!;
    expect([low / whole.low, high / whole.high]).toEqual([
      expect.closeTo(2 / 3, 9),
      expect.closeTo(2 / 3, 9),
    ]);
    expect(kcal(10)).toBe(0);
    const { reason } = runningFood({ ...plan, countedKmPerWeek: 10 })[0]!;
    expect(reason.text).toBe('Week 1: no more food for running.');
  });

  it('is nothing in a week without sessions', () => {
    const [week] = runningFood({ weightKg: 25, weeks: [{ sessions: [] }] });
    expect(week).toMatchObject({ runningDays: 0, kcalPerWeek: 0, kcalPerRunningDay: 0 });
  });

  it('asks for a distance, or minutes with a pace', () => {
    const weeks = [{ sessions: [{ day: '2026-03-02', runMinutes: 20 }] }];
    expect(() => runningFood({ weightKg: 25, weeks })).toThrow(
      /distance in km, or minutes with a pace/,
    );
    expect(() => runningFood({ weightKg: 25, weeks, paceMinPerKm: 1 })).toThrow(/paceMinPerKm/);
    const untold = [{ sessions: [{ day: '2026-03-02' }] }];
    expect(() => runningFood({ weightKg: 25, weeks: untold, paceMinPerKm: 6 })).toThrow(
      /distance in km, or minutes with a pace/,
    );
  });
});
