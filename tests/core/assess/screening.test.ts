import { describe, expect, it } from 'vitest';
import { assess, buildRamp, goalLimitsOf } from '../../../core/index.ts';
import type { AssessedDog, AssessedVisit, AssessInput } from '../../../core/assess/types.ts';
import { request, walks } from './dogOnPlan.ts';
import { grownDog, visit } from './visits.ts';

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
const UNSEEN = { leftFore: null, rightFore: null, leftHind: null, rightHind: null };
const LAME = { ...SOUND, leftHind: 2 };
const DAY = '2026-03-16';

const screened = (visits: readonly AssessedVisit[], changes: Partial<AssessInput> = {}) =>
  assess({ dog: grownDog, visits, foodDecisions: [], day: visits.at(-1)!.day, ...changes })!
    .screening;
const found = (...visits: AssessedVisit[]) => screened(visits).found;
const codesOf = (visits: readonly AssessedVisit[], changes: Partial<AssessInput> = {}) =>
  screened(visits, changes).reasons.map(({ code }) => code);

describe('a limb that was lame when it was last looked at', () => {
  it('stands as lame until it is looked at again', () => {
    const lame = visit('2026-03-02', 27, { lamenessTrot: LAME });
    const unseen = visit('2026-03-16', 27, { lamenessWalk: UNSEEN, lamenessTrot: UNSEEN });
    expect(found(lame)).toBe('vet first');
    expect(found(lame, unseen)).toBe('vet first');
    expect(found(lame, visit('2026-03-16', 27))).toBe('ready to start');
    expect(found(lame, visit('2026-03-09', 27), unseen)).toBe('ready to start');
  });

  it('is asked of each limb by itself', () => {
    const lame = visit('2026-03-02', 27, { lamenessTrot: LAME });
    const others = { ...SOUND, leftHind: null };
    expect(found(lame, visit('2026-03-16', 27, { lamenessTrot: others }))).toBe('vet first');
  });

  it('is a limb not looked at where it was sound before: the look is asked for again', () => {
    const unseen = visit(DAY, 27, { lamenessWalk: UNSEEN, lamenessTrot: UNSEEN });
    const codes = codesOf([visit('2026-03-02', 27), unseen]);
    expect(codes).toContain('walk-not-seen');
    expect(codes).toContain('trot-not-seen');
  });
});

describe('what a record says of a dog', () => {
  const mild = { ...SOUND, leftHind: 1 };
  const clearance = {
    vet: 'Dr Example',
    day: '2026-03-02',
    gait: 'trot',
    limb: 'leftHind',
    grade: 1,
    scope: 'Running in harness',
  } as const;
  const injury = {
    kind: 'injury',
    structure: 'Cranial cruciate ligament',
    side: 'left',
    day: '2026-01-02',
    done: '',
  } as const;
  const girths = (leftHind: number, rightHind: number) =>
    [
      { kind: 'thigh girth', limb: 'leftHind', value: leftHind },
      { kind: 'thigh girth', limb: 'rightHind', value: rightHind },
    ] as const;
  const heart = { joints: null, spine: null, heart: 'yes', words: '' } as const;

  it.each<[string, Partial<AssessedVisit>, Partial<AssessedDog>?]>([
    ['sign-cough', { signs: ['cough'] }],
    ['sign-cough', { signs: ['cough'], signsAsked: false }],
    ['signs-not-asked', { signsAsked: false }],
    ['history-not-asked', { historyAsked: false }],
    ['surgery', { surgery: 'not cleared' }],
    ['after-injury', { injuries: [injury] }],
    ['thigh-thinner', { injuries: [injury], measurements: girths(36, 40) }],
    ['disease-heart', { disease: heart }],
    ['heat-illness', { heatIllness: { had: 'yes', day: null } }],
    ['medicine', { medicine: 'Joint tablets' }],
    ['muscle-lost', { muscle: 'severe loss' }],
    ['walk-base', { walkBase: 'failed' }],
    ['lameness-walk', { lamenessWalk: LAME }],
    ['lameness-trot', { lamenessTrot: mild }],
    ['lameness-trot-assessed', { lamenessTrot: mild, lamenessClearances: [clearance] }],
    ['bcs-missing', { bcs: null }],
    ['bcs-low', { bcs: 2 }],
    ['airway', { airwayDisease: true }],
    ['airway', {}, { shortNosed: true }],
    ['age-growth', {}, { birthDay: '2025-04-01' }],
    ['adult-weight-unknown', {}, { birthDay: '2025-04-01', adultWeightKg: null }],
    ['age-advice', {}, { birthDay: '2024-08-01', neuteredAtMonths: 8 }],
    ['senior', {}, { birthDay: '2016-01-01' }],
  ])('is screened: %s', (code, facts, dog = {}) => {
    const changes = { dog: { ...grownDog, ...dog } };
    expect(codesOf([visit(DAY, 27, facts)], changes)).toContain(code);
    expect(codesOf([visit(DAY, 27)])).not.toContain(code);
  });

  it('leaves out what does not apply', () => {
    expect(codesOf([visit(DAY, 27)])).toEqual(['consent-incomplete']);
    const asked = codesOf([visit(DAY, 27, { signs: ['cough'], signsAsked: false })]);
    expect(asked).not.toContain('signs-not-asked');
    const cleared = { airwayDisease: true, airwayClearance: true };
    expect(codesOf([visit(DAY, 27, cleared)])).not.toContain('airway');
    const late = { dog: { ...grownDog, birthDay: '2024-08-01', neuteredAtMonths: null } };
    expect(codesOf([visit(DAY, 27)], late)).not.toContain('age-advice');
    const young = { dog: { ...grownDog, birthDay: '2025-04-01' } };
    const seen = { radiographicClearance: true };
    expect(codesOf([visit(DAY, 27, seen)], young)).not.toContain('age-growth');
  });

  it('counts score, muscle and thighs as last measured, both thighs of one day', () => {
    const before = visit('2026-03-02', 27, {
      bcs: 2,
      muscle: 'severe loss',
      measurements: girths(36, 40),
    });
    const unmeasured = { bcs: null, muscle: null, injuries: [injury] };
    const codes = codesOf([before, visit(DAY, 27, unmeasured)]);
    for (const code of ['bcs-low', 'muscle-lost', 'thigh-thinner']) expect(codes).toContain(code);
    const anew = { bcs: 5, injuries: [injury], measurements: girths(40, 40) };
    expect(codesOf([before, visit(DAY, 27, anew)])).not.toContain('thigh-thinner');
    const one = { ...unmeasured, measurements: girths(40, 40).slice(0, 1) };
    expect(codesOf([before, visit(DAY, 27, one)])).toContain('thigh-thinner');
    expect(codesOf([visit(DAY, 27, one)])).not.toContain('thigh-thinner');
  });

  it('tells the thinner thigh by its girth and no other measurement of the limb', () => {
    const stifle = { kind: 'joint angle', limb: 'leftHind', joint: 'stifle' } as const;
    const measurements = [
      { ...stifle, movement: 'flexion', value: 60 } as const,
      ...girths(36, 40),
    ];
    const told = (list: NonNullable<AssessedVisit['measurements']>) =>
      screened([visit(DAY, 27, { injuries: [injury], measurements: list })]).reasons.find(
        ({ code }) => code === 'thigh-thinner',
      );
    expect(told(measurements)?.params).toEqual({ side: 'left', lessCm: 4 });
    expect(told(girths(36, 40).slice(1))).toBeUndefined();
  });

  it('takes the age to run from from the weight it will have, else from the one it has', () => {
    const codes = (birthDay: string, weightKg: number, adultWeightKg: number | null) =>
      codesOf([visit(DAY, weightKg)], { dog: { ...grownDog, birthDay, adultWeightKg } });
    // 13 months: over the 12 of a small dog, under the 18 from 20 kg on (CP).
    expect(codes('2025-02-01', 15, 19)).not.toContain('age-growth');
    expect(codes('2025-02-01', 15, 20)).toContain('age-growth');
    // 20 months: from 40 kg on waiting until 24 is advised (D).
    expect(codes('2024-07-01', 45, null)).toContain('age-advice');
    expect(codes('2024-07-01', 35, null)).not.toContain('age-advice');
    expect(codes('2024-07-01', 45, 35)).not.toContain('age-advice');
  });

  it('sets aside what a reason was written for', () => {
    const reason = 'Seen by the vet on Monday, who allows it.';
    const overrides = [{ code: 'walk-base', reason }];
    expect(screened([visit(DAY, 27, { walkBase: 'failed', overrides })])).toMatchObject({
      outcome: 'ready to start',
      reasons: [{ code: 'walk-base', overriddenBecause: reason }, {}],
    });
  });

  it('starts no higher than was judged', () => {
    const start = (conditioning: AssessedVisit['conditioning']) =>
      screened([visit(DAY, 27, { conditioning })]).recommendedStart;
    expect(start('conditioned')).toBe('conditioned');
    expect(start('post-injury')).toBe('post-injury');
  });
});

describe('the goal of a plan anew', () => {
  const far = { ...request, goal: { continuousMinutes: 60 } };
  const limits = (visits: readonly AssessedVisit[], day: string) =>
    goalLimitsOf({ dog: grownDog, visits, foodDecisions: [], day }, far).map(({ code }) => code);

  it('is held to what was known on the day, not to a later visit, and to nothing before any', () => {
    const visits = [visit('2026-03-02', 27, { bcs: 7 }), visit(DAY, 27, { bcs: 5 })];
    expect(limits(visits, '2026-03-02')).toEqual(['goal-limit']);
    expect(limits(visits, '2026-03-15')).toEqual(['goal-limit']);
    expect(limits(visits, DAY)).toEqual([]);
    expect(limits(visits, '2026-03-01')).toEqual([]);
  });
});

describe('the goal of a plan', () => {
  const plan = (continuousMinutes: number) => ({
    ramp: { weeks: [], request: { ...request, goal: { continuousMinutes } } },
    climbM: null,
  });
  const heavy = { bcs: 6, signs: [] };
  const withGoal = (minutes: number, facts: Partial<AssessedVisit>, rules = {}) =>
    codesOf([visit(DAY, 27, facts)], { plan: plan(minutes), rules });

  // 30 min for a heavy dog, 90 min for every dog without the vet’s written yes (D).
  it('is held to the limits of the dog', () => {
    expect(withGoal(31, heavy)).toContain('goal-limit');
    expect(withGoal(30, heavy)).not.toContain('goal-limit');
    expect(withGoal(91, {})).toContain('goal-long');
    expect(withGoal(91, { longRunClearance: true })).not.toContain('goal-long');
  });

  it('is held to the practice’s own limit, and is none of a plan of walks', () => {
    expect(withGoal(25, heavy, { goalShortMinutes: 20 })).toContain('goal-limit');
    const ramp = { ...walks, request: { ...walks.request, goal: { continuousMinutes: 100 } } };
    const codes = codesOf([visit(DAY, 27, heavy)], { plan: { ramp, climbM: null } });
    expect(codes).not.toContain('goal-limit');
    const unknown = { weeks: buildRamp(request).weeks };
    expect(
      codesOf([visit(DAY, 27, heavy)], { plan: { ramp: unknown, climbM: null } }),
    ).not.toContain('goal-limit');
  });
});
