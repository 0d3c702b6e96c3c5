import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, daysBetween } from '../../../core/day.ts';
import {
  boutPath,
  buildRamp,
  checkRamp,
  firstBouts,
  rampRuleValues,
  reviewRamp,
  type Ramp,
  type ReviewInput,
} from '../../../core/training.ts';
import { followed, histories, sessionsRun, weeksRun } from './histories.ts';

const EPSILON = 1e-6;
const drawn = fc
  .sample(histories, { seed: 11, numRuns: 2000 })
  .map((input) => ({ input, review: reviewRamp(input) }));

function always(holds: (entry: (typeof drawn)[number]) => void): void {
  for (const entry of drawn) {
    try {
      holds(entry);
    } catch (error) {
      const { ramp, ...rest } = entry.input;
      const seen = `For ${JSON.stringify(ramp.request)} ${JSON.stringify(rest)}`;
      throw new Error(seen, { cause: error });
    }
  }
}

/** The hardest step of which a whole bout was run; −1 when the dog did not run. */
function hardestRun(input: ReviewInput): number {
  const path = boutPath(input.ramp.request.start);
  const levels = sessionsRun(input).map(({ kind, runMin, walkMin }) => {
    if (kind === 'continuous') return path.length;
    const reached = path.findLastIndex((step) => step.runMin <= runMin && step.walkMin >= walkMin);
    return Math.max(0, reached);
  });
  return Math.max(-1, ...levels);
}

function cleanOn(input: ReviewInput, step: number): number {
  const path = boutPath(input.ramp.request.start);
  return sessionsRun(input).filter(({ kind, runMin, walkMin, result }) => {
    const clean = result.outcome === 'done' && result.nextDay === 'normal' && !result.signs?.length;
    const at = path[step];
    const on = at === undefined || (runMin >= at.runMin && walkMin <= at.walkMin);
    return clean && (kind === 'continuous' || (at !== undefined && on));
  }).length;
}

const firstWeekMinutes = ({ request }: Ramp): number =>
  firstBouts(request.start, rampRuleValues()) *
  Math.min(3, request.sessionsPerWeek) *
  boutPath(request.start)[0]!.runMin;

describe('a reviewed plan, over generated histories', () => {
  it('has among them every decision and every kind of break', () => {
    const decisions = new Set(drawn.map(({ review }) => review.decision));
    expect([...decisions].sort()).toEqual(['back', 'hold', 'progress', 'stop']);
    const less = new Set(drawn.map(({ review }) => review.returnAfterBreak?.lessPercent));
    expect(less).toEqual(new Set([undefined, 25, 50, 100]));
  });

  it('goes on from no step past the hardest one that was run', () => {
    always(({ input, review }) => {
      const first = review.ramp.weeks.find(({ sessions }) => sessions.length > 0);
      if (first === undefined) return;
      const hardest = hardestRun(input);
      if (first.stepIndex <= Math.max(0, hardest)) return;
      expect(first.stepIndex).toBe(hardest + 1);
      expect(review.decision).toBe('progress');
      expect(cleanOn(input, hardest)).toBeGreaterThanOrEqual(2);
    });
  });

  it('takes the next step only after two sessions on the one before', () => {
    always(({ input, review }) => {
      let step = Math.max(0, hardestRun(input));
      let sessions = 2;
      for (const week of review.ramp.weeks) {
        if (week.sessions.length === 0) continue;
        if (week.stepIndex > step) {
          expect(week.stepIndex).toBe(step + 1);
          expect(sessions).toBeGreaterThanOrEqual(2);
        }
        if (week.stepIndex !== step) sessions = 0;
        step = week.stepIndex;
        if (!week.recovery) sessions += week.sessions.length;
      }
    });
  });

  it('begins with no more than the cap over the fullest week that was run', () => {
    always(({ input, review }) => {
      const [week] = review.ramp.weeks;
      if (week === undefined || review.ramp.weeks === input.ramp.weeks) return;
      const peak = Math.max(0, ...weeksRun(input));
      const start = firstWeekMinutes(review.ramp);
      const rise = 1 + review.ramp.capPercent / 100;
      const most = Math.max(peak * rise, Math.min(peak + 2, 20), start);
      expect(week.runMinutes).toBeLessThanOrEqual(most + EPSILON);
    });
  });

  it('after a break begins so much below the last weeks that were run', () => {
    always(({ input, review }) => {
      const less = review.returnAfterBreak?.lessPercent;
      const [week] = review.ramp.weeks;
      if (week === undefined || (less !== 25 && less !== 50)) return;
      const base = Math.max(firstWeekMinutes(review.ramp), ...weeksRun(input).slice(-3));
      const least = 0.5 * week.sessions.length;
      const most = Math.max((base * (100 - less)) / 100, least);
      expect(week.runMinutes).toBeLessThanOrEqual(most + EPSILON);
    });
  });

  it('on hold runs no more than the last weeks really run until it has repeated them', () => {
    always(({ input, review }) => {
      if (review.decision !== 'hold' || hardestRun(input) === -1) return;
      const building = review.ramp.weeks.findIndex(
        ({ recovery, sessions }) => !recovery && sessions.length > 0,
      );
      const base = Math.max(firstWeekMinutes(review.ramp), ...weeksRun(input).slice(-3));
      for (const week of review.ramp.weeks.slice(0, building + 1)) {
        const least = 0.5 * week.sessions.length;
        expect(week.runMinutes).toBeLessThanOrEqual(Math.max(base, least) + EPSILON);
      }
    });
  });

  it('never raises the load after a bad response', () => {
    always(({ input, review }) => {
      if (review.decision === 'stop') expect(review.ramp.weeks).toEqual([]);
      if (review.decision !== 'back' || hardestRun(input) === -1) return;
      const [week] = review.ramp.weeks;
      if (week === undefined) return;
      const base = Math.max(firstWeekMinutes(review.ramp), ...weeksRun(input).slice(-3));
      const least = 0.5 * week.sessions.length;
      expect(week.runMinutes).toBeLessThanOrEqual(Math.max(base, least) + EPSILON);
      expect(week.stepIndex).toBeLessThanOrEqual(Math.max(0, hardestRun(input)));
    });
  });

  it('keeps every rule, and a day free after the last run', () => {
    always(({ input, review }) => {
      expect(checkRamp(review.ramp).filter(({ gravity }) => gravity === 'breach')).toEqual([]);
      const last = sessionsRun(input).at(-1)?.day;
      const next = review.ramp.weeks
        .flatMap(({ sessions }) => sessions)
        .find(({ day }) => day >= review.fromDay)?.day;
      if (last === undefined || next === undefined) return;
      expect(daysBetween(last, next)).toBeGreaterThanOrEqual(2);
    });
  });

  it('is the same each time', () => {
    for (const { input, review } of drawn.slice(0, 200)) expect(reviewRamp(input)).toEqual(review);
  });
});

describe('a conditioned dog that comes back', () => {
  const ramp = buildRamp({
    startDay: '2026-01-05',
    start: 'conditioned',
    sessionsPerWeek: 3,
    goal: { continuousMinutes: 30 },
  });

  function back(sessions: number, missed: number) {
    const results = followed(ramp, sessions);
    // Two rest days are ordinary.
    const day = addDays(results.at(-1)!.day, missed + 3);
    return reviewRamp({ ramp, results, day });
  }

  it('after 20 days missed runs 1/2 bouts again, half the minutes', () => {
    const { ramp: next, returnAfterBreak } = back(9, 20);
    expect(returnAfterBreak).toEqual({ days: 20, lessPercent: 50 });
    expect(next.weeks[0]!.step).toBe('1 min run, 2 min walk');
    // 50 % of the 25 min of the third week, in whole bouts.
    expect(next.weeks[0]!.runMinutes).toBe(12);
  });

  it('after 11 days missed runs a quarter less', () => {
    const { ramp: next } = back(9, 11);
    expect(next.weeks[0]!.step).toBe('1 min run, 2 min walk');
    expect(next.weeks[0]!.runMinutes).toBe(18);
  });

  it('after 21 days missed on 4/2 goes back to what the minutes hold, and on in order', () => {
    const { ramp: next } = back(24, 21);
    const steps = next.weeks.map(({ step }) => step);
    // 14 min a week, half of 28, are two bouts of 2 min a session; of 4 min they would be one.
    expect(steps[0]).toBe('2 min run, 2 min walk');
    expect(next.goalReachedOn).not.toBeNull();
    expect(steps.indexOf('4 min run, 1 min walk')).toBeLessThan(steps.indexOf('continuous'));
  });

  it('after 6 days missed repeats the week that was run', () => {
    const { ramp: next, decision } = back(9, 6);
    expect(decision).toBe('hold');
    expect(next.weeks[0]!.step).toBe('1 min run, 2 min walk');
    expect(next.weeks[0]!.runMinutes).toBe(25);
  });

  it('after a week broken off counts the minutes run, not those planned', () => {
    // 18 and 21 min were run, then two of three sessions of a week of 25 min.
    expect(back(8, 6).ramp.weeks[0]!.runMinutes).toBe(21);
  });

  it('never having reached a step in a shortened session, does not resume on it', () => {
    const results = followed(ramp, 12);
    const fifth = ramp.weeks[4]!;
    expect(fifth.step).toBe('2 min run, 2 min walk');
    const short = fifth.sessions.map(({ day }) => ({
      day,
      outcome: 'shortened' as const,
      runMinutes: 1,
      nextDay: 'normal' as const,
    }));
    const { ramp: next } = reviewRamp({ ramp, results: [...results, ...short] });
    expect(next.weeks[0]!.step).toBe('1 min run, 2 min walk');
  });

  it('takes the next step only after two clean sessions on the last', () => {
    const results = followed(ramp, 12).concat(
      ramp.weeks[4]!.sessions.map(({ day }, index) => ({
        day,
        outcome: index === 0 ? 'done' : 'shortened',
        nextDay: 'normal',
      })),
    );
    const { ramp: next, decision } = reviewRamp({ ramp, results });
    expect(decision).toBe('hold');
    expect(next.request.resume).toMatchObject({ stepIndex: 1, sessionsOnStep: 1 });
  });
});
