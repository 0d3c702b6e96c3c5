import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import {
  buildRamp,
  checkRamp,
  editRamp,
  isBeginning,
  isSetback,
  reviewRamp,
  type Ramp,
  type Review,
  type ReviewInput,
  type SessionResult,
} from '../../../core/training.ts';

// What a review makes of each thing that was told, with its thresholds. The soreness rules are those of
// human rehabilitation (M); the counts are ours (D): six clean sessions settle a setback, three a mild
// sign or a missed session; a second setback in 28 days goes back two steps, a third goes to the vet.

const START = '2026-01-05';
const ramp = buildRamp({
  startDay: START,
  start: 'conditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
});
const days = ramp.weeks.flatMap(({ sessions }) => sessions.map(({ day }) => day));
const MILD = { nextDay: 'mild stiffness gone within 24 h' } as const;
const OVER_24 = { nextDay: 'stiffness over 24 h' } as const;
const BACK_AGAIN = { nextDay: 'stiffness cleared and returned' } as const;
const OVER_48 = { nextDay: 'stiffness over 48 h' } as const;
const MISSED = { outcome: 'missed', nextDay: null } as const;
const HELD = { outcome: 'held', nextDay: null } as const;
const SHORTENED = { outcome: 'shortened', runMinutes: 2 } as const;

type Told = Readonly<Record<number, Partial<SessionResult>>>;
/** The first `count` sessions done and clean, but for those told otherwise by their place from 1. */
const told = (count: number, other: Told = {}): SessionResult[] =>
  days
    .slice(0, count)
    .map((day, index) => ({ day, outcome: 'done', nextDay: 'normal', ...other[index + 1] }));
const review = (count: number, other: Told = {}, rest: Partial<ReviewInput> = {}): Review =>
  reviewRamp({ ramp, results: told(count, other), ...rest });
const codes = ({ reasons }: Review) => reasons.map(({ code }) => code);
const find = (of: Review, code: string) => of.reasons.find((reason) => reason.code === code);
const after = (count: number, more: number) => addDays(days[count - 1]!, more);

describe('stiffness', () => {
  it('gone within a day holds the plan until three clean sessions followed', () => {
    expect(review(8, { 6: MILD }).decision).toBe('hold');
    const over = review(9, { 6: MILD });
    expect([over.decision, codes(over)]).toEqual([
      'progress',
      ['review-settled', 'review-mild-stiffness'],
    ]);
    expect(find(over, 'review-mild-stiffness')!.params).toEqual({
      day: days[5],
      response: MILD.nextDay,
    });
    // Sessions that were not clean do not count.
    expect(review(9, { 6: MILD, 8: { nextDay: null } }).decision).toBe('hold');
  });

  it.each([
    ['review-stiff-24', OVER_24],
    ['review-stiff-returned', BACK_AGAIN],
  ])(
    'that goes on or returns goes back until six clean sessions followed: %s',
    (code, response) => {
      const back = review(11, { 6: response });
      expect([back.decision, codes(back)]).toEqual(['back', [code]]);
      expect(find(back, code)).toMatchObject({
        params: { day: days[5], response: response.nextDay },
        rules: ['daysOffAfterBack', 'settledAfter'],
        sources: ['sorenessRules'],
      });
      expect(isSetback(back.reasons)).toBe(true);
      expect(review(12, { 6: response }).decision).toBe('progress');
    },
  );

  it('of over 48 h stops, and is settled by a clearance of a later day only', () => {
    const stopped = review(6, { 6: OVER_48 });
    expect([stopped.decision, codes(stopped)]).toEqual(['stop', ['review-stiff-48']]);
    expect(stopped.reasons[0]!.params).toEqual({ day: days[5], response: OVER_48.nextDay });
    const cleared = (more: number) =>
      review(6, { 6: OVER_48 }, { day: after(6, 5), clearedByVetOn: after(6, more) }).decision;
    expect([cleared(0), cleared(1)]).toEqual(['stop', 'progress']);
  });

  it('gives two days off and a step back', () => {
    const back = review(9, { 9: OVER_24 });
    // The day after, and two days off: the first run no sooner than the fourth day after it.
    expect(back.ramp.weeks[0]!.sessions[0]!.day).toBe(after(9, 4));
    const week = back.ramp.weeks.find(({ recovery }) => !recovery)!;
    expect(week.runMinutes).toBe(21);
  });
});

describe('setbacks that come again', () => {
  const two = { 5: OVER_24, 10: BACK_AGAIN };

  it('go back two steps the second time within four weeks', () => {
    const again = review(10, two);
    expect(again.decision).toBe('back');
    expect(codes(again)).toContain('review-again');
    expect(find(again, 'review-again')).toMatchObject({
      params: { count: 2 },
      rules: ['setbackDays', 'settledAfter'],
    });
    const building = (of: Review) => of.ramp.weeks.find(({ recovery }) => !recovery)!;
    const once = review(10, { 10: OVER_24 });
    expect(codes(once)).not.toContain('review-again');
    expect(building(again).rung).toBe(building(once).rung! - 1);
  });

  it('are settled by six clean sessions between', () => {
    expect(codes(review(11, { 5: OVER_24, 11: OVER_24 }))).toContain('review-again');
    expect(codes(review(12, { 5: OVER_24, 12: OVER_24 }))).not.toContain('review-again');
  });

  it('are forgotten after 28 days', () => {
    const held = Object.fromEntries([2, 3, 4, 5, 6, 7, 8, 9, 10, 11].map((nth) => [nth, HELD]));
    const on = (day: string) => codes(review(12, { ...held, 1: OVER_24, 12: OVER_24 }, { day }));
    expect(on(addDays(START, 28))).toContain('review-again');
    expect(on(addDays(START, 29))).not.toContain('review-again');
  });

  it('go to the vet the third time', () => {
    const third = review(9, { 3: OVER_24, 6: OVER_24, 9: BACK_AGAIN });
    expect(third.decision).toBe('stop');
    expect(find(third, 'review-third')).toMatchObject({ params: { count: 3 } });
    expect(third.ramp.weeks).toEqual([]);
  });

  it('do not count again at the next review, and are remembered for the one after', () => {
    const first = review(10, two);
    const next = first.ramp.weeks.flatMap(({ sessions }) => sessions.map(({ day }) => day));
    const clean = { day: next[0]!, outcome: 'done', nextDay: 'normal' } as const;
    const calm = reviewRamp({ ramp: first.ramp, results: [clean] });
    expect(codes(calm)).not.toContain('review-again');
    const third = reviewRamp({ ramp: first.ramp, results: [{ ...clean, ...OVER_24 }] });
    expect([third.decision, codes(third).includes('review-third')]).toEqual(['stop', true]);
    const results = [{ ...clean, ...OVER_24 }];
    const cleared = (clearedByVetOn: string) =>
      codes(reviewRamp({ ramp: first.ramp, results, clearedByVetOn, day: addDays(next[0]!, 1) }));
    // Those from before the vet cleared the dog are over.
    expect(cleared(addDays(days[9]!, 1))).not.toContain('review-third');
    expect(cleared(days[9]!)).toContain('review-again');
  });

  it('of mild stiffness go to the vet after three of the last six runs', () => {
    const stopped = review(9, { 4: MILD, 6: MILD, 9: MILD });
    expect(stopped.decision).toBe('stop');
    expect(find(stopped, 'review-third')!.params).toEqual({ count: 3 });
    expect(review(9, { 3: MILD, 6: MILD, 9: MILD }).decision).toBe('hold');
    // Sessions that were not run are no runs.
    expect(review(9, { 3: MILD, 5: HELD, 6: MILD, 9: MILD }).decision).toBe('stop');
    // Told once: a clean run later it is no news.
    expect(review(10, { 5: MILD, 7: MILD, 9: MILD }).decision).toBe('stop');
    expect(codes(review(12, { 5: MILD, 6: MILD, 7: MILD }))).not.toContain('review-third');
  });
});

describe('what is found on the day', () => {
  const on = (findings: ReviewInput['findings']) => review(6, {}, { findings: findings! });

  it('stops for lameness, by the worst limb', () => {
    const walk = on({ lameness: { walk: { leftFore: 1, rightHind: 2 } } });
    expect([walk.decision, codes(walk)]).toEqual(['stop', ['review-lameness-walk']]);
    expect(walk.reasons[0]!.params).toEqual({ grade: 2 });
    expect(codes(on({ lameness: { trot: { leftHind: 1 } } }))).toEqual(['review-lameness-trot']);
    expect(on({ lameness: { walk: { leftFore: 0 }, trot: {} } }).decision).toBe('progress');
  });

  it('stops for a sign, and for what a screening says', () => {
    const sign = on({ signs: ['collapse'] });
    expect([sign.decision, sign.reasons[0]!.params]).toEqual(['stop', { sign: 'collapse' }]);
    expect(codes(on({ screening: 'vet first' }))).toEqual(['review-vet-first']);
    expect(codes(on({ screening: 'walking only' }))).toEqual(['review-walking-only']);
    expect(on({ screening: 'ready to start' }).decision).toBe('progress');
  });

  it('tells of a stop sign by its name and day', () => {
    const [reason] = review(6, { 6: { signs: ['lameness'] } }).reasons;
    expect(reason!.text).toBe(`Lameness on ${days[5]}.`);
    expect(reason!.params).toEqual({ sign: 'lameness', day: days[5] });
  });

  it('is told first, the strictest before what else was seen', () => {
    const all = review(6, { 5: MISSED, 6: { ...MILD, signs: ['refusal'] } });
    expect(codes(all)).toEqual(['review-stop-sign', 'review-mild-stiffness', 'review-missed']);
    // A mild sign that is over comes after what holds the plan.
    const held = review(9, { 3: MILD, 8: MISSED, 9: MISSED });
    expect(codes(held)).toEqual(['review-missed', 'review-mild-stiffness']);
  });
});

describe('a stop', () => {
  const stopped = (rest: Partial<ReviewInput> = {}) =>
    review(15, { 15: { signs: ['lameness'] } }, rest).ramp;
  const next = (of: Ramp, clearedByVetOn?: string, more = 5) =>
    reviewRamp({
      ramp: of,
      day: after(15, more),
      ...(clearedByVetOn === undefined ? {} : { clearedByVetOn }),
    });

  it('stands until a vet has cleared the dog, on its day at the soonest, and by the review', () => {
    const from = after(15, 1);
    expect(next(stopped()).reasons[0]).toMatchObject({
      code: 'review-not-cleared',
      params: { day: from },
    });
    expect(next(stopped(), after(15, 0)).decision).toBe('stop');
    expect(next(stopped(), from).decision).toBe('progress');
    expect(next(stopped(), after(15, 5)).decision).toBe('progress');
    expect(next(stopped(), after(15, 6)).decision).toBe('stop');
  });

  it('of walking only is lifted by a clearance too', () => {
    const of = stopped();
    const walking = review(15, {}, { findings: { screening: 'walking only' } }).ramp;
    expect(next(walking).reasons[0]).toMatchObject({ code: 'review-still-walking' });
    expect(next(walking, after(15, 3)).decision).toBe('progress');
    expect(of.version).toBe(2);
  });

  it('goes on from a step below the last whole week', () => {
    // Fifteen sessions: five weeks, the fourth an easy one. The fifth, 30 min, was the fourth rung.
    expect(stopped().request.resume).toMatchObject({ rung: 2, lastRung: 2, weekNumber: 6 });
    // Of the sixth week one session was run, which makes no week: a step below the fifth again.
    const midst = review(16, { 16: { signs: ['lameness'] } }).ramp;
    expect(midst.request.resume).toMatchObject({ rung: 2, lastRung: 2, weekNumber: 7 });
    const first = review(1, { 1: { outcome: 'shortened', runMinutes: 0, signs: ['collapse'] } });
    expect(first.ramp.request.resume).toMatchObject({ rung: 0, lastRung: -1, weekNumber: 1 });
  });

  it('drops an event that is over, and keeps one ahead', () => {
    const event = (eventDay: string) => {
      const of = buildRamp({ ...ramp.request, eventDay });
      const results = [{ day: days[0]!, outcome: 'done', signs: ['collapse' as const] } as const];
      const day = addDays(START, 20);
      return reviewRamp({ ramp: of, results, day }).ramp;
    };
    expect(event(addDays(START, 40)).request.eventDay).toBe(addDays(START, 40));
    expect(event(addDays(START, 20)).request).not.toHaveProperty('eventDay');
    expect(event(addDays(START, 19)).request.startDay).toBe(addDays(START, 20));
    const plan = event(addDays(START, 40));
    expect(plan).toMatchObject({ weeks: [], stages: [], goalReachedOn: null, withinReach: null });
  });
});

describe('sessions that were not run in full', () => {
  it('go on after one of a week, and hold after two of the same week', () => {
    const one = review(9, { 8: MISSED });
    expect([one.decision, codes(one)]).toEqual(['progress', ['review-settled', 'review-missed']]);
    expect(find(one, 'review-missed')!.params).toEqual({ count: 1, day: days[7] });
    const both = review(9, { 8: MISSED, 9: MISSED });
    expect([both.decision, find(both, 'review-missed')!.params]).toEqual([
      'hold',
      { count: 2, day: days[8] },
    ]);
    expect(review(9, { 6: MISSED, 7: MISSED }).decision).toBe('progress');
    expect(review(9, { 8: SHORTENED, 9: SHORTENED }).decision).toBe('hold');
  });

  it('no longer hold once three clean sessions followed', () => {
    const results = { 2: MISSED, 3: MISSED };
    expect(review(5, results).decision).toBe('hold');
    expect(review(6, results).decision).toBe('progress');
  });

  it('are neutral where weather or owner held them back', () => {
    const held = review(9, { 8: HELD, 9: HELD });
    expect([held.decision, codes(held)]).toEqual(['progress', ['review-settled', 'review-held']]);
  });

  it('hold where nothing is told of two, or of a next day', () => {
    const silent = told(9).slice(0, 7);
    const nothing = reviewRamp({ ramp, results: silent, day: after(9, 1) });
    expect([nothing.decision, codes(nothing)]).toEqual(['hold', ['review-not-told']]);
    expect(review(9, { 9: { nextDay: null } }).decision).toBe('hold');
  });

  it('are listed by day up to three, counted from four on', () => {
    const text = (of: Told) => find(review(12, of), 'review-missed')!.text;
    const three = text({ 1: MISSED, 4: MISSED, 7: MISSED });
    for (const nth of [1, 4, 7]) expect(three).toContain(days[nth - 1]);
    const four = text({ 1: MISSED, 4: MISSED, 7: MISSED, 12: MISSED });
    expect(four).toContain(`4 sessions, the last on ${days[11]}`);
    expect(four).not.toContain(days[0]);
  });
});

describe('an illness', () => {
  // 48 h of normal appetite and energy, then half (D).
  const ill = (count: number, well: number) =>
    review(count, {}, { wellSince: after(count, well), day: after(count, well + 1) });

  it.each([
    [27, 25],
    [39, 30],
    [45, 35],
  ])(
    'after %i sessions leaves half of the last whole week, %d min, then 25 %% more a week',
    (count, half) => {
      for (const well of [1, 4]) {
        const back = ill(count, well);
        const [first, second] = back.ramp.weeks;
        expect(back.decision).toBe('back');
        expect(first!.runMinutes).toBeLessThanOrEqual(half);
        expect(first!.runMinutes).toBeGreaterThan(half - 3);
        expect(second!.runMinutes).toBeLessThanOrEqual(half * 1.25);
        expect(second!.runMinutes).toBeGreaterThan(half);
        expect(checkRamp(back.ramp)).toEqual([]);
        const { number } = first!;
        const over = editRamp(back.ramp, [{ kind: 'week', number, runMinutes: half + 6 }]);
        expect(checkRamp(over).map(({ code }) => code)).toContain('over-cap');
      }
    },
  );

  it('tells since when the dog is well, and waits two days', () => {
    const back = ill(45, 4);
    expect(find(back, 'review-illness')).toMatchObject({
      params: { day: after(45, 4), days: 2, percent: 50 },
      rules: ['illnessPercent', 'illnessRestDays'],
    });
    expect(back.ramp.weeks[0]!.sessions[0]!.day).toBe(after(45, 6));
    // Well for long, it runs at once.
    const long = review(45, {}, { wellSince: after(45, 1), day: after(45, 5) });
    expect(long.ramp.weeks[0]!.sessions[0]!.day).toBe(after(45, 5));
  });

  it('with stiffness before it goes back a step as well', () => {
    const rest = { wellSince: after(45, 1), day: after(45, 2) };
    const both = review(45, { 45: OVER_24 }, rest);
    const alone = review(45, {}, rest);
    expect(both.ramp.request.resume!.lastRung).toBe(alone.ramp.request.resume!.lastRung! - 1);
    expect(alone.ramp.request.resume!.previousMinutes).toBe(35);
    expect(both.ramp.weeks[0]!.sessions[0]!.day > after(45, 4)).toBe(true);
    expect(isSetback(alone.reasons)).toBe(false);
  });
});

describe('days without a run', () => {
  const late = (missed: number) => {
    // Two rest days in a row are the most of an ordinary week.
    const of = review(45, {}, { day: after(45, missed + 3), unasked: days.slice(45) });
    return { of, back: of.returnAfterBreak };
  };

  it('are none up to two, and repeat the week up to seven', () => {
    expect(codes(late(2).of).filter((code) => code.includes('break'))).toEqual([]);
    for (const missed of [3, 7]) {
      const { of, back } = late(missed);
      expect(of.decision).toBe('hold');
      expect(find(of, 'review-break-repeat')).toMatchObject({
        params: { days: missed, version: 1 },
        rules: ['breakRepeatDays'],
      });
      expect(back).toBeNull();
    }
  });

  it.each([
    [8, 25, ['breakShortPercent', 'breakShortDays']],
    [14, 25, ['breakShortPercent', 'breakShortDays']],
    [15, 50, ['breakLongPercent', 'breakLongDays']],
    [28, 50, ['breakLongPercent', 'breakLongDays']],
  ])('%i take %d %% off', (missed, lessPercent, rules) => {
    const { of, back } = late(missed);
    expect(back).toEqual({ days: missed, lessPercent });
    expect([of.decision, of.walkBaseFirst]).toEqual(['back', false]);
    expect(find(of, 'review-break-less')).toMatchObject({ rules });
    // A break is no setback: the dog showed nothing.
    expect(isSetback(of.reasons)).toBe(false);
    expect(of.ramp.weeks[0]!.runMinutes).toBeLessThanOrEqual((70 * (100 - lessPercent)) / 100);
    expect(of.ramp.weeks[0]!.sessions[0]!.day).toBe(after(45, missed + 3));
  });

  it('of over 28 go back to the walk base, with a week for it', () => {
    const { of, back } = late(29);
    expect(back).toEqual({ days: 29, lessPercent: 100 });
    expect(of.walkBaseFirst).toBe(true);
    expect(find(of, 'review-break-restart')).toMatchObject({ rules: ['breakLongDays'] });
    expect(of.ramp.weeks[0]).toMatchObject({ number: 1, runMinutes: 18 });
    expect(of.ramp.weeks[0]!.sessions[0]!.day).toBe(addDays(of.fromDay, 7));
    expect(of.ramp.request.resume).toMatchObject({ lastRunDay: days[44], reviewedOn: of.fromDay });
  });

  it('before the first run are no break of it', () => {
    const begin = reviewRamp({ ramp, day: addDays(START, 20), unasked: days });
    expect(isBeginning(begin.reasons)).toBe(true);
    expect(begin.returnAfterBreak).toBeNull();
    expect(isBeginning(review(3).reasons)).toBe(false);
    expect(reviewRamp({ ramp, day: addDays(START, 29), unasked: days }).walkBaseFirst).toBe(true);
    // A stop has no walk base to pass: the vet comes first.
    const findings = { screening: 'vet first' } as const;
    expect(reviewRamp({ ramp, day: addDays(START, 40), findings }).walkBaseFirst).toBe(false);
  });
});
