import { describe, expect, it } from 'vitest';
import {
  ageGate,
  expectedLifeYears,
  isSenior,
  RED_FLAGS,
  screenForRunning,
  type ScreeningInput,
} from '../../core/training.ts';

// Marks: S read in the source, CP common practice, D our decision.

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 } as const;

/** A dog with nothing against it. */
const fit: ScreeningInput = {
  day: '2026-03-02',
  ageMonths: 40,
  weightKg: 24,
  adultWeightKg: 24,
  bcs: 5,
  lameness: { walk: SOUND, trot: SOUND },
  signs: [],
  walkBase: 'passed',
  surgery: 'none',
  conditioning: 'conditioned',
  consent: { given: true, vet: 'Dr Vance', day: '2026-02-01', scope: 'running plan' },
};
const outcome = (changes: Partial<ScreeningInput> = {}): string =>
  screenForRunning({ ...fit, ...changes }).outcome;

describe('age', () => {
  // 12 months; 18 from 20 kg (CP; sport rules 12–18 months, S; the line at 20 kg D, size classes of
  // Hart 2020, S); from 40 kg 24 advised (D).
  it.each([
    [8, 12, 12],
    [19.9, 12, 12],
    [20, 18, 18],
    [39.9, 18, 18],
    [40, 18, 24],
    [70, 18, 24],
  ])('%d kg: not before %i months, %i advised', (kg, required, advised) => {
    expect(ageGate(kg)).toEqual({ requiredMonths: required, advisedMonths: advised });
  });

  // Early-neutered: plates close later (Salmeri 1991, S): 6 months more advised, at most 24 (D).
  it.each([
    [15, 18],
    [30, 24],
    [60, 24],
  ])('%i kg neutered early: %i months advised', (kg, advised) => {
    expect(ageGate(kg, 6).advisedMonths).toBe(advised);
    expect(ageGate(kg, 6).requiredMonths).toBe(ageGate(kg).requiredMonths);
  });

  it('walks only under age, unless the vet confirms closed plates on radiographs', () => {
    expect(outcome({ ageMonths: 17 })).toBe('walking only');
    expect(outcome({ ageMonths: 18 })).toBe('ready to start');
    expect(outcome({ ageMonths: 17, radiographicClearance: true })).toBe('ready to start');
  });

  // Senior = last quarter of the expected life span (AAHA 2019, S; the span itself D).
  it('counts the last quarter of the life span as senior, with no upper age', () => {
    for (const kg of [5, 15, 30, 60]) {
      const months = expectedLifeYears(kg) * 12 * 0.75;
      expect(isSenior(months, kg)).toBe(true);
      expect(isSenior(months - 1, kg)).toBe(false);
    }
    const old = screenForRunning({ ...fit, ageMonths: 150 });
    expect(old.outcome).toBe('ready to start');
    expect(old.recommendedStart).toBe('unconditioned');
  });
});

describe('vet first (CP/M)', () => {
  it.each(RED_FLAGS.map(({ id }) => id))('%s', (sign) => {
    expect(outcome({ signs: [sign] })).toBe('vet first');
  });

  it.each([
    ['lame at walk', { lameness: { walk: { ...SOUND, leftHind: 1 }, trot: SOUND } }],
    ['lame at trot', { lameness: { walk: SOUND, trot: { ...SOUND, rightFore: 1 } } }],
    ['surgery without clearance', { surgery: 'not cleared' }],
    ['too thin, the cause unknown', { bcs: 2 }],
  ] satisfies [string, Partial<ScreeningInput>][])('%s', (_, changes) => {
    expect(outcome(changes)).toBe('vet first');
  });

  // Short-nosed dogs have 2× and more odds of heat illness (RVC VetCompass, S).
  it.each(['shortNosed', 'airwayDisease'] as const)('%s without written clearance', (which) => {
    expect(outcome({ [which]: true, consent: { given: false } })).toBe('vet first');
  });
});

describe('walking only', () => {
  it.each([
    [7, 'ready to start'],
    [8, 'walking only'],
    [9, 'walking only'],
  ])('body condition %i of 9: %s', (bcs, expected) => {
    expect(outcome({ bcs })).toBe(expected);
  });

  it('without the walk base', () => {
    expect(outcome({ walkBase: 'failed' })).toBe('walking only');
    expect(outcome({ walkBase: 'not tested' })).toBe('walking only');
  });
});

describe('consent', () => {
  it('missing or ended is a warning, not a gate: local law decides', () => {
    for (const consent of [
      { given: false },
      { given: true, vet: 'Dr Vance', day: '2025-01-01', scope: 'all', expiryDay: '2026-01-01' },
    ]) {
      const screening = screenForRunning({ ...fit, consent });
      expect(screening.outcome).toBe('ready to start');
      const note = screening.reasons.find(({ code }) => code.startsWith('consent'))!;
      expect(note.gate).toBe('note');
    }
  });
});

describe('reasons', () => {
  it('are all given at once, the gravest first, each with what would change it', () => {
    const { reasons, outcome: found } = screenForRunning({
      ...fit,
      ageMonths: 10,
      bcs: 9,
      walkBase: 'failed',
      signs: ['cough', 'pale-gums'],
      lameness: { walk: { ...SOUND, leftFore: 2 }, trot: { ...SOUND, leftFore: 3 } },
      surgery: 'not cleared',
      consent: { given: false },
    });
    expect(found).toBe('vet first');
    expect(reasons[0]!.code).toBe('sign-pale-gums');
    const gates = reasons.map(({ gate }) => gate);
    const order = ['vet first', 'walking only', 'note'];
    expect(gates).toEqual([...gates].sort((a, b) => order.indexOf(a) - order.indexOf(b)));
    expect(reasons.map(({ code }) => code)).toEqual(
      expect.arrayContaining([
        'sign-cough',
        'lameness-walk',
        'lameness-trot',
        'surgery',
        'bcs-high',
        'age-growth',
        'walk-base',
        'consent-missing',
      ]),
    );
    for (const reason of reasons) {
      expect(reason.change, reason.code).toBeTruthy();
      expect(reason.sources.length, reason.code).toBeGreaterThan(0);
    }
  });

  it('can be set aside with a written reason, and only with one', () => {
    const failed = { ...fit, walkBase: 'failed' } as const;
    const override = (reason: string) =>
      screenForRunning({ ...failed, overrides: [{ code: 'walk-base', reason }] });
    expect(override('  ').outcome).toBe('walking only');
    const set = override('Walked daily for weeks, seen by me.');
    expect(set.outcome).toBe('ready to start');
    expect(set.reasons.find(({ code }) => code === 'walk-base')!.overriddenBecause).toContain(
      'seen by me',
    );
  });
});
