import { describe, expect, expectTypeOf, test } from 'vitest';
import { CALL_NAMES, type EveryCallIsNamed } from '../../electron/contract/callNames.ts';
import { contract } from '../../electron/contract/contract.ts';
import { LIMITS, limitSentence } from '../../electron/contract/limits.ts';
import { number } from '../../electron/contract/fields.ts';
import { visitFacts } from '../../electron/contract/records.ts';

describe('the contract', () => {
  test('names every call once', () => {
    expectTypeOf<EveryCallIsNamed>().toEqualTypeOf<true>();
    expect([...CALL_NAMES].sort()).toEqual(Object.keys(contract).sort());
  });

  test.each(Object.keys(LIMITS) as (keyof typeof LIMITS)[])(
    '%s refuses with its sentence',
    (name) => {
      const limit = LIMITS[name];
      const schema = number(limit);
      expect(schema.safeParse(limit.min).success).toBe(true);
      expect(schema.safeParse(limit.max).success).toBe(true);
      for (const bad of [
        limit.max + 1,
        limit.min - 1,
        Number.NaN,
        Infinity,
        '3',
        null,
        undefined,
      ]) {
        const parsed = schema.safeParse(bad);
        expect(parsed.success).toBe(false);
        expect(parsed.error?.issues[0]?.message).toBe(limitSentence(limit));
      }
    },
  );

  test('takes the footfalls of a limb once', () => {
    const limb = { limb: 'leftFore', touchDowns: [], liftOffs: [] };
    const { footfalls } = visitFacts().shape;
    expect(footfalls.safeParse([limb, { ...limb, limb: 'rightFore' }]).success).toBe(true);
    expect(footfalls.safeParse([limb, limb]).error?.issues[0]?.message).toBe(
      'Each limb can be timed once a visit.',
    );
  });
});
