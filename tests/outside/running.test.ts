import { describe, expect, it } from 'vitest';
import { MEASURED_RUNNING_COST, runningCost, runningPower } from '../../core/nutrition.ts';
import { KJ_PER_KCAL } from '../../core/units.ts';

// Marks: S read in the source, C our arithmetic from a stated formula.

describe('running against Taylor, Heglund & Maloiy 1982 (J Exp Biol 97:1–21)', () => {
  // O2 = 0.533 M^-0.316 v + 0.300 M^-0.303 ml/s/kg (S), 20.1 J/ml; 20 kg at 3 m/s worked out (C).
  it('20 kg at 3 m/s: 14.889 W/kg gross (C)', () => {
    expect(runningPower({ weightKg: 20, speedMps: 3 })).toBeCloseTo(14.889, 3);
  });

  // The speed-proportional term as 10.7 M^0.684 J/m (C).
  it.each([
    [10, 12.4],
    [20, 19.8],
    [40, 31.9],
  ])('%d kg: %d kcal per km above rest (C)', (weightKg, kcal) => {
    expect(runningCost({ weightKg, distanceKm: 1 }).mid).toBeCloseTo(kcal, 1);
  });

  it('is the slope of the gross power on speed (C)', () => {
    const slope =
      runningPower({ weightKg: 25, speedMps: 4 }) - runningPower({ weightKg: 25, speedMps: 3 });
    const perMetre = (runningCost({ weightKg: 25, distanceKm: 1 }).mid * KJ_PER_KCAL) / 25;
    expect(Math.abs(perMetre / slope - 1)).toBeLessThan(0.002);
  });
});

describe('running against measurements and the handbook', () => {
  // Bryce & Williams 2017 (J Exp Biol 220:312): 2.1, 3.0 and 3.4 J/kg/m in dogs over 20 kg (S).
  it('holds the costs measured in northern breeds, retrievers and hounds (S)', () => {
    expect(Object.values(MEASURED_RUNNING_COST)).toEqual([2.1, 3.0, 3.4]);
    for (const weightKg of [20, 30, 45]) {
      const { low, high } = runningCost({ weightKg, distanceKm: 10 });
      for (const cost of [2.1, 3.0, 3.4]) {
        const kcal = (cost * weightKg * 10_000) / (KJ_PER_KCAL * 1000);
        expect(kcal).toBeGreaterThanOrEqual(low - 1e-9);
        expect(kcal).toBeLessThanOrEqual(high + 1e-9);
      }
    }
  });

  // Hand et al. 2010, Table 18-6, p. 332 (S): cost of 1 km.
  const HANDBOOK = [
    [10, 14],
    [20, 23],
    [30, 30],
    [40, 36],
    [50, 42],
  ] as const;

  it.each(HANDBOOK)('%d kg over 1 km: the handbook’s %d kcal lies in the range (S)', (kg, kcal) => {
    const { mid, low, high } = runningCost({ weightKg: kg, distanceKm: 1 });
    expect(kcal).toBeGreaterThan(low);
    expect(kcal).toBeLessThan(high);
    expect(Math.abs(mid / kcal - 1)).toBeLessThan(0.16);
  });

  // Its printed equation, kcal/kg = 1.77 km kg^-0.4 + 1.25 kg^-0.25, gives the table at 1 km (S), but
  // its second term is a fixed amount: carried to 10 km it would halve the cost per km (C).
  it('does not use the printed equation, which holds for 1 km only (S/C)', () => {
    const printed = (kg: number, km: number) => kg * (1.77 * km * kg ** -0.4 + 1.25 * kg ** -0.25);
    for (const [kg, kcal] of HANDBOOK) {
      expect(Math.abs(printed(kg, 1) - kcal)).toBeLessThan(1);
    }
    expect(printed(20, 10) / 10 / printed(20, 1)).toBeLessThan(0.6);
    const ours = (km: number) => runningCost({ weightKg: 20, distanceKm: km }).mid;
    expect(ours(10)).toBeCloseTo(10 * ours(1), 9);
  });

  // Best efficiency 28 % (S): 9.81 / 0.28 = 35 J/kg per metre climbed; 30 kg × 100 m = 25.1 kcal (C).
  it('100 m of climb cost a 30 kg dog 25.1 kcal (C)', () => {
    const flat = runningCost({ weightKg: 30, distanceKm: 5 }).mid;
    const hilly = runningCost({ weightKg: 30, distanceKm: 5, climbM: 100 }).mid;
    expect(hilly - flat).toBeCloseTo(25.1, 1);
    expect(9.81 / 0.28).toBeCloseTo(35, 0);
  });
});
