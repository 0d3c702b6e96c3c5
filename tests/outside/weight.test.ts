import {
  cumulativeStdNormalProbability,
  linearRegression,
  linearRegressionLine,
  standardDeviation,
} from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../core/day.ts';
import {
  balanceSd,
  energyBalance,
  KCAL_PER_KG_CHANGE,
  LOSS_AIM_PERCENT,
  lossCorridor,
  LOSS_MAX_PERCENT,
  LOSS_MIN_PERCENT,
  weeksToTarget,
  weighingSd,
  weightTrend,
  Z90,
} from '../../core/nutrition.ts';
import { chiSquare95, fitLine, type Observation } from '../../core/weight/line.ts';

// Marks: S read in the source, C our arithmetic from a stated formula, D our own decision.

const START = '2026-03-01';

describe('rate and balance against the published examples', () => {
  // AAHA monitoring page (S): 100 × change / last weight / weeks; 40.0 → 39.2 kg in 2 weeks is 1.0.
  it('40.0 to 39.2 kg in two weeks is 1.0 % a week (S)', () => {
    const trend = weightTrend([
      { day: START, weightKg: 40 },
      { day: addDays(START, 14), weightKg: 39.2 },
    ]);
    expect(trend.percentPerWeek).toBeCloseTo(-1, 9);
    expect(trend.kgPerWeek).toBeCloseTo(-0.4, 9);
  });

  // Hand et al. 2010, Table 27-15 (S): 7,920 kcal per kg of adipose change; the case is ours (C).
  it('900 kcal a day with 0.20 kg lost in 14 days is 1,013 kcal a day (C)', () => {
    expect(KCAL_PER_KG_CHANGE).toBe(7920);
    const kcal = energyBalance({ intakeKcalPerDay: 900, changeKg: -0.2, days: 14 });
    expect(Math.round(kcal)).toBe(1013);
  });

  // 25 kg, 1 % per weighing (D): SD about 200 kcal/day over 14 days, about 50 over 56 (C).
  it('two weighings of a 25 kg dog leave 200 kcal a day over 14 days, 50 over 56 (C)', () => {
    expect(Math.round(balanceSd({ weighingSdKg: 0.25, days: 14 }))).toBe(200);
    expect(Math.round(balanceSd({ weighingSdKg: 0.25, days: 56 }))).toBe(50);
  });

  // Our default: 1 % of body weight and the scale's step d as d / √12 (D).
  it('takes 1 % and d / √12 as the error of a weighing (D)', () => {
    const sd = weighingSd({ day: START, weightKg: 30, scaleStepKg: 0.5 });
    expect(sd).toBeCloseTo(Math.hypot(0.3, 0.5 / Math.sqrt(12)), 12);
  });

  // Hand et al. 2010, pp. 522 and 532 (S): aim 1 %, inside 0.5–2 % of initial weight per week.
  it('keeps a loss plan inside 0.5–2 % of the initial weight a week (S)', () => {
    expect([LOSS_MIN_PERCENT, LOSS_AIM_PERCENT, LOSS_MAX_PERCENT]).toEqual([0.5, 1, 2]);
    const plan = lossCorridor({ startDay: START, initialKg: 40, targetKg: 32 });
    expect(plan[5]).toMatchObject({ day: addDays(START, 35), high: 39, aim: 38, low: 36 });
  });

  // Hand et al. 2010, Box 27-12 (S): weeks to goal = excess / (rate × weight).
  it('40 to 32 kg at 1 % a week takes 20 weeks (C)', () => {
    expect(weeksToTarget(40, 32, 1)).toBeCloseTo(20, 9);
  });

  // A published sheet (S): 15 % of the weight at 1 % a week takes 15 weeks.
  it('15 % at 1 % a week takes 15 weeks (S)', () => {
    expect(weeksToTarget(40, 34, 1)).toBeCloseTo(15, 9);
  });
});

describe('the line through the weighings against simple-statistics', () => {
  const days = [0, 9, 23, 30, 51, 60];
  const weights = [31.2, 31.0, 30.9, 30.4, 30.1, 30.0];
  const pairs = days.map((day, index) => [day, weights[index]!]);
  const equal = (sd: number): Observation[] => pairs.map(([x, y]) => ({ x: x!, y: y!, sd }));
  const spread = (xs: readonly number[]) => standardDeviation([...xs]) * Math.sqrt(xs.length);

  it('has the slope and pivot of an ordinary regression where errors are equal', () => {
    const fit = fitLine(equal(0.3))!;
    const { m, b } = linearRegression(pairs);
    expect(fit.slope).toBeCloseTo(m, 12);
    expect(fit.meanY).toBeCloseTo(linearRegressionLine({ m, b })(fit.meanX), 10);
  });

  it('has the textbook error of the slope, sd / √Σ(x − x̄)²', () => {
    expect(fitLine(equal(0.3))!.slopeSd).toBeCloseTo(0.3 / spread(days), 12);
  });

  it('weighs an observation with half the error as four of them', () => {
    const observations = equal(0.3).map((point, index) =>
      index === 2 ? { ...point, sd: 0.15 } : point,
    );
    const repeated = [...pairs, pairs[2]!, pairs[2]!, pairs[2]!];
    expect(fitLine(observations)!.slope).toBeCloseTo(linearRegression(repeated).m, 12);
  });

  it('widens to the error of an ordinary regression where the scatter is too large', () => {
    const sd = 0.02;
    const fit = fitLine(equal(sd))!;
    const line = linearRegressionLine(linearRegression(pairs));
    const squares = pairs.reduce((sum, [x, y]) => sum + (y! - line(x!)) ** 2, 0);
    const ordinary = Math.sqrt(squares / (pairs.length - 2)) / spread(days);
    expect(fit.widened).toBeGreaterThan(1);
    expect(fit.slopeSd).toBeCloseTo(ordinary, 12);
  });

  it('takes the 5 % and 95 % points of the normal for the 90 % interval', () => {
    expect(cumulativeStdNormalProbability(Z90)).toBeCloseTo(0.95, 3);
    const weighings = days.map((day, i) => ({ day: addDays(START, day), weightKg: weights[i]! }));
    const trend = weightTrend(weighings);
    const sd = weighingSd({ day: START, weightKg: 30.6 });
    const half = (100 * 7 * 1.6448536 * sd) / spread(days) / trend.line[0]!.kg;
    expect((trend.high! - trend.low!) / 2).toBeCloseTo(half, 2);
  });

  // Chi-square tables: 95 % points 3.841, 9.488, 18.307 at 1, 4 and 10 degrees of freedom (M).
  it.each([
    [1, 3.841],
    [4, 9.488],
    [10, 18.307],
  ])('95 %% point of chi-square with %d degrees: %d within 3 %% (M)', (freedom, value) => {
    expect(Math.abs(chiSquare95(freedom) / value - 1)).toBeLessThan(0.03);
  });

  it('gives a shared offset the answer of the full covariance, solved by hand', () => {
    // Two weighings on one scale, two on another whose offset has SD s: the generalised least
    // squares slope solves the 3 × 3 normal equations with the offset as a third unknown (ridge 1/s²).
    const s = 0.5;
    const observations: Observation[] = [
      { x: 0, y: 30, sd: 0.3 },
      { x: 14, y: 29.6, sd: 0.3 },
      { x: 28, y: 30.1, sd: 0.3, group: 'other scale', groupSd: s },
      { x: 42, y: 29.8, sd: 0.3, group: 'other scale', groupSd: s },
    ];
    const slope = ridgeSlope(observations, s);
    expect(fitLine(observations)!.slope).toBeCloseTo(slope, 10);
  });
});

/** Slope with the offset as a penalised unknown, by Gaussian elimination of the normal equations. */
function ridgeSlope(observations: readonly Observation[], s: number): number {
  const rows = observations.map(({ x, y, sd, group }) => ({
    design: [1, x, group === undefined ? 0 : 1],
    y,
    w: 1 / sd ** 2,
  }));
  const normal = [0, 1, 2].map((i) => [
    ...[0, 1, 2].map((j) => {
      const penalty = i === 2 && j === 2 ? 1 / s ** 2 : 0;
      return penalty + rows.reduce((sum, { design, w }) => sum + w * design[i]! * design[j]!, 0);
    }),
    rows.reduce((sum, { design, y, w }) => sum + w * design[i]! * y, 0),
  ]);
  for (let i = 0; i < 3; i += 1) {
    for (let j = 0; j < 3; j += 1) {
      if (i === j) continue;
      const factor = normal[j]![i]! / normal[i]![i]!;
      normal[j] = normal[j]!.map((value, k) => value - factor * normal[i]![k]!);
    }
  }
  return normal[1]![3]! / normal[1]![1]!;
}
