import { describe, expect, it } from 'vitest';
import {
  buildRamp,
  reviewInput,
  reviewRamp,
  type ReviewedRecord,
  type ToldResult,
} from '../../../core/index.ts';

const ramp = buildRamp({
  startDay: '2025-03-03',
  start: 'unconditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 20 },
});
const MADE = '2025-03-03T08:00:00.000Z';
const told = (day: string, updatedAt: string, rest: Partial<ToldResult> = {}): ToldResult => ({
  day,
  outcome: 'done',
  runMinutes: null,
  nextDay: 'normal',
  signs: [],
  note: '',
  updatedAt,
  ...rest,
});
const record = (rest: Partial<ReviewedRecord>): ReviewedRecord => ({
  plan: { ramp, createdAt: MADE },
  sessions: [],
  rules: {},
  day: '2025-03-04',
  clearedByVetOn: null,
  visit: null,
  screening: null,
  unasked: [],
  ...rest,
});
const decision = (rest: Partial<ReviewedRecord>) => reviewRamp(reviewInput(record(rest))).decision;

describe('what a review takes from the record', () => {
  const before = '2025-02-28';
  const early = told(before, '2025-02-28T18:00:00.000Z', { signs: ['lameness'] });
  const late = { ...early, updatedAt: '2025-03-04T18:00:00.000Z' };

  it('leaves out results of an earlier version, which its own review judged', () => {
    const input = reviewInput(record({ sessions: [early, told('2025-03-03', MADE)] }));
    expect(input.results?.map(({ day }) => day)).toEqual(['2025-03-03']);
    expect(input.findings).toBeUndefined();
  });
  // Lameness: stop and vet (soreness rules, human; M).
  it('stops at lameness of an earlier session that was told only since', () => {
    expect(decision({ sessions: [late] })).toBe('stop');
    expect(reviewRamp(reviewInput(record({ sessions: [late] }))).reasons[0]?.text).toContain(
      before,
    );
  });
  it('lets it rest once the vet has cleared the dog after that day', () => {
    expect(decision({ sessions: [late], clearedByVetOn: '2025-03-03' })).not.toBe('stop');
    expect(decision({ sessions: [late], clearedByVetOn: before })).toBe('stop');
  });
  it('takes findings from a visit of the day', () => {
    const sound = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
    const visit = { lamenessWalk: sound, lamenessTrot: { ...sound, leftHind: 1 }, signs: [] };
    expect(decision({ visit, screening: 'vet first' })).toBe('stop');
  });
  it('stops for what the screening of a sound dog found, and for nothing milder', () => {
    const sound = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
    const visit = { lamenessWalk: sound, lamenessTrot: sound, signs: [] };
    expect(decision({ visit, screening: 'vet first' })).toBe('stop');
    expect(decision({ visit, screening: 'walking only' })).toBe('stop');
    expect(decision({ visit, screening: 'ready to start' })).not.toBe('stop');
    expect(decision({ visit, screening: null })).not.toBe('stop');
  });
  it('goes on with lameness no worse than a vet cleared', () => {
    const sound = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
    const clearance = {
      vet: 'Dr Example',
      day: before,
      gait: 'trot',
      limb: 'leftHind',
      scope: 'Running',
    } as const;
    const at = (grade: number, lamenessClearances: object[] = []) =>
      decision({
        visit: {
          lamenessWalk: sound,
          lamenessTrot: { ...sound, leftHind: grade },
          lamenessClearances: lamenessClearances as [],
          signs: [],
        },
      });
    expect(at(1)).toBe('stop');
    expect(at(1, [{ ...clearance, grade: 1 }])).not.toBe('stop');
    expect(at(2, [{ ...clearance, grade: 1 }])).toBe('stop');
  });
  it('stops for a sign at the visit, beside what was told late', () => {
    const sound = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
    const visit = { lamenessWalk: sound, lamenessTrot: sound, signs: ['cough'] };
    const { findings } = reviewInput(record({ visit, sessions: [late] }));
    expect(findings!.signs).toEqual(['cough', `Told since of ${before}: lameness`]);
    expect(decision({ visit: { ...visit, signs: [] }, sessions: [late] })).toBe('stop');
    expect(decision({ visit: { ...visit, signs: [] } })).not.toBe('stop');
  });
  it('stops at stiffness over 48 h told late, and at no milder one', () => {
    const stiff = (nextDay: ToldResult['nextDay']) =>
      decision({ sessions: [{ ...late, signs: [], nextDay }] });
    expect(stiff('stiffness over 48 h')).toBe('stop');
    expect(stiff('stiffness over 24 h')).not.toBe('stop');
    expect(stiff('normal')).not.toBe('stop');
  });
  it('takes what was timed, a clearance by the vet and an illness that is over', () => {
    const timed = told('2025-03-03', MADE, { runMinutes: 7 });
    const input = reviewInput(record({ sessions: [timed], clearedByVetOn: before }));
    expect(input.results![0]).toMatchObject({ runMinutes: 7 });
    expect(input.clearedByVetOn).toBe(before);
    expect(
      reviewInput(record({ sessions: [told('2025-03-03', MADE)] })).results![0],
    ).not.toHaveProperty('runMinutes');
    const sound = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };
    const visit = { lamenessWalk: sound, lamenessTrot: sound, signs: [], wellSince: '2025-03-04' };
    expect(reviewInput(record({ visit })).wellSince).toBe('2025-03-04');
    expect(reviewInput(record({}))).not.toHaveProperty('wellSince');
    expect(reviewInput(record({}))).not.toHaveProperty('clearedByVetOn');
  });
});

describe('runs beside the plan', () => {
  const beside = (sessions: ToldResult[], rest: Partial<ReviewedRecord> = {}) =>
    reviewInput(record({ sessions, day: '2025-03-16', ...rest })).unplanned;
  const run = (day: string, rest: Partial<ToldResult> = {}) =>
    told(day, `${day}T18:00:00.000Z`, { runMinutes: 12, ...rest });

  it('count with their longest run, from the first day of the plan to the day before today', () => {
    expect(beside([run('2025-03-04')])).toEqual([{ day: '2025-03-04', minutes: 12 }]);
    expect(beside([run('2025-03-04', { longestRunMinutes: 9 })])![0]!.minutes).toBe(9);
    expect(beside([run('2025-03-15')])).toHaveLength(1);
    expect(beside([run('2025-03-16')])).toBeUndefined();
    expect(beside([run('2025-03-02')])).toBeUndefined();
    const free = { ...ramp, request: { ...ramp.request, startDay: '2025-03-02' } };
    const early = { plan: { ramp: free, createdAt: MADE } };
    expect(beside([run('2025-03-02')], early)).toHaveLength(1);
  });

  it('are none of a planned day, and none where no minutes are known', () => {
    expect(beside([run('2025-03-05')])).toBeUndefined();
    expect(beside([run('2025-03-04', { runMinutes: null })])).toBeUndefined();
    expect(beside([run('2025-03-04', { runMinutes: 0 })])).toBeUndefined();
  });

  it('count once: not those a version goes on from, or of before the review that made it', () => {
    const resume = {
      weekNumber: 2,
      peakMinutes: 18,
      previousMinutes: 18,
      stepIndex: 0,
      sessionsOnStep: 3,
      longestMinutes: 1,
      lastRunDay: '2025-03-08',
      firstWeekMinutes: null,
      reviewedOn: '2025-03-08',
    } as const;
    const version = (more: object) => ({
      plan: {
        ramp: { ...ramp, request: { ...ramp.request, resume: { ...resume, ...more } } },
        createdAt: MADE,
      },
    });
    const runs = ['2025-03-04', '2025-03-08', '2025-03-11'].map((day) => run(day));
    const days = (more: object) => beside(runs, version(more))?.map(({ day }) => day);
    expect(days({})).toEqual(['2025-03-08', '2025-03-11']);
    const recent = [{ day: '2025-03-08', minutes: 12, response: 'clean' }];
    expect(days({ recent })).toEqual(['2025-03-11']);
  });
});
