import { describe, expect, it } from 'vitest';
import {
  buildRamp,
  isOftenShortNosed,
  screenForRunning,
  type LimbGrades,
  type ScreeningInput,
} from '../../../core/index.ts';
import { reviewInput } from '../../../core/assess/planReview.ts';
import { reviewRamp } from '../../../core/ramp/review.ts';
import type { Injury, LamenessClearance } from '../../../core/readiness/record.ts';
import { DAY, READY, SOUND } from './inputs.ts';

// What is told of the past, each through the whole screening of a dog with nothing else against it.

const codes = (input: ScreeningInput): string[] =>
  screenForRunning(input).reasons.map(({ code }) => code);
const reasonOf = (input: ScreeningInput, code: string) =>
  screenForRunning(input).reasons.find((reason) => reason.code === code);

const clearance = (changes: Partial<LamenessClearance>): LamenessClearance => ({
  ...{ vet: 'Dr A. Invented', day: '2026-02-01', gait: 'trot', limb: 'leftHind', grade: 1 },
  scope: 'Running in harness',
  ...changes,
});
const surgery = (changes: Partial<Injury>): Injury => ({
  ...{ kind: 'surgery', structure: 'cranial cruciate ligament', side: 'left' },
  ...{ day: '2025-10-01', done: 'Stabilised' },
  ...changes,
});

interface Cleared {
  readonly walk?: Partial<LimbGrades>;
  readonly trot?: Partial<LimbGrades>;
  readonly by: readonly LamenessClearance[];
}
const lame = ({ walk, trot, by }: Cleared): ScreeningInput => ({
  ...READY,
  lameness: { walk: { ...SOUND, ...walk }, trot: { ...SOUND, ...trot } },
  lamenessClearances: by,
});

describe('lameness cleared by a vet', () => {
  it.each<readonly [string, Cleared, string]>([
    ['as it is', { trot: { leftHind: 1 }, by: [clearance({})] }, 'ready to start'],
    ['higher', { trot: { leftHind: 1 }, by: [clearance({ grade: 3 })] }, 'ready to start'],
    ['lower', { trot: { leftHind: 1 }, by: [clearance({ grade: 0 })] }, 'vet first'],
    ['another limb', { trot: { rightHind: 1 }, by: [clearance({})] }, 'vet first'],
    ['one limb of two', { trot: { leftHind: 1, leftFore: 1 }, by: [clearance({})] }, 'vet first'],
    ['the other gait', { trot: { leftHind: 1 }, by: [clearance({ gait: 'walk' })] }, 'vet first'],
    [
      'later than today',
      { trot: { leftHind: 1 }, by: [clearance({ day: '2026-03-03' })] },
      'vet first',
    ],
    ['by nobody', { trot: { leftHind: 1 }, by: [clearance({ vet: ' ' })] }, 'vet first'],
    [
      'at trot above grade 1',
      { trot: { leftHind: 2 }, by: [clearance({ grade: 2 })] },
      'walking only',
    ],
    ['at walk', { walk: { leftHind: 1 }, by: [clearance({ gait: 'walk' })] }, 'walking only'],
    [
      'at walk in one limb of two',
      { walk: { leftHind: 1, rightFore: 1 }, by: [clearance({ gait: 'walk' })] },
      'vet first',
    ],
  ])('%s', (_, told, outcome) => {
    expect(screenForRunning(lame(told)).outcome).toBe(outcome);
  });

  it('counts for nothing where today is not known', () => {
    const { day: _, ...undated } = lame({ trot: { leftHind: 1 }, by: [clearance({})] });
    expect(codes(undated)).toContain('lameness-trot');
  });

  it.each(['lameness-walk', 'lameness-walk-cleared'])(
    'leaves no reason to set %s aside',
    (code) => {
      const told = lame({ walk: { leftHind: 1 }, by: [clearance({ gait: 'walk' })] });
      const overrides = [{ code, reason: 'An old stiffness, well known.' }];
      expect(screenForRunning({ ...told, overrides }).outcome).toBe('walking only');
    },
  );
});

describe('a plan in force, at a review', () => {
  const goal = { continuousMinutes: 20 };
  const ramp = buildRamp({
    startDay: '2026-02-23',
    start: 'post-injury',
    sessionsPerWeek: 3,
    goal,
  });
  const decisionOf = (told: Cleared): string => {
    const input = lame(told);
    return reviewRamp(
      reviewInput({
        plan: { ramp, createdAt: '2026-02-20T10:00:00.000Z' },
        ...{ sessions: [], rules: {}, day: DAY, clearedByVetOn: null, unasked: [] },
        visit: {
          lamenessWalk: input.lameness!.walk as LimbGrades,
          lamenessTrot: input.lameness!.trot as LimbGrades,
          lamenessClearances: told.by,
          signs: [],
        },
        screening: screenForRunning(input).found,
      }),
    ).decision;
  };

  it.each<readonly [string, Cleared]>([
    ['the grade cleared', { trot: { leftHind: 2 }, by: [clearance({ grade: 2 })] }],
    ['a lower grade', { trot: { leftHind: 1 }, by: [clearance({ grade: 2 })] }],
    ['the grade cleared at walk', { walk: { leftHind: 1 }, by: [clearance({ gait: 'walk' })] }],
  ])('goes on with %s', (_, told) => {
    expect(decisionOf(told)).not.toBe('stop');
  });

  it.each<readonly [string, Cleared]>([
    ['a higher grade', { trot: { leftHind: 3 }, by: [clearance({ grade: 2 })] }],
    ['another limb', { trot: { rightHind: 1 }, by: [clearance({ grade: 2 })] }],
    ['no clearance', { trot: { leftHind: 1 }, by: [] }],
    ['lameness at walk, cleared at trot', { walk: { leftHind: 1 }, by: [clearance({ grade: 2 })] }],
  ])('stops with %s', (_, told) => {
    expect(decisionOf(told)).toBe('stop');
  });
});

describe('an injury or surgery', () => {
  const cleared = { ...READY, surgery: 'cleared in writing' } as const;

  it.each<readonly [string, ScreeningInput, string]>([
    [
      '12 months ago to the day',
      { ...cleared, injuries: [surgery({ day: '2025-03-02' })] },
      'conditioned',
    ],
    ['a day less', { ...cleared, injuries: [surgery({ day: '2025-03-03' })] }, 'post-injury'],
    ['years ago', { ...cleared, injuries: [surgery({ day: '2020-05-01' })] }, 'conditioned'],
    [
      'years ago, and one this winter',
      { ...cleared, injuries: [surgery({ day: '2020-05-01' }), surgery({})] },
      'post-injury',
    ],
    ['without its day', { ...cleared, injuries: [surgery({ day: null })] }, 'post-injury'],
    ['that nobody described', cleared, 'post-injury'],
    [
      'an injury years ago beside a surgery nobody described',
      { ...cleared, injuries: [surgery({ kind: 'injury', day: '2020-05-01' })] },
      'post-injury',
    ],
    ['an injury this winter', { ...READY, injuries: [surgery({ kind: 'injury' })] }, 'post-injury'],
    [
      'years ago, in a dog judged not fit',
      { ...cleared, conditioning: 'unconditioned', injuries: [surgery({ day: '2020-05-01' })] },
      'unconditioned',
    ],
    [
      'nine months ago, where the practice counts six',
      { ...cleared, injuries: [surgery({ day: '2025-06-01' })], rules: { afterInjuryMonths: 6 } },
      'conditioned',
    ],
  ])('%s', (_, input, level) => {
    expect(screenForRunning(input)).toMatchObject({
      outcome: 'ready to start',
      recommendedStart: level,
    });
  });

  it.each<readonly [string, ScreeningInput]>([
    ['surgery this winter without a word on its clearance', { ...READY, injuries: [surgery({})] }],
    [
      'surgery years ago while its clearance is asked for',
      { ...READY, surgery: 'not cleared', injuries: [surgery({ day: '2020-05-01' })] },
    ],
  ])('is for the vet first: %s', (_, input) => {
    expect(screenForRunning(input).outcome).toBe('vet first');
  });

  it('starts as after an injury where its missing clearance is set aside', () => {
    const overrides = [{ code: 'surgery', reason: 'Cleared by telephone, letter follows.' }];
    const asked = { ...READY, surgery: 'not cleared', overrides } as const;
    const old = { ...asked, injuries: [surgery({ day: '2020-05-01' })] };
    expect(screenForRunning(old).recommendedStart).toBe('post-injury');
  });

  it('is named with structure, side and day, and a missing day is asked for', () => {
    const told = { ...cleared, injuries: [surgery({}), surgery({ side: 'right', day: null })] };
    const text = reasonOf(told, 'after-injury')?.text;
    expect(text).toContain('cranial cruciate ligament, left, 2025-10-01');
    expect(text).toContain('cranial cruciate ligament, right, day not known');
    expect(codes(told)).toContain('injury-day-missing');
  });

  it('says which of surgery and injury lacks its day', () => {
    const injury = surgery({ kind: 'injury' });
    const missing = (changes: Partial<ScreeningInput>) =>
      reasonOf({ ...cleared, ...changes }, 'injury-day-missing')?.text;
    expect(missing({ injuries: [injury] })).toMatch(/^The day of a surgery is not recorded/);
    expect(missing({ injuries: [surgery({}), { ...injury, day: null }] })).toMatch(
      /^The day of an injury is not recorded/,
    );
    expect(missing({ injuries: [surgery({})] })).toBeUndefined();
  });

  it.each([
    [26, 27, 'left'],
    [27.5, 26, 'right'],
    [26, 26.9, null],
  ])('thighs of %d and %d cm: thinner %s', (leftHind, rightHind, side) => {
    const told = { ...cleared, injuries: [surgery({ day: '2020-05-01' })] };
    const note = reasonOf({ ...told, thighGirthCm: { leftHind, rightHind } }, 'thigh-thinner');
    expect(note?.params['side'] ?? null).toBe(side);
    expect(note === undefined || note.gate === 'note').toBe(true);
    // Without an injury a difference is measured, and says nothing here.
    expect(codes({ ...READY, thighGirthCm: { leftHind, rightHind } })).toEqual([]);
  });
});

describe('what else is known', () => {
  const { consent: _, ...unconsented } = READY;

  it.each<readonly [string, ScreeningInput]>([
    ['disease-joints', { disease: { joints: 'yes' } }],
    ['disease-spine', { disease: { spine: 'yes' } }],
    ['disease-heart', { disease: { heart: 'yes' } }],
    ['heat-illness', { heatIllness: { had: 'yes', day: '2024-07-01' } }],
  ])('%s is for the vet, and a note with a consent in force', (code, told) => {
    expect(screenForRunning({ ...unconsented, ...told }).outcome).toBe('vet first');
    expect(screenForRunning({ ...READY, ...told })).toMatchObject({
      outcome: 'ready to start',
      reasons: [{ code, gate: 'note' }],
    });
  });

  it('"no" and "not asked" say nothing', () => {
    const disease = { joints: 'no', spine: null, heart: 'no' } as const;
    expect(codes({ ...READY, disease, heatIllness: { had: 'no' }, medicine: ' ' })).toEqual([]);
  });

  it('medicine is a note that names it', () => {
    const note = reasonOf({ ...READY, medicine: 'An anti-inflammatory' }, 'medicine');
    expect(note).toMatchObject({ gate: 'note' });
    expect(note?.text).toContain('An anti-inflammatory');
  });

  it.each([
    ['normal', 'ready to start'],
    ['mild loss', 'ready to start'],
    ['moderate loss', 'vet first'],
    ['severe loss', 'vet first'],
  ] as const)('muscle condition, %s: %s', (muscle, outcome) => {
    expect(screenForRunning({ ...READY, muscle }).outcome).toBe(outcome);
  });

  it('body condition 3 is a note', () => {
    expect(screenForRunning({ ...READY, bcs: 3 })).toMatchObject({
      outcome: 'ready to start',
      reasons: [{ code: 'bcs-thin', gate: 'note' }],
    });
    expect(codes({ ...READY, bcs: 4 })).toEqual([]);
  });
});

describe('an adult weight that is not known', () => {
  const { adultWeightKg: _, ...unknown } = { ...READY, weightKg: 9 };

  it.each([
    [17, 'walking only', ['adult-weight-unknown', 'age-growth']],
    [18, 'ready to start', ['adult-weight-unknown']],
    [23, 'ready to start', ['adult-weight-unknown']],
    [24, 'ready to start', []],
  ] as const)('at %d months: %s', (ageMonths, outcome, expected) => {
    const screening = screenForRunning({ ...unknown, ageMonths });
    expect(screening.outcome).toBe(outcome);
    expect(screening.reasons.map(({ code }) => code).sort()).toEqual(expected);
  });

  it('takes the later age also where the practice drew its line higher', () => {
    const rules = { largeFromKg: 30 };
    expect(screenForRunning({ ...unknown, ageMonths: 17, rules }).outcome).toBe('walking only');
    expect(screenForRunning({ ...unknown, ageMonths: 17, adultWeightKg: 9 }).outcome).toBe(
      'ready to start',
    );
  });
});

describe('an emergency', () => {
  const consent = READY.consent!;
  const overrides = [{ code: 'sign-collapse', reason: 'One faint in 2023, worked up since.' }];
  const outcomeWith = (given: ScreeningInput['consent']) =>
    screenForRunning({ ...READY, signs: ['collapse'], overrides, consent: given }).outcome;

  it('is set aside only with a recorded clearance of a vet beside the reason', () => {
    expect(outcomeWith(consent)).toBe('ready to start');
    expect(outcomeWith({ ...consent, day: null })).toBe('vet first');
    expect(outcomeWith({ ...consent, scope: ' ' })).toBe('vet first');
    expect(outcomeWith({ ...consent, vet: '' })).toBe('vet first');
    expect(outcomeWith(undefined)).toBe('vet first');
  });
});

describe('bad input of the past is named', () => {
  const word = (value: string) => value as never;

  it.each<readonly [string, ScreeningInput]>([
    ['lamenessClearances.grade', { lamenessClearances: [clearance({ grade: 6 })] }],
    ['lamenessClearances.gait', { lamenessClearances: [clearance({ gait: word('canter') })] }],
    ['lamenessClearances.day', { lamenessClearances: [clearance({ day: 'once' })] }],
    ['lamenessClearances.limb', { lamenessClearances: [clearance({ limb: word('tail') })] }],
    ['heatIllness.day', { heatIllness: { had: 'yes', day: 'once' } }],
    ['injuries.kind', { injuries: [surgery({ kind: word('fall') })] }],
    ['injuries.side', { injuries: [surgery({ side: word('top') })] }],
    ['injuries.day', { injuries: [surgery({ day: '2025-02-30' })] }],
    ['disease.heart', { disease: { heart: word('maybe') } }],
    ['heatIllness.had', { heatIllness: { had: word('maybe') } }],
    ['muscle', { muscle: word('thin') }],
    ['thighGirthCm.leftHind', { thighGirthCm: { leftHind: 0, rightHind: 30 } }],
  ])('%s', (argument, input) => {
    expect(() => screenForRunning(input)).toThrow(RangeError);
    expect(() => screenForRunning(input)).toThrow(argument);
  });
});

describe('what nobody asked about', () => {
  const NOTHING: ScreeningInput = { ...READY, historyAsked: false };

  it('keeps a dog walking, and is no finding', () => {
    const screening = screenForRunning(NOTHING);
    expect(screening).toMatchObject({ outcome: 'walking only', found: 'ready to start' });
    expect(reasonOf(NOTHING, 'history-not-asked')).toMatchObject({
      unseen: true,
      change: 'Ask the owner, and confirm that nothing is known or note what is.',
    });
  });

  it('counts as asked once something was told of it', () => {
    for (const told of [
      { surgery: 'cleared in writing' },
      { injuries: [surgery({})] },
      { medicine: 'An anti-inflammatory' },
      { disease: { words: 'Skin' } },
      { heatIllness: { had: 'yes' } },
      { airwayDisease: true },
    ] as const) {
      expect(codes({ ...NOTHING, ...told })).not.toContain('history-not-asked');
    }
    expect(codes({ ...NOTHING, heatIllness: { had: 'no' } })).toContain('history-not-asked');
  });
});

describe('a breed', () => {
  it.each([
    'Pug',
    'french bulldog',
    'Shih-Tzu',
    'BOXER × Labrador',
    'Cavalier King Charles Spaniel',
  ])('%s is often short-nosed', (breed) => expect(isOftenShortNosed(breed)).toBe(true));

  it.each(['', 'Pointer', 'Pugnacious mix', 'Chinook', 'Boxerdoodle'])(
    '“%s” asks nothing',
    (breed) => expect(isOftenShortNosed(breed)).toBe(false),
  );
});
