import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  RED_FLAGS,
  screenForRunning,
  type Screening,
  type ScreeningInput,
} from '../../../core/index.ts';
import { type Injury, type LamenessClearance } from '../../../core/readiness/record.ts';
import { LIMBS } from '../../../core/training.ts';
import { fullRecords, GATES, READY, records, SOUND } from './inputs.ts';
import { holds } from '../../support/laws.ts';
import { expectToReadInAnyUnits } from '../../support/otherUnits.ts';

const runs = { seed: 1, numRuns: 1500 };
const OUTCOMES = ['ready to start', 'walking only', 'vet first'] as const;
const strictness = ({ outcome }: Screening): number => OUTCOMES.indexOf(outcome);
const codes = ({ reasons }: Screening): string[] => reasons.map(({ code }) => code);

type Worsen = readonly [string, (record: ScreeningInput) => ScreeningInput];

const CLEARED: LamenessClearance = {
  vet: 'Dr A. Invented',
  day: '2026-02-01',
  gait: 'trot',
  limb: 'rightFore',
  grade: 5,
  scope: 'Running in harness',
};
const SURGERY: Injury = {
  kind: 'surgery',
  structure: 'cranial cruciate ligament',
  side: 'left',
  day: '2026-01-10',
  done: 'Stabilised',
};

/** Each makes one thing worse and leaves the rest of the record as it is. */
const WORSE: readonly Worsen[] = [
  ...RED_FLAGS.map(({ id }): Worsen => [
    `sign ${id}`,
    (r) => ({ ...r, signs: [...(r.signs ?? []), id] }),
  ]),
  [
    'lame at walk',
    (r) => ({
      ...r,
      lamenessClearances: [],
      lameness: { ...r.lameness, walk: { ...SOUND, leftHind: 2 } },
    }),
  ],
  [
    'lame at trot',
    (r) => ({
      ...r,
      lamenessClearances: [],
      lameness: { ...r.lameness, trot: { ...SOUND, rightFore: 1 } },
    }),
  ],
  [
    'lame at trot in a limb the vet did not clear',
    (r) => ({
      ...r,
      lamenessClearances: [{ ...CLEARED, limb: 'leftFore' }],
      lameness: { ...r.lameness, trot: { ...SOUND, rightFore: 1 } },
    }),
  ],
  [
    'operated on in winter, without a clearance',
    (r) => ({ ...r, surgery: 'none', injuries: [...(r.injuries ?? []), SURGERY] }),
  ],
  ...(['joints', 'spine', 'heart'] as const).map((organ): Worsen => [
    `disease of the ${organ}, no consent`,
    (r) => ({ ...r, consent: undefined, disease: { ...r.disease, [organ]: 'yes' } }),
  ]),
  [
    'heat illness before, no consent',
    (r) => ({ ...r, consent: undefined, heatIllness: { had: 'yes', day: null } }),
  ],
  ['muscle lost, moderate', (r) => ({ ...r, muscle: 'moderate loss' })],
  ['muscle lost, severe', (r) => ({ ...r, muscle: 'severe loss' })],
  ['surgery not cleared', (r) => ({ ...r, surgery: 'not cleared' })],
  ['short nose without clearance', (r) => ({ ...r, shortNosed: true, airwayClearance: false })],
  [
    'airway disease without clearance',
    (r) => ({ ...r, airwayDisease: true, airwayClearance: false }),
  ],
  ['walk base failed', (r) => ({ ...r, walkBase: 'failed' })],
  ['eight months old', (r) => ({ ...r, ageMonths: 8, radiographicClearance: false })],
  ['very thin', (r) => ({ ...r, bcs: 1 })],
];

/** Each takes one thing away that was known. */
const UNKNOWN: readonly Worsen[] = [
  ['age', ({ ageMonths: _, birthDay: __, ...r }) => r],
  ['body condition', ({ bcs: _, ...r }) => r],
  ['lameness', ({ lameness: _, ...r }) => r],
  ['walk', (r) => ({ ...r, lameness: { trot: SOUND } })],
  ['trot', (r) => ({ ...r, lameness: { walk: SOUND } })],
  ['one limb', (r) => ({ ...r, lameness: { walk: { ...SOUND, leftFore: null }, trot: SOUND } })],
  ['signs', ({ signs: _, ...r }) => r],
  ['walk base', ({ walkBase: _, ...r }) => r],
  ['history', (r) => ({ ...r, historyAsked: false })],
];

describe('a bad sign', () => {
  it.each(WORSE)('never makes the outcome milder: %s', (_, worsen) => {
    holds(
      fc.property(fc.oneof(records, fullRecords), (record) => {
        // Overrides are set aside: one of them may just answer the new finding.
        const bare = { ...record, overrides: [] };
        const before = screenForRunning(bare);
        const after = screenForRunning(worsen(bare));
        expect(strictness(after)).toBeGreaterThanOrEqual(strictness(before));
        expectToReadInAnyUnits(after.reasons);
      }),
      runs,
    );
  });

  it.each(WORSE)('keeps a dog with nothing else against it from running: %s', (_, worsen) => {
    expect(screenForRunning(READY).outcome).toBe('ready to start');
    expect(screenForRunning(worsen(READY)).outcome).not.toBe('ready to start');
  });

  it('does not hide the others: all reasons stand at once', () => {
    holds(
      fc.property(fullRecords, fc.subarray([...WORSE], { minLength: 2 }), (record, worse) => {
        const clean = { ...record, overrides: [] };
        const worst = worse.reduce<ScreeningInput>((r, [, worsen]) => worsen(r), clean);
        const together = codes(screenForRunning(worst));
        for (const [, worsen] of worse) {
          const alone = codes(screenForRunning(worsen(READY)));
          const own = alone.filter((code) => GATES.includes(code));
          expect(together).toEqual(expect.arrayContaining(own));
        }
      }),
      runs,
    );
  });
});

const START_ORDER = ['conditioned', 'unconditioned', 'post-injury'];
/** Higher is stricter; a dog that may not start has no level. */
const level = ({ recommendedStart }: Screening): number =>
  recommendedStart === null ? START_ORDER.length : START_ORDER.indexOf(recommendedStart);

/** Each adds to what is told, and takes nothing back. */
const MORE: readonly Worsen[] = [
  ...(['walk', 'trot'] as const).flatMap((gait) =>
    LIMBS.map((limb): Worsen => [
      `one grade more at ${gait}, ${limb}`,
      (r) => {
        const grades = { ...SOUND, ...r.lameness?.[gait] };
        const grade = Math.min(5, (grades[limb] ?? 0) + 1);
        return { ...r, lameness: { ...r.lameness, [gait]: { ...grades, [limb]: grade } } };
      },
    ]),
  ),
  [
    'another injury',
    (r) => ({ ...r, injuries: [...(r.injuries ?? []), { ...SURGERY, kind: 'injury' }] }),
  ],
  [
    'an injury without its day',
    (r) => ({ ...r, injuries: [...(r.injuries ?? []), { ...SURGERY, kind: 'injury', day: null }] }),
  ],
  ['a clearance taken back', (r) => ({ ...r, lamenessClearances: r.lamenessClearances?.slice(1) })],
  ['medicine', (r) => ({ ...r, medicine: 'An anti-inflammatory' })],
  ['a thinner thigh', (r) => ({ ...r, thighGirthCm: { leftHind: 24, rightHind: 30 } })],
];

describe('one finding more', () => {
  it.each(MORE)('makes neither outcome, review nor level milder: %s', (_, worsen) => {
    holds(
      fc.property(fullRecords, (record) => {
        // Whoever tells something of the history has asked for it: that is an answer, no finding.
        const lameness = { walk: SOUND, trot: SOUND, ...record.lameness };
        const bare = { ...record, historyAsked: true, lameness };
        const full = { ...bare, overrides: [] };
        const [before, after] = [screenForRunning(full), screenForRunning(worsen(full))];
        expect(strictness(after)).toBeGreaterThanOrEqual(strictness(before));
        expect(OUTCOMES.indexOf(after.found)).toBeGreaterThanOrEqual(
          OUTCOMES.indexOf(before.found),
        );
        expect(level(after)).toBeGreaterThanOrEqual(level(before));
      }),
      { seed: 2, numRuns: 300 },
    );
  });
});

describe('what is not known', () => {
  it.each(UNKNOWN)('keeps the dog walking and says what would change it: %s', (_, forget) => {
    const { outcome, reasons } = screenForRunning(forget(READY));
    expect(outcome).toBe('walking only');
    const gate = reasons.find((reason) => reason.gate === 'walking only');
    expect(gate?.change).toMatch(/\w/);
    expect(gate?.mark).toBe('D');
  });

  it('an empty record is walking only', () => {
    expect(screenForRunning({}).outcome).toBe('walking only');
  });
});

describe('the reasons', () => {
  it('are ranked: emergencies, vet first, walking only, notes', () => {
    const emergencies = RED_FLAGS.filter(({ emergency }) => emergency).map(
      ({ id }) => `sign-${id}`,
    );
    holds(
      fc.property(fc.oneof(records, fullRecords), (record) => {
        const ranks = screenForRunning(record).reasons.map(({ code, gate }) =>
          emergencies.includes(code) ? 0 : ['vet first', 'walking only', 'note'].indexOf(gate) + 1,
        );
        expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
      }),
      runs,
    );
  });

  it('decide the outcome: the strictest gate that was not set aside', () => {
    holds(
      fc.property(fc.oneof(records, fullRecords), (record) => {
        const screening = screenForRunning(record);
        const open = screening.reasons.filter((reason) => reason.overriddenBecause === null);
        const strictest = open.some(({ gate }) => gate === 'vet first')
          ? 2
          : open.some(({ gate }) => gate === 'walking only')
            ? 1
            : 0;
        expect(strictness(screening)).toBe(strictest);
        expect(screening.recommendedStart === null).toBe(strictest > 0);
      }),
      runs,
    );
  });

  it('each say how sure we are, name a source and stand once', () => {
    holds(
      fc.property(fc.oneof(records, fullRecords), (record) => {
        const screening = screenForRunning(record);
        expect(new Set(codes(screening)).size).toBe(screening.reasons.length);
        for (const { evidence, mark, sources, text, gate, change } of screening.reasons) {
          expect(evidence).toMatch(/^[A-D]$/);
          expect(mark).not.toBe('');
          expect(sources.length).toBeGreaterThan(0);
          expect(text).toMatch(/\.$/);
          if (gate !== 'note') expect(change).toMatch(/\w/);
        }
      }),
      runs,
    );
  });

  it('depend on nothing but the record', () => {
    holds(
      fc.property(records, (record) => {
        expect(screenForRunning(structuredClone(record))).toEqual(screenForRunning(record));
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});

describe('setting a rule aside', () => {
  it('needs a written reason', () => {
    holds(
      fc.property(fullRecords, fc.constantFrom('', ' ', '\n\t'), (record, blank) => {
        const overrides = GATES.map((code) => ({ code, reason: blank }));
        const screening = screenForRunning({ ...record, overrides });
        expect(screening).toEqual(screenForRunning({ ...record, overrides: [] }));
      }),
      runs,
    );
  });

  it('sets aside that rule and no other', () => {
    holds(
      fc.property(fullRecords, fc.constantFrom(...GATES), (record, code) => {
        const reason = 'Judged so.';
        const { reasons } = screenForRunning({ ...record, overrides: [{ code, reason }] });
        const setAside = reasons.filter(({ overriddenBecause }) => overriddenBecause !== null);
        for (const entry of setAside) {
          expect(entry).toMatchObject({ code, overriddenBecause: reason });
        }
      }),
      runs,
    );
  });

  it('never touches an emergency without a consent in force with vet, day and scope', () => {
    const emergencies = RED_FLAGS.filter(({ emergency }) => emergency).map(({ id }) => id);
    holds(
      fc.property(fullRecords, fc.constantFrom(...emergencies), (record, sign) => {
        const overrides = [{ code: `sign-${sign}`, reason: 'Judged so.' }];
        const screening = screenForRunning({ ...record, signs: [sign], overrides });
        const { given, vet = '', day, scope = '', expiryDay } = record.consent!;
        const holds =
          given &&
          vet !== '' &&
          scope !== '' &&
          day != null &&
          day <= record.day! &&
          (expiryDay == null || expiryDay >= record.day!);
        const found = screening.reasons.find(({ code }) => code === `sign-${sign}`);
        expect(found?.overriddenBecause).toBe(holds ? 'Judged so.' : null);
        expect(found?.change).toContain('consent in force');
      }),
      runs,
    );
  });
});
