import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as units from '../../core/units.ts';
import { evenly, holds } from '../support/laws.ts';

const PAIRS = [
  ['kg and lb', units.lbFromKg, units.kgFromLb],
  ['kcal and kJ', units.kjFromKcal, units.kcalFromKj],
  ['km and miles', units.milesFromKm, units.kmFromMiles],
  ['°C and °F', units.fahrenheitFromCelsius, units.celsiusFromFahrenheit],
  ['cm and inches', units.inchesFromCm, units.cmFromInches],
  ['g and oz', units.ouncesFromGrams, units.gramsFromOunces],
] as const;

describe('units', () => {
  it.each(PAIRS)('%s come back as they went', (_, there, back) => {
    holds(
      fc.property(evenly(-200, 20000), (value) => {
        expect(Math.abs(back(there(value)) - value)).toBeLessThan(1e-9 * (1 + Math.abs(value)));
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  // International pound and mile of 1959, thermochemical calorie: exact by definition (S).
  it('have the values of their definitions (S)', () => {
    expect(units.kgFromLb(1)).toBe(0.45359237);
    expect(units.kmFromMiles(1)).toBe(1.609344);
    expect(units.kjFromKcal(1)).toBe(4.184);
    expect(units.fahrenheitFromCelsius(100)).toBe(212);
    expect(units.kgFromLb(62)).toBeCloseTo(28.12, 2);
  });
});
