import fc from 'fast-check';
import { expect, it } from 'vitest';
import { lastMeasured, presentDue, presentLine, type LineInput } from '../../../core/index.ts';
import { holds } from '../../support/laws.ts';

const DAY = '2026-03-31';
const day = fc.integer({ min: 1, max: 30 }).map((n) => `2026-0${3 + (n % 2)}-${10 + (n % 20)}`);
const kg = fc.integer({ min: 200, max: 400 }).map((tenths) => tenths / 10);

const visit = fc.record({
  day,
  weightKg: fc.option(kg),
  bcs: fc.option(fc.integer({ min: 1, max: 9 })),
  foodGoal: fc.constantFrom('hold' as const, 'lose' as const),
  targetWeightKg: fc.constant(null),
  weighingMethod: fc.constant('same scale' as const),
  scaleStepKg: fc.constant(0.1),
  consent: fc.constant({ given: false, expiryDay: null }),
});
const byDay = <T extends { readonly day: string }>(entries: readonly T[]): T[] =>
  entries.toSorted((a, b) => a.day.localeCompare(b.day));
const record: fc.Arbitrary<LineInput> = fc.record({
  dog: fc.constant({ birthDay: '2020-05-01', adultWeightKg: null }),
  visits: fc.array(visit, { maxLength: 6 }).map(byDay),
  weighings: fc.array(fc.record({ day, weightKg: kg }), { maxLength: 6 }).map(byDay),
  foodDecisions: fc.constant([]),
  day: fc.constant(DAY),
});

it('what the list of dogs shows is what the present state says, of visits past and to come', () => {
  holds(
    fc.property(record, (input) => {
      const { weight, bcs } = presentLine(input);
      expect(lastMeasured(input)).toEqual({ kg: weight?.kg ?? null, bcs });
    }),
  );
});

it('when a dog is asked for next rests on nothing before its last visit with a weight', () => {
  holds(
    fc.property(record, (input) => {
      const { weighDay, consent } = presentLine(input);
      const by = <T extends { readonly day: string }>(of: readonly T[]) =>
        of.filter((entry) => entry.day <= DAY);
      const from = (days: readonly string[]) => days.at(-1) ?? '';
      const weighed = by(input.visits).filter(({ weightKg }) => weightKg !== null);
      const lastVisit = from(weighed.map((entry) => entry.day));
      const lastWeighing = from(by(input.weighings ?? []).map((entry) => entry.day));
      const latest = {
        ...input,
        visits: input.visits.filter((entry) => entry.day >= lastVisit),
        weighings: (input.weighings ?? []).filter((entry) => entry.day >= lastWeighing),
      };
      expect(presentDue(latest)).toEqual({ weighDay, consent });
    }),
  );
});
