import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween } from '../../../core/day.ts';
import {
  buildRamp,
  reviewRamp,
  SESSION_OUTCOMES,
  walkBaseWalked,
  type Ramp,
  type RampRequest,
  type SessionResult,
} from '../../../core/training.ts';
import { followed } from './histories.ts';
import { holds } from '../../support/laws.ts';

// A walking programme: brisk walks on 5 days a week, 5 min longer each week up to the walk base of
// 30 min; our own choice (D), walking first is common practice (CP).
const request: RampRequest = {
  programme: 'walking',
  startDay: '2026-01-05',
  start: 'unconditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
};
const ramp = buildRamp(request);
const walks = ramp.weeks.flatMap(({ sessions }) => sessions);

describe('a walking programme', () => {
  it('walks on five days a week, from 10 min, 5 min longer each week, to a week of 30 min', () => {
    expect(ramp.weeks.map(({ sessions }) => sessions.map(({ runMin }) => runMin))).toEqual([
      [10, 10, 10, 10, 10],
      [15, 15, 15, 15, 15],
      [20, 20, 20, 20, 20],
      [25, 25, 25, 25, 25],
      [30, 30, 30, 30, 30],
    ]);
    expect(walks.every(({ kind, warmUpMin }) => kind === 'walk' && warmUpMin === 0)).toBe(true);
    // The second full walk makes the walk base.
    expect(ramp.goalReachedOn).toBe(walks.at(-4)!.day);
  });

  it('takes what the dog walks today as its start', () => {
    const [first] = buildRamp({ ...request, walkMinutesNow: 22 }).weeks;
    expect(first!.sessions.map(({ runMin }) => runMin)).toEqual([22, 22, 22, 22, 22]);
  });
});

describe('a review of a walking programme', () => {
  const at = (count: number, last: Partial<SessionResult> = {}) => {
    const results = followed(ramp, count);
    results[count - 1] = { ...results[count - 1]!, ...last };
    return { ramp, results, day: addDays(results.at(-1)!.day, 2) };
  };

  it('goes on as planned while a screening says walking only: that is what it is for', () => {
    const review = reviewRamp({ ...at(5), findings: { screening: 'walking only' } });
    expect(review.decision).toBe('progress');
    expect(review.ramp.weeks).toEqual(ramp.weeks.slice(1));
  });

  it('stops for what only a vet may settle', () => {
    expect(reviewRamp({ ...at(5), findings: { screening: 'vet first' } }).decision).toBe('stop');
    expect(reviewRamp(at(5, { signs: ['lameness'] })).decision).toBe('stop');
  });

  it('walks the week again after mild stiffness, and a step back after a longer one', () => {
    const walked = (next: SessionResult['nextDay']) =>
      reviewRamp(at(10, { nextDay: next })).ramp.weeks[0]!.sessions[0]!.runMin;
    expect(walked('mild stiffness gone within 24 h')).toBe(15);
    expect(walked('stiffness over 24 h')).toBe(10);
  });

  it('begins anew after a long break, at once: the walks themselves build the walk base', () => {
    const day = addDays(followed(ramp, 10).at(-1)!.day, 40);
    const review = reviewRamp({ ramp, results: followed(ramp, 10), day });
    expect(review.reasons.map(({ code }) => code)).toContain('review-break-anew');
    expect(review.walkBaseFirst).toBe(false);
    expect(daysBetween(day, review.ramp.weeks[0]!.sessions[0]!.day)).toBeLessThanOrEqual(1);
    expect(review.ramp.weeks[0]!.sessions[0]!.runMin).toBe(10);
  });

  it('ends with the two full walks, sound and clear after both', () => {
    expect(reviewRamp(at(walks.length)).ramp.weeks).toEqual([]);
    const base = (told: ReturnType<typeof at>) => walkBaseWalked(told.ramp, told.results);
    const second = walks.length - 3;
    expect(base(at(second))).toEqual([walks.at(-5)!.day, walks.at(-4)!.day]);
    expect(base(at(second - 1))).toBeNull();
    expect(base(at(second, { nextDay: 'stiffness over 24 h' }))).toBeNull();
  });

  it('a running plan passes no walk base', () => {
    const running = buildRamp({ ...request, programme: 'running' });
    expect(walkBaseWalked(running, followed(running, 20))).toBeNull();
  });
});

describe('whatever becomes of the walks', () => {
  const result = fc.record({
    outcome: fc.constantFrom(...SESSION_OUTCOMES),
    nextDay: fc.constantFrom('normal' as const, 'mild stiffness gone within 24 h' as const),
  });
  const reviews = fc.array(fc.array(result, { minLength: 1, maxLength: 6 }), { maxLength: 6 });

  it('no walk is longer than 30 min nor more than 5 min longer than any before, and the end is in sight', () => {
    holds(
      fc.property(reviews, fc.integer({ min: 1, max: 35 }), (told, now) => {
        let plan: Ramp = buildRamp({ ...request, walkMinutesNow: now });
        let longest = Math.min(now, 30);
        for (const outcomes of told) {
          const sessions = plan.weeks.flatMap((week) => week.sessions);
          const results = outcomes.slice(0, sessions.length).map((outcome, index) => ({
            day: sessions[index]!.day,
            ...outcome,
          }));
          if (results.length === 0) return;
          const review = reviewRamp({ ramp: plan, results });
          if (review.decision === 'stop') return;
          const next = review.ramp.weeks.flatMap((week) => week.sessions);
          const walked = sessions.slice(0, results.length).map(({ runMin }) => runMin);
          longest = Math.max(longest, ...walked);
          expect(next[0]?.runMin ?? 0).toBeLessThanOrEqual(Math.min(30, longest + 5));
          expect(next.length === 0 || review.ramp.goalReachedOn !== null).toBe(true);
          plan = review.ramp;
        }
      }),
    );
  });
});
