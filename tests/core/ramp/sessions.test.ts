import { describe, expect, it } from 'vitest';
import {
  boutSession,
  continuousSession,
  continuousWeek,
  givenWeek,
  longestAt,
  withEfforts,
  type SessionPlan,
} from '../../../core/ramp/sessions.ts';
import { rampRuleValues } from '../../../core/rules/ramp.ts';

// Sessions of a week by hand from the rules (D): whole minutes, whole bouts, runs alike up to 20 min,
// then 100/75/75 %, none without a break under 5 min.

const rules = rampRuleValues();
const shape = (plans: readonly SessionPlan[]) =>
  plans.map(({ kind, repeats, runMin }) => (kind === 'bouts' ? `${repeats} × ${runMin}` : runMin));
const given = (step: readonly [number, number] | null, minutes: number, count = 3) =>
  shape(
    givenWeek(step === null ? null : { runMin: step[0], walkMin: step[1] }, minutes, count, rules),
  );

describe('a week of so many minutes', () => {
  it('without a break is alike up to 20 min, then one run is the longest', () => {
    expect(given(null, 50)).toEqual([16, 16, 16]);
    expect(given(null, 59)).toEqual([19, 19, 19]);
    expect(given(null, 62)).toEqual([25, 18, 18]);
    // 28, 21 and 21 are 70; one minute less leaves the long run 27.
    expect(given(null, 70)).toEqual([28, 21, 21]);
    expect(given(null, 69)).toEqual([27, 20, 20]);
    expect(continuousWeek(20, 3, rules)).toEqual([20, 20, 20]);
    expect(continuousWeek(21, 3, rules)).toEqual([21, 15, 15]);
  });

  it('without a break has fewer runs rather than any under 5 min', () => {
    expect(given(null, 15)).toEqual([5, 5, 5]);
    expect(given(null, 14)).toEqual([7, 7]);
    expect(given(null, 9)).toEqual([9]);
    expect(given(null, 5)).toEqual([5]);
    expect(given(null, 4)).toEqual([]);
  });

  it('in bouts has whole ones, the fuller sessions last', () => {
    expect(given([2, 2], 36)).toEqual(['6 × 2', '6 × 2', '6 × 2']);
    expect(given([2, 2], 40)).toEqual(['6 × 2', '7 × 2', '7 × 2']);
    expect(given([2, 2], 38)).toEqual(['6 × 2', '6 × 2', '7 × 2']);
  });

  it('in bouts takes somewhat shorter ones where these come nearer to it', () => {
    // Of 4 min 5 bouts are 20, of 3 min 7 are 21.
    expect(given([4, 2], 21)).toEqual(['2 × 3', '2 × 3', '3 × 3']);
    // Alike as near, they stay as long as they were.
    expect(given([4, 2], 24)).toEqual(['2 × 4', '2 × 4', '2 × 4']);
    // Half as long at the least: of 2 min 11 bouts are 22, of 1 min 23.
    expect(given([4, 2], 23)).toEqual(['3 × 2', '4 × 2', '4 × 2']);
  });

  it('in bouts takes much shorter ones only where each session has none of the others', () => {
    expect(given([4, 2], 5)).toEqual(['1 × 1', '2 × 1', '2 × 1']);
    expect(given([4, 2], 6)).toEqual(['1 × 2', '1 × 2', '1 × 2']);
    expect(given([4, 2], 2)).toEqual(['1 × 1', '1 × 1']);
    expect(given([1, 2], 0.5)).toEqual([]);
    // Half minutes after injury only.
    expect(given([0.5, 4], 2.5)).toEqual(['1 × 0.5', '2 × 0.5', '2 × 0.5']);
    expect(given([1, 4], 2.5)).toEqual(['1 × 1', '1 × 1']);
  });
});

describe('the effort of a session', () => {
  const efforts = (...minutes: number[]) =>
    withEfforts(minutes.map(continuousSession)).map(({ effort }) => effort);

  it('is long for the longest, the first of several, and medium or easy for the others', () => {
    expect(efforts(30, 22, 22)).toEqual(['long', 'easy', 'easy']);
    expect(efforts(20, 20, 18)).toEqual(['long', 'medium', 'medium']);
    expect(efforts(20, 20, 17.9)).toEqual(['long', 'medium', 'easy']);
    expect(efforts(16, 20, 20)).toEqual(['easy', 'long', 'medium']);
  });

  it('is medium where all are alike, in bouts or without a break', () => {
    expect(efforts(20, 20, 20)).toEqual(['medium', 'medium', 'medium']);
    const alike = [boutSession({ runMin: 2, walkMin: 2 }, 10), continuousSession(20)];
    expect(withEfforts(alike).map(({ effort }) => effort)).toEqual(['medium', 'medium']);
    expect(withEfforts([])).toEqual([]);
    expect(longestAt([16, 20, 20].map(continuousSession))).toBe(1);
  });
});
