import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import {
  buildRamp,
  reviewRamp,
  stepBackWeek,
  STOP_SIGNS,
  type Ramp,
  type Review,
  type SessionResult,
} from '../../../core/training.ts';
import { followed } from './histories.ts';

const ramp = buildRamp({
  startDay: '2026-01-05',
  start: 'conditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
});
const days = ramp.weeks.flatMap(({ sessions }) => sessions.map(({ day }) => day));

/** The first `count` sessions done and clean, the last of them otherwise. */
function lastWas(count: number, last: Partial<SessionResult>): SessionResult[] {
  return followed(ramp, count).map((result, index) =>
    index === count - 1 ? { ...result, ...last } : result,
  );
}
const codes = ({ reasons }: Review): string[] => reasons.map(({ code }) => code);
const firstMinutes = (version: Ramp): number => version.weeks[0]!.runMinutes;

describe('a review of sessions all clean', () => {
  it('goes on with the plan as it stands', () => {
    const review = reviewRamp({ ramp, results: followed(ramp, 9) });
    expect(review.decision).toBe('progress');
    expect(codes(review)).toEqual(['review-all-clear']);
    expect(review.ramp.weeks).toEqual(ramp.weeks.slice(3));
  });
});

describe('a review in the middle of a week', () => {
  const results = followed(ramp, 14);
  const review = reviewRamp({ ramp, results, rules: {} });

  it('keeps the week as it stands, so that no week is started on top of it', () => {
    expect(review.decision).toBe('progress');
    expect(review.ramp.weeks).toEqual(ramp.weeks.slice(4));
  });

  it('makes the rest anew where the practice changed a rule', () => {
    const changed = reviewRamp({ ramp, results, rules: { recoveryPercent: 60 } });
    expect(changed.ramp.rules.recoveryPercent).toBe(60);
  });

  it('that is held lets the week end first: no two weeks in the same seven days', () => {
    const nextDay = 'mild stiffness gone within 24 h' as const;
    const held = reviewRamp({ ramp, results: lastWas(14, { nextDay }) });
    const first = held.ramp.weeks[0]!.sessions[0]!.day;
    expect(first).toBe(ramp.weeks[5]!.startDay);
    const whole = reviewRamp({ ramp, results: lastWas(15, { nextDay }) });
    expect(whole.ramp.weeks[0]!.sessions[0]!.day < first).toBe(true);
  });

  it('still hears what is told later of a session before it', () => {
    const day = days[13]!;
    const late: SessionResult = { day, outcome: 'done', nextDay: 'normal', signs: ['lameness'] };
    const again = reviewRamp({ ramp: review.ramp, results: [late], day: addDays(day, 2) });
    expect(again.decision).toBe('stop');
  });
});

describe('a next day of which nothing is told', () => {
  it.each([null, undefined])('holds the plan and says so (%s)', (nextDay) => {
    const review = reviewRamp({ ramp, results: lastWas(9, { nextDay }) });
    expect(review.decision).toBe('hold');
    expect(codes(review)).toEqual(['review-next-day-not-told']);
    expect(review.reasons[0]!.text).toContain(days[8]);
  });

  it('no longer holds once three sessions with a normal next day followed', () => {
    const results = followed(ramp, 9).map((result, index) =>
      index === 5 ? { ...result, nextDay: null } : result,
    );
    const review = reviewRamp({ ramp, results });
    expect(review.decision).toBe('progress');
    expect(codes(review)).not.toContain('review-all-clear');
  });

  it('is not settled by sessions of which nothing is told either', () => {
    const results = followed(ramp, 9).map((result) => ({ ...result, nextDay: null }));
    expect(reviewRamp({ ramp, results }).decision).toBe('hold');
  });
});

describe('a review before anything was due', () => {
  it('does not say that all was done and normal', () => {
    const review = reviewRamp({ ramp, day: '2026-01-05' });
    expect(review.decision).toBe('progress');
    expect(codes(review)).toEqual(['review-nothing-due']);
  });

  it('says so too right after another review', () => {
    const first = reviewRamp({ ramp, results: followed(ramp, 9) });
    const again = reviewRamp({ ramp: first.ramp, day: first.fromDay });
    expect(codes(again)).toEqual(['review-nothing-due']);
  });
});

describe('a plan of which nothing was run', () => {
  it.each([5, 11, 20])('begins again and claims no reduction, %i days on', (late) => {
    const review = reviewRamp({ ramp, day: addDays('2026-01-05', late) });
    expect(review.decision).toBe('hold');
    expect(review.returnAfterBreak).toBeNull();
    expect(codes(review)).toContain('review-not-begun');
    expect(codes(review).join()).not.toContain('break');
    expect(firstMinutes(review.ramp)).toBe(18);
  });

  it('asks for the walk base once it is over 28 days late', () => {
    const review = reviewRamp({ ramp, day: addDays('2026-01-05', 35) });
    expect(codes(review)).toContain('review-break-restart');
    expect(review.walkBaseFirst).toBe(true);
  });
});

describe('what holds', () => {
  it('mild stiffness: repeats the week, recovery first where it is due', () => {
    const nextDay = 'mild stiffness gone within 24 h' as const;
    const held = reviewRamp({ ramp, results: lastWas(9, { nextDay }) });
    const gone = reviewRamp({ ramp, results: followed(ramp, 9) });
    expect(held.decision).toBe('hold');
    // The third week (25 min) ended; the fourth is the recovery week of both.
    expect(held.ramp.weeks[0]!.recovery).toBe(true);
    const repeated = held.ramp.weeks[1]!;
    expect(repeated.runMinutes).toBeLessThanOrEqual(25);
    expect(repeated.step).toBe(ramp.weeks[2]!.step);
    expect(gone.ramp.weeks[1]!.runMinutes).toBeGreaterThan(repeated.runMinutes);
  });

  it('mild stiffness in an ordinary week: the week is run again', () => {
    const nextDay = 'mild stiffness gone within 24 h' as const;
    const { ramp: next } = reviewRamp({ ramp, results: lastWas(6, { nextDay }) });
    expect(firstMinutes(next)).toBe(21);
  });
});

describe('what stops', () => {
  it.each(STOP_SIGNS)('%s rests on practice and caution first, human rules second', (sign) => {
    const review = reviewRamp({ ramp, results: lastWas(6, { signs: [sign] }) });
    expect(review.decision).toBe('stop');
    expect(review.ramp.weeks).toEqual([]);
    const sources = ['commonPractice', 'ownDecision', 'sorenessRules'];
    expect(review.reasons[0]).toMatchObject({ evidence: 'D', mark: 'CP', sources });
  });

  it('stiffness over 48 h likewise', () => {
    const review = reviewRamp({ ramp, results: lastWas(6, { nextDay: 'stiffness over 48 h' }) });
    expect(review.decision).toBe('stop');
    expect(review.reasons[0]!.sources[0]).toBe('commonPractice');
  });
});

describe('after a stop', () => {
  // Collapse in the first session of the fifth week: the first on 2/2, and not run to its end.
  const signs = ['collapse'] as const;
  const last = { signs, outcome: 'shortened', runMinutes: 1 } as const;
  const stopped = reviewRamp({ ramp, results: lastWas(13, last) }).ramp;

  it('the next review still stops while no vet has cleared the dog', () => {
    const review = reviewRamp({ ramp: stopped, day: addDays(days[12]!, 5) });
    expect(review.decision).toBe('stop');
    expect(codes(review)).toEqual(['review-not-cleared']);
    const third = reviewRamp({ ramp: review.ramp, day: addDays(days[12]!, 7) });
    expect(third.decision).toBe('stop');
  });

  it('a cleared dog comes back on a step it has run, below what it ran', () => {
    const clearedByVetOn = addDays(days[12]!, 4);
    const review = reviewRamp({ ramp: stopped, day: addDays(days[12]!, 5), clearedByVetOn });
    expect(review.decision).toBe('progress');
    expect(review.ramp.weeks[0]!.step).toBe('1 min run, 2 min walk');
    expect(firstMinutes(review.ramp)).toBeLessThan(25);
    expect(firstMinutes(review.ramp)).toBeGreaterThan(0);
  });

  it('a clearance from before the stop does not count', () => {
    const clearedByVetOn = addDays(days[12]!, -1);
    const review = reviewRamp({ ramp: stopped, day: addDays(days[12]!, 5), clearedByVetOn });
    expect(review.decision).toBe('stop');
  });

  it('a sign is settled by a clearance of a later day, and by no other', () => {
    const results = lastWas(6, { signs: ['lameness'] });
    const on = (after: number) =>
      reviewRamp({
        ramp,
        day: addDays(days[5]!, 5),
        results,
        clearedByVetOn: addDays(days[5]!, after),
      }).decision;
    expect([-20, -1, 0].map(on)).toEqual(['stop', 'stop', 'stop']);
    expect(on(1)).not.toBe('stop');
  });

  it('"walking only" is lifted by a screening that says ready', () => {
    const walking = reviewRamp({
      ramp,
      results: followed(ramp, 6),
      findings: { screening: 'walking only' },
    }).ramp;
    const day = addDays(days[5]!, 4);
    expect(codes(reviewRamp({ ramp: walking, day }))).toEqual(['review-still-walking']);
    const ready = reviewRamp({ ramp: walking, day, findings: { screening: 'ready to start' } });
    expect(ready.decision).toBe('progress');
  });
});

describe('a break that goes on', () => {
  it('is taken off once, however often the plan is reviewed in it', () => {
    const results = followed(ramp, 9);
    const onDay = (missed: number): string => addDays(days[8]!, missed + 3);
    const at11 = reviewRamp({ ramp, results, day: onDay(11) });
    const at12 = reviewRamp({ ramp: at11.ramp, day: onDay(12) });
    expect(firstMinutes(at12.ramp)).toBe(firstMinutes(at11.ramp));
    const at20 = reviewRamp({ ramp: at12.ramp, day: onDay(20) });
    // Half of 25 min would lie under the start level.
    expect(firstMinutes(at20.ramp)).toBe(18);
    expect(at20.ramp.weeks[0]!.step).toBe('1 min run, 2 min walk');
  });
});

describe('what was really run', () => {
  it('counts for the longest run of the 30 days, planned or not, and raises no load', () => {
    const results = followed(ramp, 9);
    const alone = reviewRamp({ ramp, results });
    const day = addDays(days[8]!, 1);
    const more = reviewRamp({
      ramp,
      results,
      unplanned: [{ day, minutes: 40 }],
      day: addDays(day, 1),
    });
    expect(more.ramp.request.resume!.recent).toContainEqual({
      day,
      minutes: 40,
      response: 'other',
    });
    expect(more.ramp.weeks.map((week) => week.runMinutes)).toEqual(
      alone.ramp.weeks.map((week) => week.runMinutes),
    );
  });

  it('holds the next session to the longest run where less was run than planned', () => {
    // Every session cut short in week 10: the week comes again, no session jumps past the cap.
    const results = followed(ramp, 30).map((result, index) =>
      index >= 18 ? { ...result, outcome: 'held' as const, runMinutes: 6 } : result,
    );
    const { ramp: next } = reviewRamp({ ramp, results, day: addDays(days[29]!, 1) });
    const first = next.weeks.flatMap(({ sessions }) => sessions)[0]!;
    const since = addDays(first.day, -30);
    const longest = Math.max(
      ...results.map(({ day, runMinutes }) => {
        if (day < since) return 0;
        return (
          runMinutes ?? ramp.weeks.flatMap((w) => w.sessions).find((s) => s.day === day)!.runMinutes
        );
      }),
    );
    expect(first.runMinutes).toBeLessThanOrEqual(Math.max(longest * 1.1, longest + 2));
    expect(next.goalReachedOn).not.toBeNull();
  });
});

describe('the step back that a week names', () => {
  it('is where a setback in that week leads', () => {
    const ends = ramp.weeks.map(({ sessions }) => days.indexOf(sessions.at(-1)!.day) + 1);
    for (const [index, count] of ends.entries()) {
      const named = stepBackWeek(ramp.weeks, index);
      if (named === null) continue;
      const nextDay = 'stiffness over 24 h' as const;
      const review = reviewRamp({ ramp, results: lastWas(count, { nextDay }) });
      const { sessions } = ramp.weeks.find(({ number }) => number === named)!;
      const shape = ({ repeats, runMin, walkMin }: (typeof sessions)[number]) =>
        [repeats, runMin, walkMin].join(' ');
      // An easy week that is due comes first.
      const back = review.ramp.weeks.find(({ recovery }) => !recovery)!;
      expect(back.sessions.map(shape), `after week ${index + 1}`).toEqual(sessions.map(shape));
    }
  });

  it('is none in the first week', () => {
    expect(stepBackWeek(ramp.weeks, 0)).toBeNull();
  });
});
