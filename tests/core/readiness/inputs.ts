import fc from 'fast-check';
import { LIMBS, MUSCLE_CONDITIONS, RED_FLAGS, type ScreeningInput } from '../../../core/index.ts';
import {
  GAITS,
  INJURY_KINDS,
  SIDES,
  YES_NO,
  type LamenessClearance,
} from '../../../core/readiness/record.ts';

export const DAY = '2026-03-02';
export const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 } as const;

/** Everything known and nothing against running. */
export const READY: ScreeningInput = {
  day: DAY,
  ageMonths: 40,
  weightKg: 22,
  adultWeightKg: 22,
  bcs: 5,
  lameness: { walk: SOUND, trot: SOUND },
  signs: [],
  historyAsked: true,
  surgery: 'none',
  shortNosed: false,
  airwayDisease: false,
  walkBase: 'passed',
  conditioning: 'conditioned',
  consent: {
    given: true,
    vet: 'Dr A. Invented',
    day: '2026-02-01',
    scope: 'Running in harness',
    expiryDay: '2026-12-31',
  },
};

const grade = fc.constantFrom(null, 0, 0, 0, 1, 3);
const limbs = fc.record({ leftFore: grade, rightFore: grade, leftHind: grade, rightHind: grade });
const yesNo = fc.constantFrom(null, ...YES_NO);
const girth = fc.integer({ min: 24, max: 28 });
const clearance: fc.Arbitrary<LamenessClearance> = fc.record({
  vet: fc.constantFrom('', 'Dr A. Invented'),
  day: fc.constantFrom('2026-02-01', '2026-04-01'),
  gait: fc.constantFrom(...GAITS),
  limb: fc.constantFrom(...LIMBS),
  grade: fc.integer({ min: 0, max: 5 }),
  scope: fc.constant('Running in harness'),
});
/** What is told of the past; most of the time nothing. */
const past = {
  lamenessClearances: fc.array(clearance, { maxLength: 3 }),
  injuries: fc.array(
    fc.record({
      kind: fc.constantFrom(...INJURY_KINDS),
      structure: fc.constantFrom('cranial cruciate ligament', 'iliopsoas'),
      side: fc.constantFrom(...SIDES),
      day: fc.constantFrom(null, '2020-05-01', '2025-02-02', '2025-06-01', '2026-02-01'),
      done: fc.constant(''),
    }),
    { maxLength: 2 },
  ),
  thighGirthCm: fc.record({ leftHind: girth, rightHind: girth }),
  disease: fc.record({ joints: yesNo, spine: yesNo, heart: yesNo }),
  heatIllness: fc.record({ had: yesNo, day: fc.constantFrom(null, '2024-07-01') }),
  medicine: fc.constantFrom('', 'An anti-inflammatory'),
  muscle: fc.constantFrom(...MUSCLE_CONDITIONS),
};
/** Parts of the past, none of them in half of the records. */
const pasts = fc.oneof(fc.constant({}), fc.record(past, { requiredKeys: [] }));
const signIds = RED_FLAGS.map(({ id }) => id as string);

/** Codes that close a gate, for overrides. */
export const GATES: readonly string[] = [
  ...signIds.map((id) => `sign-${id}`),
  'signs-not-asked',
  'history-not-asked',
  'lameness-walk',
  'lameness-trot',
  'walk-not-seen',
  'trot-not-seen',
  'surgery',
  'airway',
  'lameness-walk-cleared',
  'lameness-trot-cleared',
  'disease-joints',
  'disease-spine',
  'disease-heart',
  'heat-illness',
  'muscle-lost',
  'bcs-missing',
  'bcs-high',
  'bcs-low',
  'age-missing',
  'age-growth',
  'walk-base',
  'goal-limit',
  'goal-long',
];

/** Any record: parts may be missing. */
export const records: fc.Arbitrary<ScreeningInput> = fc
  .record(
    {
      day: fc.constant(DAY),
      ageMonths: fc.integer({ min: 2, max: 180 }),
      weightKg: fc.integer({ min: 3, max: 70 }),
      adultWeightKg: fc.integer({ min: 3, max: 70 }),
      bcs: fc.integer({ min: 1, max: 9 }),
      neuteredAtMonths: fc.integer({ min: 2, max: 40 }),
      shortNosed: fc.boolean(),
      airwayDisease: fc.boolean(),
      airwayClearance: fc.boolean(),
      lameness: fc.record({ walk: limbs, trot: limbs }),
      signs: fc.subarray(signIds, { maxLength: 3 }),
      surgery: fc.constantFrom('none', 'cleared in writing', 'not cleared'),
      radiographicClearance: fc.boolean(),
      historyAsked: fc.boolean(),
      goalMinutes: fc.integer({ min: 1, max: 240 }),
      longRunClearance: fc.boolean(),
      walkBase: fc.constantFrom('passed', 'failed', 'not tested'),
      conditioning: fc.constantFrom('conditioned', 'unconditioned', 'post-injury'),
      consent: fc.record({
        given: fc.boolean(),
        vet: fc.constantFrom('', 'Dr A. Invented'),
        day: fc.constantFrom(null, '2026-02-01', '2026-04-01'),
        scope: fc.constantFrom('', 'Massage'),
        expiryDay: fc.constantFrom(null, '2026-03-01', '2026-12-31'),
      }),
      overrides: fc.array(
        fc.record({
          code: fc.constantFrom(...GATES),
          reason: fc.constantFrom('', ' ', 'Seen by the vet.'),
        }),
        { maxLength: 6 },
      ),
    },
    { requiredKeys: ['day'] },
  )
  .chain((record) => pasts.map((told) => ({ ...record, ...told })));

/** Records in which everything is known: most of them close a gate or none. */
export const fullRecords: fc.Arbitrary<ScreeningInput> = records.map((record) => ({
  ...READY,
  ...record,
}));
