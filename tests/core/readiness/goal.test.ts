import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  buildRamp,
  goalLimitsOf,
  openGoalLimits,
  screenForRunning,
  type AssessInput,
  type ScreeningInput,
} from '../../../core/index.ts';
import { grownDog, visit } from '../assess/visits.ts';
import { DAY, fullRecords, READY } from './inputs.ts';
import { holds } from '../../support/laws.ts';

// Limits of the goal by the dog: 30 min with a short nose or from body condition 6, over 90 min the
// vet's written yes (all D).

const open = (input: ScreeningInput): string[] =>
  openGoalLimits(screenForRunning(input).reasons).map(({ code }) => code);
const asked = (goalMinutes: number, changes: ScreeningInput = {}): ScreeningInput => ({
  ...READY,
  ...changes,
  goalMinutes,
});
const because = (code: string): ScreeningInput => ({
  overrides: [{ code, reason: 'The vet and I agreed on it.' }],
});

describe('a goal is limited by the dog', () => {
  it.each<readonly [string, ScreeningInput, readonly string[]]>([
    ['30 min at body condition 6', asked(30, { bcs: 6 }), []],
    ['32.5 min at body condition 7', asked(32.5, { bcs: 7 }), ['goal-limit']],
    ['60 min at body condition 5', asked(60, { bcs: 5 }), []],
    ['31 min with a short nose', asked(31, { shortNosed: true }), ['goal-limit']],
    ['90 min', asked(90), []],
    ['a marathon', asked(240), ['goal-long']],
    ['a marathon the vet agreed to', asked(240, { longRunClearance: true }), []],
    [
      'the same at body condition 6',
      asked(240, { longRunClearance: true, bcs: 6 }),
      ['goal-limit'],
    ],
    ['30 min set aside', asked(60, { bcs: 6, ...because('goal-limit') }), []],
    ['90 min set aside', asked(240, because('goal-long')), ['goal-long']],
  ])('%s', (_, input, codes) => {
    expect(open(input)).toEqual(codes);
  });

  it('names limit, unit and why', () => {
    const [reason] = openGoalLimits(screenForRunning(asked(32.5, { bcs: 7 })).reasons);
    expect(reason).toMatchObject({
      text: 'The goal of 32.5 min without a break is over 30 min, the most with body condition 7 of 9.',
      evidence: 'D',
      sources: ['ownDecision'],
      params: { minutes: 32.5, limit: 30 },
    });
  });

  it('follows the rule of the practice', () => {
    const rules = { goalShortMinutes: 20 };
    expect(open(asked(25, { bcs: 6, rules }))).toEqual(['goal-limit']);
    expect(open(asked(25, { bcs: 6 }))).toEqual([]);
  });

  it('a longer goal never stands under fewer limits, and none of them changes the outcome', () => {
    holds(
      fc.property(fullRecords, fc.integer({ min: 1, max: 239 }), (record, minutes) => {
        const shorter = screenForRunning({ ...record, goalMinutes: minutes });
        const longer = screenForRunning({ ...record, goalMinutes: minutes + 1 });
        const held = openGoalLimits(longer.reasons).map(({ code }) => code);
        for (const { code } of openGoalLimits(shorter.reasons)) expect(held).toContain(code);
        expect(longer.outcome).toBe(shorter.outcome);
      }),
      { seed: 1, numRuns: 2000 },
    );
  });

  it('refuses a goal out of range', () => {
    expect(() => screenForRunning(asked(-1))).toThrow(/goalMinutes must be from 0 to 1440 min/);
  });
});

describe('a record', () => {
  const input = (bcs: number): AssessInput => ({
    dog: grownDog,
    visits: [visit('2026-01-05', null, { bcs }), visit(DAY, null, { bcs: null })],
    foodDecisions: [],
    day: DAY,
  });
  const request = buildRamp({
    startDay: DAY,
    start: 'unconditioned',
    sessionsPerWeek: 3,
    goal: { distanceKm: 5, paceMinPerKm: 6.5 },
  }).request;

  it('is held to the last known body condition, weighed or not', () => {
    expect(goalLimitsOf(input(7), request).map(({ code }) => code)).toEqual(['goal-limit']);
    expect(goalLimitsOf(input(5), request)).toEqual([]);
  });

  it('has no run to limit in a walking programme', () => {
    expect(goalLimitsOf(input(7), { ...request, programme: 'walking' })).toEqual([]);
  });
});
