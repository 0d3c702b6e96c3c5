import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLine, type LineFit, type Observation } from '../../../core/weight/line.ts';
import { addTo, lineFrom, momentsOf } from '../../../core/weight/line.ts';
import { holds } from '../../support/laws.ts';

const observation: fc.Arbitrary<Observation> = fc.record({
  x: fc.integer({ min: 0, max: 400 }),
  y: fc.integer({ min: 50, max: 600 }).map((tenths) => tenths / 10),
  sd: fc.integer({ min: 1, max: 60 }).map((percent) => percent / 100),
  group: fc.constantFrom(undefined, null, 'other scale', 'harness on'),
});
const observations = (least: number) =>
  fc
    .array(observation, { minLength: least, maxLength: 10 })
    .map((list) => list.map((one) => ({ ...one, groupSd: 0.5 })));
const RUNS = { seed: 1, numRuns: 400 };

function expectAlike(found: LineFit | null, expected: LineFit | null): void {
  if (found === null || expected === null) {
    expect(found).toBe(expected);
    return;
  }
  for (const key of Object.keys(expected) as (keyof LineFit)[]) {
    const scale = Math.max(1, Math.abs(expected[key]));
    expect(found[key] / scale).toBeCloseTo(expected[key] / scale, 6);
  }
}

describe('the line behind sums', () => {
  it('is that of the others once one is taken away, and the old one once it is back', () => {
    holds(
      fc.property(observations(3), fc.nat(), (list, at) => {
        const index = at % list.length;
        const moments = momentsOf(list);
        addTo(moments, list[index]!, -1);
        expectAlike(lineFrom(moments), fitLine(list.toSpliced(index, 1)));
        addTo(moments, list[index]!, 1);
        expectAlike(lineFrom(moments), fitLine(list));
      }),
      RUNS,
    );
  });

  it('does not depend on where days and weights are counted from', () => {
    holds(
      fc.property(observations(2), (list) => {
        const far = list.map((one) => ({ ...one, x: one.x + 2 ** 40, y: one.y + 2 ** 30 }));
        const [near, there] = [fitLine(list), fitLine(far)];
        expect(there === null).toBe(near === null);
        expect(there?.slope ?? 0).toBeCloseTo(near?.slope ?? 0, 5);
        expect((there?.slopeSd ?? 1) / (near?.slopeSd ?? 1)).toBeCloseTo(1, 5);
      }),
      RUNS,
    );
  });

  it('is none through one day alone, also where another day was taken away', () => {
    holds(
      fc.property(
        fc.array(observation, { minLength: 1, maxLength: 10 }),
        fc.integer({ min: 1, max: 4000 }),
        (list, x) => {
          const other = { x: 0, y: 20, sd: 0.2 };
          const oneDay = list.map((one) => ({ ...one, x, sd: one.sd / 100 }));
          expect(fitLine(oneDay)).toBeNull();
          const moments = momentsOf([other, ...oneDay]);
          expect(lineFrom(moments)).not.toBeNull();
          addTo(moments, other, -1);
          expect(lineFrom(moments)).toBeNull();
        },
      ),
      RUNS,
    );
    expect(fitLine([])).toBeNull();
  });

  // Through 0, 1, 0 the line is even at 1/3; the squares sum to 6/9, of errors of 0.3 to 7.41, of
  // 0.43 to 3.78. The 95 % point of chi-square with one degree of freedom is 3.84.
  it('through three points is widened where they scatter more than 95 of 100 such do', () => {
    const through = (sd: number) => fitLine([0, 1, 0].map((y, x) => ({ x, y, sd })))!;
    expect(through(0.3).meanY).toBeCloseTo(1 / 3, 9);
    expect(through(0.3).widened).toBeCloseTo(Math.sqrt(7.407), 3);
    expect(through(0.43).widened).toBe(1);
    // Either of two points fits.
    expect(
      fitLine([
        { x: 0, y: 0, sd: 0.01 },
        { x: 1, y: 9, sd: 0.01 },
      ])!.widened,
    ).toBe(1);
  });
});
