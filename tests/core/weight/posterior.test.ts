import { describe, expect, it } from 'vitest';
import { posteriorOf } from '../../../core/weight/posterior.ts';

describe('the posterior', () => {
  const logMid = Math.log(1000);

  it('is the prior where the record says nothing', () => {
    const at = posteriorOf({ logMid, logSd: 0.29, mean: 0, sd: 1e9 });
    expect(at(0.5)).toBeCloseTo(1000, 0);
    expect(at(0.95)).toBeCloseTo(1000 * Math.exp(1.6449 * 0.29), 0);
  });

  it('is the record where the prior says nothing, however exact the record', () => {
    for (const sd of [50, 1, 0.01]) {
      const at = posteriorOf({ logMid, logSd: 20, mean: 800, sd });
      // A flat prior in the logarithm is not flat in kcal: it shifts the middle by sd²/mean.
      expect(Math.abs(at(0.5) - 800)).toBeLessThan(0.02 * sd + (1.1 * sd * sd) / 800);
      expect((at(0.95) - at(0.05)) / (2 * 1.6449 * sd)).toBeCloseTo(1, 1);
    }
  });

  it('has quantiles in order', () => {
    const at = posteriorOf({ logMid, logSd: 0.29, mean: 700, sd: 200 });
    const shares = [0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99].map(at);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
});
