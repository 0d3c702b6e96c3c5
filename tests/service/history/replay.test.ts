import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { blankClient, blankDog, blankVisit } from '../../../electron/contract/records/forms.ts';
import { visitFactsOf } from '../../../electron/contract/records/facts.ts';
import type { FieldChange } from '../../../electron/contract/history/historyDiff.ts';
import { fieldsOf } from '../../../electron/contract/history/historyDiff.ts';
import { LIMBS, SURGERY_STATES } from '../../../core/index.ts';
import {
  GAITS,
  INJURY_KINDS,
  PALPATION_REGIONS,
  RISES,
  SIDES,
  YES_NO,
  type PalpationRegion,
} from '../../../core/readiness/record.ts';
import type { VisitFacts } from '../../../electron/contract/records.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { evenly, holdsAsync } from '../../support/laws.ts';

// What core can assess: a visit it cannot is refused, whatever its history.
const kg = evenly(5, 60);
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
const name = fc.constantFrom('Dry food', 'Wet food', 'Biscuits', '=1+1', 'Été');
const words = fc.string({ maxLength: 12, unit: 'grapheme' }).map((text) => text.trim());
const grade = maybe(fc.integer({ min: 0, max: 5 }));
const grades = fc.record({ leftFore: grade, rightFore: grade, leftHind: grade, rightHind: grade });
const seconds = fc.array(evenly(0, 60), { maxLength: 3 });

const food: fc.Arbitrary<VisitFacts['diet'][number]> = fc.record({
  name,
  treat: fc.boolean(),
  kcalPer100g: evenly(5, 950),
  gramsPerDay: evenly(0, 400),
  gramsPerCup: maybe(fc.integer({ min: 1, max: 1000 })),
  fixedGrams: fc.boolean(),
  energyFrom: fc.constantFrom('declared' as const, 'label' as const),
  label: maybe(
    fc.record({
      proteinPct: fc.nat(100),
      fatPct: fc.nat(100),
      fibrePct: fc.nat(100),
      moisturePct: fc.nat(100),
      ashPct: fc.nat(100),
    }),
  ),
});

const measurement: fc.Arbitrary<VisitFacts['measurements'][number]> = fc.oneof(
  fc.record({
    kind: fc.constant('joint angle' as const),
    limb: fc.constantFrom(...LIMBS),
    joint: fc.constant('stifle' as const),
    movement: fc.constantFrom('flexion' as const, 'extension' as const),
    value: fc.integer({ min: 0, max: 270 }),
    note: words,
  }),
  fc.record({
    kind: fc.constant('thigh girth' as const),
    limb: fc.constantFrom(...LIMBS),
    value: evenly(5, 100),
    note: words,
  }),
);

const day = fc.constantFrom('2025-07-01', '2026-02-02');
const yesNo = maybe(fc.constantFrom(...YES_NO));
const clearance: fc.Arbitrary<VisitFacts['lamenessClearances'][number]> = fc.record({
  vet: name,
  day,
  gait: fc.constantFrom(...GAITS),
  limb: fc.constantFrom(...LIMBS),
  grade: fc.integer({ min: 0, max: 5 }),
  scope: words,
});
const injury: fc.Arbitrary<VisitFacts['injuries'][number]> = fc.record({
  kind: fc.constantFrom(...INJURY_KINDS),
  structure: name,
  side: fc.constantFrom(...SIDES),
  day: maybe(day),
  done: words,
});
/** What was told and found beside gait, weight and signs. */
const told = {
  injuries: fc.array(injury, { maxLength: 3 }),
  diagnosis: words,
  disease: fc.record({ joints: yesNo, spine: yesNo, heart: yesNo, words }),
  heatIllness: fc.record({ had: yesNo, day: maybe(day) }),
  lamenessClearances: fc.array(clearance, { maxLength: 3 }),
  palpation: fc.record(
    Object.fromEntries(
      PALPATION_REGIONS.map((region) => [region, maybe(fc.integer({ min: 0, max: 4 }))]),
    ) as Record<PalpationRegion, fc.Arbitrary<number | null>>,
  ),
  sitToStand: maybe(fc.constantFrom(...RISES)),
  questionnaires: fc.array(fc.record({ name, day, total: fc.nat(100) }), { maxLength: 3 }),
  exercises: maybe(fc.uniqueArray(fc.constantFrom('sit-to-stand', 'paw-lifts'))),
};

/** One amendment: some facts, as if some fields of the form had been typed anew. */
const amendment: fc.Arbitrary<Partial<VisitFacts>> = fc.record(
  {
    weightKg: maybe(kg),
    bcs: maybe(fc.integer({ min: 1, max: 9 })),
    lamenessWalk: grades,
    lamenessTrot: grades,
    trotLamenessAssessed: fc.boolean(),
    gaitNote: words,
    measurements: fc.array(measurement, { maxLength: 4 }),
    footfalls: fc
      .uniqueArray(fc.constantFrom(...LIMBS), { maxLength: 4 })
      .chain((limbs) =>
        fc.tuple(
          ...limbs.map((limb) =>
            fc.record({ limb: fc.constant(limb), touchDowns: seconds, liftOffs: seconds }),
          ),
        ),
      ),
    signs: fc.array(fc.constantFrom('cough', 'collapse', 'fever'), { maxLength: 4 }),
    surgery: fc.constantFrom(...SURGERY_STATES),
    ...told,
    consent: fc.record({
      given: fc.boolean(),
      vet: words,
      day: maybe(fc.constantFrom('2026-01-01', '2026-02-02')),
      scope: words,
      expiryDay: fc.constant(null),
    }),
    overrides: fc.array(
      fc.record({ code: fc.constantFrom('lameness-trot', 'senior'), reason: name }),
      { maxLength: 3 },
    ),
    diet: fc.array(food, { maxLength: 4 }),
    mealsPerDay: fc.integer({ min: 1, max: 6 }),
    notes: words,
  },
  { requiredKeys: [] },
);

async function newVisit(desk: TestDesk) {
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Dana Owner' },
    dog: { ...blankDog('female'), name: 'Rusk', birthDay: '2021-05-01' },
  });
  const visit = blankVisit(dog.id, '2026-03-02');
  return (await desk.ok('visits/save', { id: null, visit, plan: null, food: null })).visit;
}

type Shown = ReadonlyMap<string, unknown>;
/** The fields of a state that hold something, which is what a change can tell of. */
const shown = (facts: VisitFacts): Shown =>
  new Map(
    fieldsOf('visit', facts)
      .filter(({ measure }) => measure !== 'order')
      .filter(({ value }) => value !== null && value !== '' && value !== false)
      .map(({ path, value }) => [path, value]),
  );

function undone(state: Shown, changes: readonly FieldChange[]): Shown {
  const next = new Map(state);
  for (const { path, measure, before } of changes) {
    if (measure === 'order') continue;
    if (before === null || before === '' || before === false) next.delete(path);
    else next.set(path, before);
  }
  return next;
}

test('history replayed backwards gives every earlier state exactly', async () => {
  const desk = await openOwn();
  const raw = new BetterSqlite3(join(desk.folder, 'trotwell.sqlite'), { readonly: true });
  const kept = raw.prepare('SELECT before FROM history WHERE record_id = ? ORDER BY id').pluck();
  let steps = 0;

  await holdsAsync(
    fc.asyncProperty(fc.array(amendment, { minLength: 1, maxLength: 8 }), async (amendments) => {
      let stored = await newVisit(desk);
      const states = [visitFactsOf(stored)];
      for (const facts of amendments) {
        const saved = await desk.ok('visits/save', {
          id: stored.id,
          basedOn: stored.revision,
          reason: 'Put right.',
          visit: { ...visitFactsOf(stored), ...facts },
          plan: null,
          food: null,
        });
        if (saved.visit.revision !== stored.revision) states.push(visitFactsOf(saved.visit));
        stored = saved.visit;
      }
      expect(stored.revision).toBe(states.length);

      // The complete states, as they were kept.
      const befores = kept.all(stored.id).map((json) => JSON.parse(json as string) as VisitFacts);
      expect([...befores, visitFactsOf(stored)]).toEqual(states);

      // And the same from the present alone, by taking back what the entries tell.
      const entries = await desk.ok('history/list', { kind: 'visit', recordId: stored.id });
      expect(entries).toHaveLength(befores.length);
      let state = shown(visitFactsOf(stored));
      for (const [index, { changes }] of [...entries.entries()].reverse()) {
        expect(changes.length).toBeGreaterThan(0);
        state = undone(state, changes);
        expect(state).toEqual(shown(states[index]!));
        steps++;
      }
    }),
    { seed: 5, numRuns: 80 },
  );
  raw.close();
  console.log(`History: ${steps} amendments replayed backwards.`);
  expect(steps).toBeGreaterThan(200);
}, 120_000);
