import { describe, expect, it } from 'vitest';
import { wilsonInterval } from '../../core/index.ts';

const Z95 = 1.959964;

// Newcombe 1998, Stat Med 17:857–872, Table I, method 3 (score without correction), 95 % (S: second
// hand, as reprinted in test suites of statistics libraries; the formula itself read there).
describe('Wilson’s interval against the published examples', () => {
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%i of %i: %f to %f', (count, of, low, high) => {
    const interval = wilsonInterval(count, of, Z95);
    expect(interval.low).toBeCloseTo(low, 4);
    expect(interval.high).toBeCloseTo(high, 4);
  });
});
