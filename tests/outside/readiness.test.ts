import { describe, expect, it } from 'vitest';
import { ageGate, isSenior, RED_FLAGS, screenForRunning } from '../../core/index.ts';
import type { ScreeningInput } from '../../core/index.ts';

// Marks: S read in the source, CP common practice of the trade, M from memory, D our own decision.

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 } as const;

/** An adult of 22 kg with nothing against running. */
const ADULT: ScreeningInput = {
  day: '2026-03-02',
  ageMonths: 40,
  weightKg: 22,
  bcs: 5,
  lameness: { walk: SOUND, trot: SOUND },
  signs: [],
  surgery: 'none',
  walkBase: 'passed',
  consent: { given: true, vet: 'Dr A. Invented', day: '2026-02-01', scope: 'Running' },
};
const outcome = (changes: ScreeningInput): string =>
  screenForRunning({ ...ADULT, ...changes }).outcome;

describe('growth', () => {
  // Rules of harness running sports ask for 12 to 18 months (S); two ages by size: common practice
  // (CP). The line of 20 kg adult weight: size classes of Hart et al. 2020, Front Vet Sci 7:472 (S),
  // that it is drawn there is our choice (D).
  it.each([
    [19.9, 12],
    [20, 18],
    [39.9, 18],
    [40, 18],
  ])('%d kg as an adult: no running before %d months (CP, S, D)', (kg, months) => {
    expect(ageGate(kg).requiredMonths).toBe(months);
    const weight = { weightKg: kg, adultWeightKg: kg };
    expect(outcome({ ...weight, ageMonths: months - 1 })).toBe('walking only');
    expect(outcome({ ...weight, ageMonths: months })).toBe('ready to start');
  });

  it('stays inside what the sport rules ask, 12 to 18 months (S)', () => {
    for (const kg of [2, 10, 19, 20, 35, 60, 90]) {
      expect(ageGate(kg).requiredMonths).toBeGreaterThanOrEqual(12);
      expect(ageGate(kg).requiredMonths).toBeLessThanOrEqual(18);
    }
  });

  // Published averages of plate closure run from 6 to 12.3 months by plate, ranges to 540 days (S):
  // the later age lies about at the end of the ranges.
  it('the later age reaches the end of the published closing times, 540 days (S)', () => {
    expect(ageGate(30).requiredMonths * 30.4).toBeGreaterThan(540);
    expect(ageGate(10).requiredMonths).toBeGreaterThanOrEqual(Math.floor(12.3));
  });

  // Salmeri et al. 1991, JAVMA 198:1193: plates close later after early neutering (S). Six months
  // more, at most 24, is our choice (D); advice for 40 kg and over up to 24 (D).
  it.each([
    [10, 6, 18],
    [25, 6, 24],
    [45, undefined, 24],
    [45, 6, 24],
    [25, 12, 18],
    [25, undefined, 18],
  ])('%d kg, neutered at %s months: advice until %d months (D)', (kg, neutered, months) => {
    expect(ageGate(kg, neutered).advisedMonths).toBe(months);
  });
});

describe('old age', () => {
  // AAHA 2019 life stages: senior is the last quarter of the expected life span (S). Medians of
  // McMillan 2024 (S from a summary): 12.7 years small, 11.9 large, French Bulldog 9.8. Where the
  // line between small and large lies, 10 years from 40 kg on and every short nose as the one breed
  // are ours (D).
  it.each([
    [5, false, 12.7],
    [30, false, 11.9],
    [13, true, 9.8],
    [15, false, 11.9],
    [50, false, 10],
  ])('%d kg, short nose %s: senior from three quarters of %d years (S/D)', (kg, short, years) => {
    const months = years * 12 * 0.75;
    expect(isSenior(Math.ceil(months), kg, {}, short)).toBe(true);
    expect(isSenior(Math.ceil(months) - 1, kg, {}, short)).toBe(false);
  });

  it('has no upper age: a fit senior starts one level lower (CP)', () => {
    const screening = screenForRunning({ ...ADULT, ageMonths: 150, conditioning: 'conditioned' });
    expect(screening).toMatchObject({
      outcome: 'ready to start',
      recommendedStart: 'unconditioned',
    });
  });
});

describe('vet first (CP, M)', () => {
  it.each(RED_FLAGS.map(({ id }) => id))('%s', (sign) => {
    expect(outcome({ signs: [sign] })).toBe('vet first');
  });

  it.each<readonly [string, ScreeningInput]>([
    ['any lameness at walk', { lameness: { walk: { ...SOUND, leftFore: 1 }, trot: SOUND } }],
    [
      'lameness at trot until assessed',
      { lameness: { walk: SOUND, trot: { ...SOUND, leftFore: 1 } } },
    ],
    ['surgery without written clearance', { surgery: 'not cleared' }],
    ['airway disease without written clearance', { airwayDisease: true }],
    ['body condition 1', { bcs: 1 }],
    ['body condition 2', { bcs: 2 }],
  ])('%s', (_, changes) => {
    expect(outcome(changes)).toBe('vet first');
  });

  // RVC VetCompass: short-nosed dogs have twice and more the odds of heat illness (S).
  it('a short nose without written clearance, by a study in dogs (S)', () => {
    const { outcome: found, reasons } = screenForRunning({ ...ADULT, shortNosed: true });
    expect(found).toBe('vet first');
    expect(reasons.find(({ code }) => code === 'airway')).toMatchObject({
      evidence: 'A',
      mark: 'S',
      sources: ['vetCompass'],
    });
  });
});

describe('walking only', () => {
  it.each<readonly [string, ScreeningInput]>([
    ['body condition 8 (CP)', { bcs: 8 }],
    ['body condition 9 (CP)', { bcs: 9 }],
    ['under age (CP)', { ageMonths: 11 }],
    ['walk base failed (D)', { walkBase: 'failed' }],
    ['walk base not tested (D)', { walkBase: 'not tested' }],
  ])('%s', (_, changes) => {
    expect(outcome(changes)).toBe('walking only');
  });
});

describe('consent', () => {
  // In many countries work on a patient needs a vet's referral or consent; local law decides (CP).
  it('missing is a warning that names local law, and no gate (CP)', () => {
    const screening = screenForRunning({ ...ADULT, consent: { given: false } });
    expect(screening.outcome).toBe('ready to start');
    expect(screening.reasons[0]?.text).toContain('local law decides');
  });
});
