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

  it('refuses bad input, naming it', () => {
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
    expect(week!.reason.text).toContain(`Week 1: ${kcal} kcal more on running days`);
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
  });
});
