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
});
