import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/day.ts';
import {
  buildRamp,
  checkRamp,
  editRamp,
  reviewRamp,
  wasRun,
  type Ramp,
  type RampRequest,
  type Review,
  type ReviewInput,
  type SessionResult,
} from '../../../core/training.ts';

// Where what was really run leaves a plan, and what its next version is drawn from. The rungs of the plan
// below are its building weeks: 18, 21, 25, an easy week, 30, 36, 42, an easy week, 50, 60, …

const START = '2026-01-05';
const request: RampRequest = {
  startDay: START,
  start: 'conditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
};
const ramp = buildRamp(request);
const daysOf = (of: Ramp) => of.weeks.flatMap(({ sessions }) => sessions.map(({ day }) => day));
const days = daysOf(ramp);
const MILD = { nextDay: 'mild stiffness gone within 24 h' } as const;
const OVER_24 = { nextDay: 'stiffness over 24 h' } as const;
const MISSED = { outcome: 'missed', nextDay: null } as const;
const short = (runMinutes: number) => ({ outcome: 'shortened', runMinutes }) as const;

type Told = Readonly<Record<number, Partial<SessionResult>>>;
const told = (count: number, other: Told = {}, of: Ramp = ramp): SessionResult[] =>
  daysOf(of)
    .slice(0, count)
    .map((day, index) => ({ day, outcome: 'done', nextDay: 'normal', ...other[index + 1] }));
const review = (count: number, other: Told = {}, rest: Partial<ReviewInput> = {}): Review =>
  reviewRamp({ ramp, results: told(count, other, rest.ramp), ...rest });
const resume = (...given: Parameters<typeof review>) => review(...given).ramp.request.resume!;
const codes = ({ reasons }: Review) => reasons.map(({ code }) => code);
const after = (count: number, more = 1) => addDays(days[count - 1]!, more);

describe('where a plan stands', () => {
  it('goes up a rung a week, and remembers the highest', () => {
    expect(resume(9)).toMatchObject({
      rung: 3,
      lastRung: 2,
      peakMinutes: 25,
      previousMinutes: 25,
      weekNumber: 4,
      lastRunDay: days[8],
      reviewedOn: after(9),
      lightWeekBefore: false,
      returning: false,
    });
    // An easy week leaves the rung and the highest week as they were.
    expect(resume(12)).toMatchObject({
      rung: 3,
      lastRung: 2,
      peakMinutes: 25,
      previousMinutes: 25,
      lightWeekBefore: true,
      lastRunDay: days[11],
    });
  });

  it('goes up too where one session was not run in full: the week as planned counts', () => {
    const one = { rung: 2, lastRung: 1, peakMinutes: 21, previousMinutes: 21 };
    expect(resume(6, { 6: short(4) })).toMatchObject(one);
    expect(resume(6, { 5: MISSED })).toMatchObject(one);
    // More than planned counts as it was run, and the next rung is no higher for it.
    const more = { rung: 2, lastRung: 1, peakMinutes: 25, previousMinutes: 25 };
    expect(resume(6, { 6: { runMinutes: 12 } })).toMatchObject(more);
  });

  it('stays on its rung where two were not, and below it where none was run', () => {
    const two = resume(6, { 5: MISSED, 6: short(4) });
    expect(two).toMatchObject({ rung: 1, lastRung: 1, peakMinutes: 18, previousMinutes: 18 });
    const none = resume(6, { 4: MISSED, 5: MISSED, 6: MISSED });
    expect(none).toMatchObject({ rung: 0, lastRung: 0, peakMinutes: 18 });
    expect(resume(6, { 5: MISSED, 6: MISSED }).weekNumber).toBe(3);
  });

  it('repeats a week of which a next day is not told, as it was', () => {
    expect(resume(27, { 27: { nextDay: null } })).toMatchObject({ rung: 6, lastRung: 6 });
    // After mild stiffness no session is longer than those that were run: 18 min were not.
    expect(resume(27, { 27: MILD })).toMatchObject({ rung: 6, lastRung: 6 });
    expect(resume(27, { 25: short(12), 27: MILD })).toMatchObject({ rung: 5, lastRung: 6 });
    const silent = { 25: short(12), 27: { nextDay: null } };
    expect(resume(27, silent)).toMatchObject({ rung: 6, lastRung: 6 });
  });

  it('follows a week that was changed by hand by what it came to', () => {
    const lower = editRamp(ramp, [{ kind: 'week', number: 3, runMinutes: 18 }]);
    expect(resume(9, {}, { ramp: lower })).toMatchObject({ rung: 1, lastRung: 0 });
    const same = editRamp(ramp, [{ kind: 'week', number: 3, runMinutes: 23 }]);
    expect(resume(9, {}, { ramp: same })).toMatchObject({ rung: 2, lastRung: 1 });
  });

  it('after a break counts what the load has come back to', () => {
    const daysOut = Array.from({ length: 14 }, (_, index) => addDays(START, 42 + index));
    const broken = buildRamp({ ...request, daysOut });
    const [seventh, back] = [broken.weeks[6]!, broken.weeks[8]!];
    expect([seventh.sessions.length, back.returning, back.runMinutes]).toEqual([0, true, 27]);
    const begun = resume(21, {}, { ramp: broken });
    expect(begun).toMatchObject({
      returning: true,
      peakMinutes: 36,
      previousMinutes: 27,
      lastRung: 4,
    });
    // Drawn anew it rises by 25 % a week all the same.
    const anew = review(21, {}, { ramp: broken, rules: { stageWeeks: 4 } }).ramp.weeks[0]!;
    expect([anew.returning, anew.runMinutes]).toEqual([true, 33]);
    // Two sessions missed: of a first week it has come back to that at most, of a later one to no more.
    const missed = resume(21, { 20: MISSED, 21: MISSED }, { ramp: broken });
    expect(missed).toMatchObject({ returning: true, previousMinutes: 27, lastRung: 4 });
    const later = resume(24, { 23: MISSED, 24: MISSED }, { ramp: broken });
    expect(later).toMatchObject({ returning: true, previousMinutes: 27, lastRung: 4 });
  });

  it('tells how the dog was after each run, and leaves out what was not run', () => {
    const of = (other: Told) =>
      resume(9, other).recent!.map(({ day, minutes, response }) => [
        days.indexOf(day) + 1,
        minutes,
        response,
      ]);
    const told9 = of({ 2: MILD, 3: MISSED, 4: short(3), 5: { nextDay: null }, 9: OVER_24 });
    expect(told9).toEqual([
      [1, 6, 'clean'],
      [2, 6, 'mild'],
      [4, 3, 'other'],
      [5, 7, 'other'],
      [6, 8, 'clean'],
      [7, 8, 'clean'],
      [8, 8, 'clean'],
      [9, 9, 'setback'],
    ]);
    const signs = ['lameness'] as const;
    expect(of({ 9: { signs } }).at(-1)).toEqual([9, 9, 'other']);
    expect(of({ 9: { ...OVER_24, signs } }).at(-1)).toEqual([9, 9, 'other']);
    // Of two outings in a day the longer counts for the cap of a session.
    expect(of({ 9: { longestRunMinutes: 5 } }).at(-1)).toEqual([9, 5, 'clean']);
    const undone = resume(9, { 9: { outcome: 'done', nextDay: undefined as never } });
    expect(undone.recent!.at(-1)!.response).toBe('other');
  });

  it('puts runs beside the plan between those of the plan, by day', () => {
    const beside = [after(3), after(1)].map((day) => ({ day, minutes: 4 }));
    const { recent } = resume(4, {}, { unplanned: beside, day: after(4) });
    const order = [days[0], after(1), days[1], days[2], after(3), days[3]];
    expect(recent!.map(({ day }) => day)).toEqual(order.slice(0, recent!.length));
  });
});

describe('a plan that goes on as it stands', () => {
  it('begins with the week of the review, with what came before it', () => {
    const kept = review(14);
    expect(kept.ramp.weeks).toEqual(ramp.weeks.slice(4));
    expect(kept.ramp).toMatchObject({ version: 2, goalReachedOn: ramp.goalReachedOn });
    expect(kept.ramp.request).toMatchObject({
      startDay: ramp.weeks[4]!.startDay,
      resume: { weekNumber: 5, rung: 3, lastRunDay: days[11], reviewedOn: after(14) },
    });
    expect(kept.ramp.stages).toEqual(ramp.stages);
    // A session of the day itself is still ahead.
    const sameDay = review(12, {}, { day: days[12]! });
    expect(sameDay.ramp.weeks).toEqual(ramp.weeks.slice(4));
    const first = reviewRamp({ ramp, day: START });
    expect(first.ramp.weeks).toEqual(ramp.weeks);
    expect(first.ramp.request.resume!.lastRunDay).toBeNull();
    const again = reviewRamp({ ramp: review(12).ramp, day: after(12, 1) });
    expect(again.ramp.request.resume!.lastRunDay).toBe(days[11]);
  });

  it('with one session of a week missed, and not with two', () => {
    const midst = (other: Told) => review(14, other, { day: after(14) }).ramp.weeks[0]!.startDay;
    expect(midst({ 14: MISSED })).toBe(ramp.weeks[4]!.startDay);
    expect(review(9, { 9: MISSED }).ramp.weeks).toEqual(ramp.weeks.slice(3));
    // Of the week before two are missing, which three clean sessions no longer hold.
    const behind = review(12, { 8: MISSED, 9: MISSED });
    expect(behind.decision).toBe('progress');
    expect(behind.ramp.weeks[0]).toMatchObject({ rung: 2, runMinutes: 25 });
  });

  it('with runs beside it, where they change nothing', () => {
    const unplanned = [{ day: after(9), minutes: 5 }];
    const kept = review(9, {}, { unplanned, day: after(9, 2) });
    expect(kept.ramp.weeks).toEqual(ramp.weeks.slice(3));
  });

  it('not where too little was run for what is ahead', () => {
    const few = Object.fromEntries(Array.from({ length: 16 }, (_, at) => [at + 13, short(3)]));
    const next = review(28, few);
    expect(next.decision).toBe('progress');
    const [first] = next.ramp.weeks.flatMap(({ sessions }) => sessions);
    // The sixth rung would begin with 20 min; after 3 min the 6 of the first week are the most.
    expect(first!.runMinutes).toBeLessThanOrEqual(6);
    expect(checkRamp(next.ramp)).toEqual([]);
  });

  it('with the breaches that were kept, and no new one', () => {
    const heavy = editRamp(ramp, [{ kind: 'week', number: 6, runMinutes: 60 }]);
    expect(checkRamp(heavy)).not.toEqual([]);
    const kept = review(12, {}, { ramp: heavy });
    expect(kept.ramp.weeks).toEqual(heavy.weeks.slice(4));
  });

  it('not where it waited: its weeks ran ahead of the dog', () => {
    const unasked = days.slice(9, 12);
    const waited = review(9, {}, { unasked, day: after(12) });
    // Seven days without a run repeat the week.
    expect(codes(waited)).toEqual(['review-break-repeat']);
    expect(waited.ramp.weeks[0]).toMatchObject({ number: 4, runMinutes: 18, recovery: true });
    const unaskedFirst = review(9, { 8: MISSED }, { unasked: [days[7]!] });
    expect(unaskedFirst.decision).toBe('progress');
    expect(unaskedFirst.ramp.weeks).toEqual(ramp.weeks.slice(3));
    // What was run of them all the same counts.
    const ran = review(12, {}, { unasked });
    expect(ran.ramp.weeks).toEqual(ramp.weeks.slice(4));
    const lame = { 12: { outcome: 'missed', signs: ['lameness'] } } as const;
    expect(review(12, lame, { unasked }).decision).toBe('stop');
  });

  it('is over once its goal was run', () => {
    const all = days.length;
    const over = review(all);
    expect(over.decision).toBe('progress');
    expect(over.ramp).toMatchObject({ weeks: [], stages: [], version: 2 });
    expect(over.ramp.request.resume).toMatchObject({ weekNumber: 18, lastRunDay: days.at(-1) });
    expect(over.ramp.request.startDay).toBe(START);
    // The last week begins with the goal of 30 min: 29 are not enough.
    const missed = review(all, { [all - 2]: short(29) });
    expect(missed.ramp.weeks.length).toBeGreaterThan(0);
    expect(missed.ramp.goalReachedOn).not.toBeNull();
    expect(review(all, { [all]: short(9) }).ramp.weeks).toEqual([]);
  });
});

describe('the next version', () => {
  const rules = { stageWeeks: 4 };

  it('counts on, and keeps what was asked for', () => {
    const next = review(9, { 9: MILD });
    expect(next.ramp.version).toBe(2);
    expect(next.ramp.request).toMatchObject({ ...request, startDay: after(9) });
    expect(next.ramp.request).not.toHaveProperty('rules');
    expect(next.ramp.request).not.toHaveProperty('laterStages');
    expect(next.ramp.request).not.toHaveProperty('notBeforeDay');
    expect(next.ramp.weeks[0]!.number).toBe(4);
    const changed = review(9, { 9: MILD }, { rules });
    expect(changed.ramp.request.rules).toEqual(rules);
  });

  it('begins with the number that the plan began with while nothing of it was due', () => {
    const second = review(9, { 9: MILD }).ramp;
    const third = reviewRamp({ ramp: second, day: second.weeks[0]!.startDay, rules });
    expect(third.ramp.weeks[0]!.number).toBe(4);
    expect(reviewRamp({ ramp, day: START, rules }).ramp.weeks[0]!.number).toBe(1);
  });

  it('waits for the first day allowed, as long as it is ahead', () => {
    const gate = addDays(START, 21);
    const waiting = buildRamp({ ...request, notBeforeDay: gate });
    const early = reviewRamp({ ramp: waiting, day: addDays(START, 7), rules });
    expect(early.ramp.request.notBeforeDay).toBe(gate);
    expect(early.ramp.weeks[0]!.sessions[0]!.day).toBe(gate);
    const late = review(3, { 3: MILD }, { ramp: waiting });
    expect(late.ramp.request).not.toHaveProperty('notBeforeDay');
  });

  it('keeps the later stages that are not over', () => {
    const staged = buildRamp({ ...request, laterStages: ['pull', 'hills'] });
    const lastOf = (id: string) =>
      staged.weeks
        .slice(0, staged.weeks.findLastIndex(({ stage }) => stage === id) + 1)
        .flatMap(({ sessions }) => sessions).length;
    const stages = (id: string, before = 0) => {
      const count = lastOf(id) - before;
      return review(count, { [count]: MILD }, { ramp: staged }).ramp.request.laterStages;
    };
    expect(stages('time')).toEqual(['pull', 'hills']);
    expect(stages('pull', 3)).toEqual(['pull', 'hills']);
    expect(stages('hills', 3)).toEqual(['hills']);
    const kept = review(lastOf('pull'), {}, { ramp: staged });
    expect(kept.ramp.stages.map(({ id }) => id)).toEqual(['hills']);
    expect(review(9, {}, { ramp: staged }).ramp.stages).toEqual(staged.stages);
  });

  it('goes up to the event, or without one that is over before it begins', () => {
    const eventDay = addDays(START, 56);
    const event = buildRamp({ ...request, eventDay });
    const held = review(9, { 9: MILD }, { ramp: event });
    expect(held.ramp.request.eventDay).toBe(eventDay);
    const count = daysOf(event).length;
    const last = { [count]: OVER_24 };
    const late = review(count, last, { ramp: event, day: addDays(eventDay, -2) });
    expect(late.ramp.request).not.toHaveProperty('eventDay');
  });

  it('does not begin before a week that was run ends, unless the event is sooner', () => {
    const start = (of: Review) => of.ramp.weeks.find((week) => week.sessions.length > 0)!.startDay;
    // In the midst of the sixth week, after one of its sessions.
    const midst = review(16, { 16: MILD });
    expect(start(midst)).toBe(ramp.weeks[6]!.startDay);
    // Nothing of the week was run: nothing has to end.
    const idle = review(16, { 15: MILD, 16: MISSED });
    expect(start(idle)).toBe(after(16));
    const eventDay = addDays(START, 42);
    const event = buildRamp({ ...request, eventDay });
    const close = review(16, { 16: MILD }, { ramp: event });
    expect(start(close)).toBe(after(16));
    expect(close.ramp.request.eventDay).toBe(eventDay);
    const far = buildRamp({ ...request, eventDay: addDays(START, 84) });
    expect(start(review(16, { 16: MILD }, { ramp: far }))).toBe(far.weeks[6]!.startDay);
    // A session of the day of the review is open still.
    const onDay = review(17, { 17: MILD }, { day: days[17]! });
    expect(start(onDay)).toBe(ramp.weeks[6]!.startDay);
  });

  it('keeps the days off after a setback, though a first day allowed is long past', () => {
    const waiting = buildRamp({ ...request, notBeforeDay: addDays(START, 7) });
    const last = daysOf(waiting)[2]!;
    const back = review(3, { 3: OVER_24 }, { ramp: waiting });
    expect(back.ramp.request.notBeforeDay).toBe(addDays(last, 4));
    expect(back.ramp.weeks[0]!.sessions[0]!.day).toBe(addDays(last, 4));
  });

  it('begins anew where none of it was run', () => {
    const none = review(3, { 1: MISSED, 2: MISSED, 3: MISSED });
    expect(none.ramp.request.resume).toMatchObject({ weekNumber: 1, rung: 0, lastRung: -1 });
    expect(none.ramp.weeks[0]).toMatchObject({ number: 1, runMinutes: 18 });
  });
});

describe('what was told', () => {
  it('is judged on the day after the last of it, in whatever order it comes', () => {
    expect(reviewRamp({ ramp, results: told(6).toReversed() }).fromDay).toBe(after(6));
    expect(reviewRamp({ ramp }).fromDay).toBe(START);
    expect(reviewRamp({ ramp, results: [] }).fromDay).toBe(START);
    const over = { ...ramp, weeks: [] };
    expect(reviewRamp({ ramp: over }).fromDay).toBe(START);
  });

  it('of a session cut short without a time counts for half of it', () => {
    const { recent } = resume(6, { 6: { outcome: 'shortened' } });
    expect(recent!.at(-1)).toMatchObject({ day: days[5], minutes: 4 });
    const held = resume(6, { 6: { outcome: 'held', runMinutes: 3, nextDay: null } });
    expect(held.recent!.at(-1)).toMatchObject({ day: days[5], minutes: 3 });
    const sameDay = resume(6, { 6: { outcome: 'held', nextDay: null } });
    expect(sameDay.recent!.at(-1)!.day).toBe(days[4]);
    expect((['done', 'shortened', 'missed', 'held'] as const).map(wasRun)).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });

  it('since the last review alone is new', () => {
    const first = review(8).ramp;
    const again = (count: number) =>
      codes(reviewRamp({ ramp: first, results: told(count).slice(6), day: after(count) }));
    expect(again(8)).toEqual(['review-nothing-due']);
    expect(again(9)).toEqual(['review-all-clear']);
    // A session on the day of the review was not judged by it.
    const onDay = reviewRamp({ ramp, results: told(8), day: days[8]! }).ramp;
    const last = reviewRamp({ ramp: onDay, results: told(9).slice(6), day: after(9) });
    expect(codes(last)).toEqual(['review-all-clear']);
  });

  it.each<[string, Partial<SessionResult>]>([
    ['results.day', { day: '2026-02-30' }],
    ['results.day', { day: '2026-01-06' }],
    ['results.outcome', { outcome: 'skipped' as never }],
    ['results.nextDay', { nextDay: 'fine' as never }],
    ['results.signs', { signs: ['tired' as never] }],
    ['results.runMinutes', { runMinutes: -1 }],
    ['results.runMinutes', { runMinutes: 601 }],
  ])('is refused by name: %s', (name, wrong) => {
    const results = told(3, { 3: wrong });
    const day = addDays(START, 7);
    expect(() => reviewRamp({ ramp, results, day })).toThrow(RangeError);
    expect(() => reviewRamp({ ramp, results, day })).toThrow(name);
    expect(() => reviewRamp({ ramp, day: 'today' })).toThrow('day');
  });
});
