import { describe, expect, it } from 'vitest';
import {
  ageGate,
  isSenior,
  onPlan,
  screenForRunning,
  type RuleChanges,
  type ScreeningInput,
} from '../../../core/index.ts';
import type { LamenessClearance } from '../../../core/readiness/record.ts';
import { DAY, READY, SOUND } from './inputs.ts';

const codes = (input: ScreeningInput): string[] =>
  screenForRunning(input).reasons.map(({ code }) => code);
const reasonOf = (input: ScreeningInput, wanted: string) =>
  screenForRunning(input).reasons.find(({ code }) => code === wanted);

describe('a short nose or airway disease', () => {
  it.each([{ shortNosed: true }, { airwayDisease: true }])(
    '%o is not cleared by consent to something else',
    (breathing) => {
      const massage = { ...READY.consent!, scope: 'Massage only' };
      const { outcome } = screenForRunning({ ...READY, ...breathing, consent: massage });
      expect(outcome).toBe('vet first');
    },
  );

  it.each([{ shortNosed: true }, { airwayDisease: true }])(
    '%o is cleared in writing',
    (breathing) => {
      const cleared = { ...READY, ...breathing, airwayClearance: true };
      expect(screenForRunning(cleared).outcome).toBe('ready to start');
    },
  );
});

const CLEARED: LamenessClearance = {
  vet: 'Dr A. Invented',
  day: '2026-02-01',
  gait: 'trot',
  limb: 'leftHind',
  grade: 1,
  scope: 'Running in harness',
};

describe('a dog lame at trot', () => {
  const lame = { walk: SOUND, trot: { ...SOUND, leftHind: 1 } };

  it('is for the vet first, with limb and grade', () => {
    const reason = reasonOf({ ...READY, lameness: lame }, 'lameness-trot');
    expect(reason).toMatchObject({ gate: 'vet first' });
    expect(reason?.text).toContain('left hind grade 1 of 5');
  });

  it('starts as after an injury once a vet cleared it, and a note stays', () => {
    const lamenessClearances = [{ ...CLEARED, limb: 'leftHind', grade: 1 } as const];
    const screening = screenForRunning({ ...READY, lameness: lame, lamenessClearances });
    expect(screening).toMatchObject({
      outcome: 'ready to start',
      recommendedStart: 'post-injury',
    });
    expect(screening.reasons.map(({ code }) => code)).toEqual(['lameness-trot-assessed']);
  });

  it('starts as after an injury where the rule is set aside', () => {
    const overrides = [{ code: 'lameness-trot', reason: 'Old and mild, seen by the vet.' }];
    const { recommendedStart } = screenForRunning({ ...READY, lameness: lame, overrides });
    expect(recommendedStart).toBe('post-injury');
  });
});

describe('what no written reason sets aside', () => {
  it.each([2, 3, 4, 5])('lameness at trot grade %d, explained', (grade) => {
    const screening = screenForRunning({
      ...READY,
      lameness: { walk: SOUND, trot: { ...SOUND, leftHind: grade } },
      overrides: [{ code: 'lameness-trot', reason: 'Old and mild, seen by the vet.' }],
    });
    expect(screening).toMatchObject({ outcome: 'vet first', recommendedStart: null });
  });

  it.each(['x', 'Old and mild, seen by the vet.'])('lameness at walk, with "%s"', (reason) => {
    const lameness = { walk: { ...SOUND, rightFore: 1 }, trot: SOUND };
    const overrides = [{ code: 'lameness-walk', reason }];
    const screening = screenForRunning({ ...READY, lameness, overrides });
    expect(screening.outcome).toBe('vet first');
    expect(screening.reasons[0]).toMatchObject({ code: 'lameness-walk', overriddenBecause: null });
  });

  it.each([
    ['x', 'walking only'],
    ['too short', 'walking only'],
    ['  too short   ', 'walking only'],
    ['Tested at a colleague’s.', 'ready to start'],
  ])('a reason that says nothing: "%s" leaves the dog %s', (reason, outcome) => {
    const overrides = [{ code: 'walk-base', reason }];
    expect(screenForRunning({ ...READY, walkBase: 'failed', overrides }).outcome).toBe(outcome);
  });
});

describe('the level to start at', () => {
  it.each([
    ['as judged', {}, 'conditioned'],
    ['after surgery, cleared', { surgery: 'cleared in writing' }, 'post-injury'],
    ['heavy', { bcs: 6 }, 'unconditioned'],
    ['senior', { ageMonths: 120 }, 'unconditioned'],
    ['not judged', { conditioning: undefined }, 'unconditioned'],
    ['of body condition 5', { bcs: 5 }, 'conditioned'],
    ['heavy and judged as after an injury', { bcs: 6, conditioning: 'post-injury' }, 'post-injury'],
    ['senior and judged so', { ageMonths: 120, conditioning: 'post-injury' }, 'post-injury'],
  ] as const)('%s', (_, changes, level) => {
    expect(screenForRunning({ ...READY, ...changes }).recommendedStart).toBe(level);
  });
});

describe('what keeps a dog walking until it is known', () => {
  it('is no finding where the walk base was not tested, and is one where it failed', () => {
    const untested = reasonOf({ ...READY, walkBase: 'not tested' }, 'walk-base');
    expect(untested).toMatchObject({ unseen: true, params: { minutes: 30 } });
    expect(untested?.text).toContain('not been tested');
    expect(screenForRunning({ ...READY, walkBase: 'not tested' }).found).toBe('ready to start');
    const failed = reasonOf({ ...READY, walkBase: 'failed' }, 'walk-base');
    expect(failed).toMatchObject({ unseen: false, params: { minutes: 30 } });
    expect(failed?.text).toContain('not passed');
    expect(screenForRunning({ ...READY, walkBase: 'failed' }).found).toBe('walking only');
  });

  it('is the age of a dog whose day of birth is known, on a day that is not', () => {
    const { ageMonths: _, day: __, consent: ___, ...known } = READY;
    const screening = screenForRunning({ ...known, birthDay: '2025-05-31' });
    expect(screening.reasons.map(({ code }) => code)).toContain('age-missing');
    expect(screening.oldEnoughOn).toBeNull();
  });

  it('is left out of what stops a plan, with lameness that a vet cleared as a note', () => {
    const lameness = { walk: SOUND, trot: { ...SOUND, leftHind: 2 } };
    const lamenessClearances = [{ ...CLEARED, grade: 2 }];
    const { signs: _, ...unasked } = { ...READY, lameness, lamenessClearances };
    const { reasons } = screenForRunning({ ...unasked, walkBase: 'failed' });
    const gates = (list: typeof reasons) => list.map(({ code, gate }) => [code, gate]);
    expect(gates(reasons)).toContainEqual(['lameness-trot-cleared', 'walking only']);
    expect(gates(onPlan(reasons))).toEqual([
      ['lameness-trot-cleared', 'note'],
      ['walk-base', 'walking only'],
    ]);
    expect(onPlan(reasons)[0]).toMatchObject({ params: { grade: 2 } });
  });
});

describe('the consent of the vet', () => {
  const consent = READY.consent!;

  it.each([
    ['complete and in force', consent, []],
    ['not given', { ...consent, given: false }, ['consent-missing']],
    ['ended', { ...consent, expiryDay: '2026-03-01' }, ['consent-expired']],
    ['ends today', { ...consent, expiryDay: DAY }, []],
    ['dated after the day', { ...consent, day: '2026-03-03' }, ['consent-later']],
    ['without a vet', { ...consent, vet: ' ' }, ['consent-incomplete']],
    ['without a scope', { ...consent, scope: '' }, ['consent-incomplete']],
    ['without a day', { ...consent, day: null }, ['consent-incomplete']],
    ['given and nothing else', { given: true }, ['consent-incomplete']],
  ])('%s', (_, given, expected) => {
    expect(codes({ ...READY, consent: given })).toEqual(expected);
  });
});

describe('the rules of the practice', () => {
  const young: ScreeningInput = { ...READY, ageMonths: 15, adultWeightKg: 22 };

  it('move the age gate', () => {
    expect(screenForRunning(young).outcome).toBe('walking only');
    const rules: RuleChanges = { largeFromKg: 25 };
    expect(screenForRunning({ ...young, rules }).outcome).toBe('ready to start');
    expect(ageGate(22, undefined, rules).requiredMonths).toBe(12);
  });

  it('say that a published gate would have been closed', () => {
    const note = reasonOf({ ...young, rules: { largeFromKg: 25 } }, 'loosened-rule');
    expect(note).toMatchObject({ gate: 'note', sources: ['practiceSetting'] });
    expect(note?.text).toContain('18 months');
  });

  it('say nothing of a published note that a milder rule leaves out', () => {
    expect(codes({ ...READY, ageMonths: 120 })).toEqual(['senior']);
    const rules: RuleChanges = { seniorFromPercent: 90 };
    expect(codes({ ...READY, ageMonths: 120, rules })).toEqual([]);
  });

  it('show where a changed gate bites, with the published value', () => {
    const rules: RuleChanges = { ageSmallMonths: 14 };
    const small: ScreeningInput = { ...READY, ageMonths: 13, weightKg: 8, adultWeightKg: 8 };
    expect(screenForRunning(small).outcome).toBe('ready to start');
    const reason = reasonOf({ ...small, rules }, 'age-growth');
    expect(reason).toMatchObject({ gate: 'walking only', sources: ['practiceSetting'] });
    expect(reason?.text).toContain('as published 12 months');
  });

  it('move body condition, senior age and the walk base', () => {
    expect(codes({ ...READY, bcs: 7, rules: { bcsWalkOnlyFrom: 7 } })).toContain('bcs-high');
    expect(codes({ ...READY, bcs: 3, rules: { bcsVetUpTo: 3 } })).toContain('bcs-low');
    expect(isSenior(100, 22)).toBe(false);
    expect(isSenior(100, 22, { seniorFromPercent: 60 })).toBe(true);
    const walk = reasonOf(
      { ...READY, walkBase: 'failed', rules: { walkBaseMinutes: 45 } },
      'walk-base',
    );
    expect(walk?.change).toContain('45 min');
  });

  it('are refused out of their range', () => {
    expect(() => screenForRunning({ ...READY, rules: { ageSmallMonths: 3 } })).toThrow(
      /ageSmallMonths.*9 to 24 months/,
    );
  });
});

describe('growth', () => {
  it('tells the day the dog is old enough', () => {
    const { ageMonths: _, ...known } = READY;
    const screening = screenForRunning({ ...known, birthDay: '2025-05-31' });
    expect(screening).toMatchObject({ outcome: 'walking only', oldEnoughOn: '2026-11-30' });
    const seen = { ...known, birthDay: '2025-05-31', radiographicClearance: true };
    expect(screenForRunning(seen).oldEnoughOn).toBeNull();
    // 18 months on this day, and one day short of it.
    expect(screenForRunning({ ...known, birthDay: '2024-09-02' }).oldEnoughOn).toBeNull();
    expect(screenForRunning({ ...known, birthDay: '2024-09-03' }).oldEnoughOn).toBe('2026-03-03');
    expect(screenForRunning({ ...known, birthDay: '2020-01-01' }).oldEnoughOn).toBeNull();
  });

  it('is answered by closed plates on radiographs', () => {
    const cleared = { ...READY, ageMonths: 13, radiographicClearance: true };
    expect(screenForRunning(cleared)).toMatchObject({
      outcome: 'ready to start',
      oldEnoughOn: null,
    });
  });

  it('counts an unknown adult weight as large', () => {
    const { weightKg: _, adultWeightKg: __, ...known } = READY;
    expect(codes({ ...known, ageMonths: 17 })).toContain('age-growth');
  });
});

describe('bad input is named', () => {
  const word = (value: string) => value as never;

  it.each<readonly [string, ScreeningInput]>([
    ['surgery', { surgery: word('yes') }],
    ['walkBase', { walkBase: word('ok') }],
    ['conditioning', { conditioning: word('fit') }],
    ['signs', { signs: ['limping'] }],
    ['shortNosed', { shortNosed: word('yes') }],
    ['airwayClearance', { airwayClearance: word('yes') }],
    ['consent.given', { consent: { given: word('yes') } }],
    ['consent.day', { consent: { given: true, day: '2026-02-30' } }],
    ['consent.expiryDay', { consent: { given: true, expiryDay: 'never' } }],
    ['day', { day: '02.03.2026' }],
    ['birthDay', { birthDay: '2026-13-01' }],
    ['neuteredAtMonths', { neuteredAtMonths: 0 }],
    ['ageMonths', { ageMonths: -1 }],
    ['bcs', { bcs: 4.5 }],
    ['weightKg', { weightKg: 0 }],
    ['adultWeightKg', { adultWeightKg: 200 }],
    ['lameness.trot.leftHind', { lameness: { trot: { leftHind: 6 } } }],
    ['lameness.walk', { lameness: { walk: { [word('tail')]: 1 } } }],
  ])('%s', (argument, input) => {
    expect(() => screenForRunning(input)).toThrow(RangeError);
    expect(() => screenForRunning(input)).toThrow(argument);
  });
});
