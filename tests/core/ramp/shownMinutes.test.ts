import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shownMinutes } from '../../../core/index.ts';
import { evenly, holds } from '../../support/laws.ts';

describe('minutes as they are shown', () => {
  test.each([
    [12.3, 12],
    [12.5, 12.5],
    [24.999999999, 25],
    [0.5, 0.5],
  ])('%f min reads %f min', (minutes, shown) => {
    expect(shownMinutes(minutes)).toBe(shown);
  });

  test('never pass the plan and lie less than half a minute under it', () => {
    holds(
      fc.property(evenly(0, 600), (minutes) => {
        const shown = shownMinutes(minutes);
        expect(shown).toBeLessThanOrEqual(minutes + 1e-6);
        expect(minutes - shown).toBeLessThan(0.5 + 1e-6);
        expect(Number.isInteger(shown * 2)).toBe(true);
      }),
      { seed: 1, numRuns: 500 },
    );
  });
});
