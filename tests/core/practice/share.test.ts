import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shareOf, wilsonInterval } from '../../../core/index.ts';
import { holds } from '../../support/laws.ts';

const trials = fc
  .integer({ min: 1, max: 400 })
  .chain((of) => fc.tuple(fc.integer({ min: 0, max: of }), fc.constant(of)));

describe('the interval of a share', () => {
  it('holds the share, stays inside 0 to 1, and turns round with the question', () => {
    holds(
      fc.property(trials, ([count, of]) => {
        const { low, high } = wilsonInterval(count, of);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(low).toBeLessThanOrEqual(count / of);
        expect(high).toBeGreaterThanOrEqual(count / of);
        expect(wilsonInterval(of - count, of).low).toBeCloseTo(1 - high, 12);
      }),
    );
  });

  it('narrows as trials are added, and never to nothing for none of a few', () => {
    const width = (count: number, of: number) => {
      const { low, high } = wilsonInterval(count, of);
      return high - low;
    };
    expect(width(50, 100)).toBeLessThan(width(5, 10));
    expect(wilsonInterval(0, 3).high).toBeGreaterThan(0.4);
    for (const of of [3, 5, 11, 13, 14]) {
      expect([wilsonInterval(0, of).low, wilsonInterval(of, of).high]).toEqual([0, 1]);
    }
  });

  it('says in per cent what it rests on, and nothing of no dogs', () => {
    expect(shareOf('Reached', 0, 0)).toBeNull();
    const share = shareOf('Reached', 3, 4)!;
    expect(share.mid).toBe(75);
    expect(share.figure).toMatchObject({ unit: '%', sources: ['wilson1927', 'newcombe1998'] });
    expect(share.low).toBeLessThan(40);
    const { low, high } = wilsonInterval(3, 4);
    expect([share.low / 100, share.high / 100]).toEqual([
      expect.closeTo(low, 12),
      expect.closeTo(high, 12),
    ]);
    expect(share.figure.inputs.map(({ value }) => value)).toEqual([3, 4]);
    expect(share.figure.notes.join()).toContain('few dogs');
  });

  it('refuses more counted than there were', () => {
    expect(() => wilsonInterval(3, 2)).toThrow(/count must be from 0 to 2/);
    expect(() => wilsonInterval(0, 0)).toThrow(/of must be from 1/);
  });
});
