import { describe, expect, it } from 'vitest';
import { SCENARIOS } from './scenarios.ts';
import { calibrate } from './simulate.ts';

const DOGS = 2000;
const SEED = 7;

describe('calibration of the own maintenance energy over 2,000 simulated dogs', () => {
  for (const scenario of SCENARIOS.filter(({ modelHolds }) => modelHolds)) {
    it(`holds the truth in 87–93 % of dogs: ${scenario.name}`, () => {
      const row = calibrate(scenario, DOGS, SEED);
      expect(row.coverage).toBeGreaterThanOrEqual(87);
      expect(row.coverage).toBeLessThanOrEqual(93);
      expect(row.estimateError).toBeLessThan(row.formulaError);
    });
  }

  for (const scenario of SCENARIOS.filter(({ modelHolds }) => !modelHolds)) {
    it(`is nearer to the truth than the formula, and holds 80 % as logged, with: ${scenario.name}`, () => {
      const row = calibrate(scenario, 500, SEED);
      expect(row.estimateError).toBeLessThan(row.formulaError);
      expect(row.coverageAsLogged).toBeGreaterThanOrEqual(80);
    });
  }

  it('says that two visits two weeks apart do not yet tell more than the formula', () => {
    const short = SCENARIOS.find(({ days }) => days[1] === 14)!;
    expect(calibrate(short, 500, SEED).telling).toBeLessThan(5);
  });
});
