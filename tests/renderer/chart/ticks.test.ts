import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayTicks, valueTicks } from '../../../renderer/chart/ticks.ts';

describe('value ticks', () => {
  it('are round and lie inside', () => {
    expect(valueTicks(21.3, 26.9, 5)).toEqual([22, 24, 26]);
    expect(valueTicks(0, 1, 4)).toEqual([0, 0.25, 0.5, 0.75, 1]);
  });
  it('are few, in order and inside, for any span', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1000, max: 1000, noNaN: true }),
        fc.double({ min: 0.01, max: 1000, noNaN: true }),
        (low, span) => {
          const ticks = valueTicks(low, low + span, 5);
          expect(ticks.length).toBeLessThanOrEqual(7);
          for (const tick of ticks) {
            expect(tick).toBeGreaterThanOrEqual(low - span * 1e-6);
            expect(tick).toBeLessThanOrEqual(low + span * (1 + 1e-6));
          }
        },
      ),
      { seed: 1, numRuns: 500 },
    );
  });
});

describe('day ticks', () => {
  it('step in whole weeks over months', () => {
    expect(dayTicks('2025-01-01', '2025-03-01', 5)).toEqual([
      '2025-01-01',
      '2025-01-29',
      '2025-02-26',
    ]);
  });
  it('give one tick for one day', () => {
    expect(dayTicks('2025-01-01', '2025-01-01', 5)).toEqual(['2025-01-01']);
  });
});
