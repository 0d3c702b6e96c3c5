import { describe, expect, it } from 'vitest';
import { dayFromNumber, dayNumber } from '../../../core/day.ts';
import {
  fillWeek,
  firstPlace,
  FRESH,
  heldRung,
  resumeOf,
  type Place,
} from '../../../core/ramp/course.ts';
import type { Rung } from '../../../core/ramp/ladder.ts';
import type { Course } from '../../../core/ramp/limits.ts';
import { settingOf } from '../../../core/ramp/request.ts';
import { boutSession, continuousSession, type SessionPlan } from '../../../core/ramp/sessions.ts';
import type { Return, Slot } from '../../../core/ramp/slots.ts';
import type { RampRequest, RampResume } from '../../../core/ramp/types.ts';

// One week at a time on a ladder made by hand, worked out from the rules: 20 % a week over the highest
// whole week, 10 % or 2 min a session, 75 % for the other runs of a week over 20 min (all D; the
// session's 10 % Frandsen 2025, S, runners).

const request: RampRequest = {
  startDay: '2026-01-05',
  start: 'conditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 28 },
};
const rung = (stepIndex: number, sessions: SessionPlan[]): Rung => {
  const each = sessions.map(({ repeats, runMin }) => repeats * runMin);
  const minutes = each.reduce((a, b) => a + b, 0);
  return { sessions, minutes, longest: Math.max(...each), stepIndex };
};
const bouts = (runMin: number, walkMin: number, repeats: readonly number[]) =>
  repeats.map((count) => boutSession({ runMin, walkMin }, count));
const runs = (minutes: readonly number[]) => minutes.map(continuousSession);
const RUNGS = [
  rung(0, bouts(1, 2, [6, 6, 6])),
  rung(0, bouts(1, 2, [6, 7, 8])),
  rung(1, [...bouts(1, 2, [8, 8]), ...bouts(2, 2, [4])]),
  rung(5, runs([10, 10, 10])),
  rung(5, runs([12, 12, 12])),
  rung(5, runs([20, 20, 20])),
  rung(5, runs([28, 21, 21])),
];
const [EIGHT, TEN, TWELVE, TWENTY, LAST] = [2, 3, 4, 5, 6] as const;
const course: Course = {
  setting: settingOf(request),
  rhythm: { sessions: 3, restDays: 2 },
  ladder: { rungs: RUNGS, reachesGoal: true },
};
const MONDAY = dayNumber('2026-02-02');
const recent = (...minutes: number[]) =>
  minutes.map((each, index) => ({
    day: dayFromNumber(MONDAY - 2 * (minutes.length - index)),
    minutes: each,
    response: 'clean' as const,
  }));
const slot = (changes: Partial<Slot> = {}): Slot => ({
  number: 5,
  first: MONDAY,
  days: [MONDAY, MONDAY + 2, MONDAY + 4],
  kind: 'build',
  recovery: false,
  return: { kind: 'none' },
  ...changes,
});
/** Right after a rung, run whole. */
const after = (index: number, changes: Partial<Place> = {}): Place => {
  const { minutes, longest } = RUNGS[index]!;
  const load = { peak: minutes, previous: minutes, light: false, returning: false };
  return { ...load, recent: recent(longest), next: index + 1, last: index, ...changes };
};
const less = (percent: number): Return => ({ kind: 'less', missedDays: 10, percent });
const fill = (place: Place, at: Partial<Slot> = {}, of = course) => fillWeek(of, place, slot(at));
const shape = ({ sessions }: { readonly sessions: readonly SessionPlan[] }) =>
  sessions.map(({ kind, repeats, runMin }) => (kind === 'bouts' ? [repeats, runMin] : runMin));

describe('a week of building', () => {
  it('climbs one rung where week and session hold it', () => {
    const week = fill(after(0));
    expect(week).toMatchObject({ rung: 1, recovery: false });
    // 18 min and 20 % are 21.6: a step of 2 min is less.
    expect(week.cap).toBeCloseTo(21.6, 9);
    expect(shape(week)).toEqual([
      [6, 1],
      [7, 1],
      [8, 1],
    ]);
    expect(week.after).toMatchObject({ peak: 21, previous: 21, next: 2, last: 1, light: false });
    expect(week.after.recent.map(({ minutes }) => minutes)).toEqual([6, 6, 7, 8]);
  });

  it('stays on the last rung', () => {
    expect(fill(after(LAST, { recent: recent(28, 21, 21) }))).toMatchObject({ rung: LAST });
  });

  it('takes the highest rung below that the week’s cap holds', () => {
    // 36 min and 20 % are 43.2: 60 is too much.
    expect(fill(after(TWELVE, { recent: recent(20) }))).toMatchObject({ rung: TWELVE });
    // Nor more than the highest whole week and 20 %, wherever it stands.
    expect(fill(after(LAST, { peak: 30, recent: recent(28) }))).toMatchObject({ rung: TWELVE });
  });

  it('takes the highest rung below that the session’s cap holds', () => {
    // 8 min and 2 are 10: 12 is too long.
    expect(fill(after(TEN, { recent: recent(8) }))).toMatchObject({ rung: TEN });
    // The first rung is always allowed, and each session counts for the next: 6, 7 and 8.
    expect(fill(after(TEN, { recent: recent(2) }))).toMatchObject({ rung: 1 });
  });

  it('begins with the first rung', () => {
    expect(fill(FRESH)).toMatchObject({ rung: 0, cap: 18, after: { peak: 18, next: 1, last: 0 } });
    const anew = fill(after(LAST), { return: { kind: 'restart', missedDays: 40 } });
    expect(anew).toMatchObject({ rung: 0, cap: 18, after: { peak: 18, next: 1, last: 0 } });
  });

  it('without days leaves all as it was, but that it was light', () => {
    const place = after(TEN);
    const none = fill(place, { days: [] });
    expect(none).toMatchObject({ sessions: [], rung: null, recovery: false, cap: 0 });
    expect(none.after).toEqual({ ...place, light: true });
  });
});

describe('a week with fewer days than sessions', () => {
  const days = [MONDAY, MONDAY + 2];

  it('of bouts of one step keeps the fuller sessions, which come last', () => {
    const short = fill(after(0), { days });
    expect(shape(short)).toEqual([
      [7, 1],
      [8, 1],
    ]);
    // It does not count as a whole one: the rung comes again.
    expect(short.after).toMatchObject({ peak: 18, previous: 18, next: 1, last: 1 });
    expect(short.after.recent.map(({ minutes }) => minutes)).toEqual([6, 7, 8]);
  });

  it('keeps the first sessions where the last would be too long, or are of another step', () => {
    const tight = after(0, { recent: recent(4) });
    // 4 min and 2 are 6: 7 would be too long, after 6 it is not.
    expect(shape(fill(tight, { days }))).toEqual([
      [6, 1],
      [7, 1],
    ]);
    expect(shape(fill(after(1), { days }))).toEqual([
      [8, 1],
      [8, 1],
    ]);
    const shorterWalks = rung(1, [...bouts(1, 3, [5, 5]), ...bouts(1, 2, [4])]);
    const of = { ...course, ladder: { ...course.ladder, rungs: [shorterWalks] } };
    expect(fill(FRESH, { days }, of).sessions.map(({ walkMin }) => walkMin)).toEqual([3, 3]);
    const runsOnly = after(TWENTY, { recent: recent(26), peak: 60 });
    expect(shape(fill(runsOnly, { days }))).toEqual([28, 21]);
  });
});

describe('a week with a day more than sessions', () => {
  const days = [MONDAY, MONDAY + 2, MONDAY + 4, MONDAY + 6];

  it('runs one of the others in two halves, and no more minutes', () => {
    expect(shape(fill(after(TWENTY, { recent: recent(26) }), { days }))).toEqual([28, 11, 10, 21]);
    expect(shape(fill(FRESH, { days }))).toEqual([
      [6, 1],
      [3, 1],
      [3, 1],
      [6, 1],
    ]);
  });

  it('leaves the day free where a half would be under five minutes without a break', () => {
    // 10 min part into five and five, 9 do not.
    const ten = after(EIGHT, { peak: 30, recent: recent(9) });
    expect(shape(fill(ten, { days }))).toEqual([10, 5, 5, 10]);
    const nine = { ...course, ladder: { ...course.ladder, rungs: [rung(5, runs([9, 9, 9]))] } };
    expect(shape(fill(FRESH, { days }, nine))).toEqual([9, 9, 9]);
  });
});

describe('an easy week', () => {
  it('holds 70 % of the highest week on the step that was run last', () => {
    const easy = fill(after(TWENTY), { recovery: true });
    expect(easy).toMatchObject({ rung: null, recovery: true, cap: 42 });
    expect(shape(easy)).toEqual([14, 14, 14]);
    expect(easy.after).toMatchObject({ peak: 60, previous: 60, next: LAST, last: TWENTY });
    expect(easy.after.light).toBe(true);
    expect(easy.after.recent.map(({ minutes }) => minutes)).toEqual([20, 14, 14, 14]);
  });

  it('keeps the bouts of its step, the walks too', () => {
    const [session] = fill(after(1, { peak: 30 }), { recovery: true }).sessions;
    expect(session).toMatchObject({ kind: 'bouts', runMin: 1, walkMin: 2, repeats: 7 });
  });

  it('of fewer days holds their part of it', () => {
    const two = fill(after(TWENTY), { recovery: true, days: [MONDAY, MONDAY + 2] });
    expect(shape(two)).toEqual([14, 14]);
    const bridge = fill(after(TWENTY), { kind: 'bridge', days: [MONDAY] });
    expect(bridge).toMatchObject({ recovery: false, rung: null });
    expect(shape(bridge)).toEqual([14]);
  });

  it('has fewer runs where each would be shorter than a run without a break may be', () => {
    const rules = { leastContinuousMinutes: 15 };
    const of = { ...course, setting: settingOf({ ...request, rules }) };
    // 70 % of 60 min are 42, a third of it 14: two runs of 15 fit.
    expect(shape(fill(after(TWENTY), { recovery: true }, of))).toEqual([15, 15]);
    const two = { recovery: true, days: [MONDAY, MONDAY + 2] };
    expect(shape(fill(after(TWENTY), two, of))).toEqual([15]);
    expect(shape(fill(after(TWENTY), { kind: 'bridge', days: [MONDAY] }, of))).toEqual([]);
  });
});

describe('after a break', () => {
  it('runs keep their shape, so much shorter', () => {
    // A quarter less than 70 min is 52.5; 28 of 70 is the long run's part: 21, the others 75 % of it.
    const back = fill(after(LAST), { return: less(25) });
    expect(back).toMatchObject({ rung: null, cap: 52.5 });
    expect(shape(back)).toEqual([21, 15, 15]);
    expect(back.after).toMatchObject({ peak: 70, previous: 51, returning: true, last: LAST });
    expect(back.after.recent.map(({ minutes }) => minutes)).toEqual([28, 21, 15, 15]);
    // Half of it is 35.
    expect(shape(fill(after(LAST), { return: less(50) }))).toEqual([14, 10, 10]);
    // Of 49 the long run is 19; the others are 75 % of that, 14, not the 15 that are left for each.
    expect(shape(fill(after(LAST), { return: less(30) }))).toEqual([19, 14, 14]);
  });

  it('the long run comes back before the others, which are half of it at least', () => {
    const returning = after(LAST, { previous: 51, returning: true });
    // 51 min and 25 % are 63.75, half of it over 28; what is left is 35.75 for two.
    const week = fill(returning);
    expect(week.cap).toBeCloseTo(63.75, 9);
    expect(shape(week)).toEqual([28, 17, 17]);
    expect(week.after).toMatchObject({ previous: 62, returning: true });
    // 35 min and 25 % are 43.75: half of it is 21, the others have 22.75 for two.
    const lower = fill(after(LAST, { previous: 35, returning: true }));
    expect(shape(lower)).toEqual([21, 11, 11]);
    // Of 40 it is 20, the others have the rest.
    const half = fill(after(LAST, { previous: 32, returning: true }));
    expect(shape(half)).toEqual([20, 10, 10]);
  });

  it('runs of up to 20 min, and bouts, are alike', () => {
    expect(shape(fill(after(TWENTY), { return: less(25) }))).toEqual([15, 15, 15]);
    // 18 min are the least there is, and enough for runs.
    expect(shape(fill(after(TWELVE), { return: less(50) }))).toEqual([6, 6, 6]);
    const mixed = after(EIGHT, { peak: 40, previous: 40 });
    expect(shape(fill(mixed, { return: less(50) }))).toEqual([
      [6, 1],
      [7, 1],
      [7, 1],
    ]);
  });

  it.each([[bouts(4, 1, [6, 6, 6])], [[...bouts(4, 1, [6, 6]), continuousSession(24)]]])(
    'bouts stay bouts, however long they are',
    (sessions) => {
      const of = { ...course, ladder: { ...course.ladder, rungs: [RUNGS[0]!, rung(5, sessions)] } };
      const load = { peak: 72, previous: 72, recent: recent(24), next: 2, last: 1 };
      // A quarter less than 72 min are 54: three times six bouts of three.
      expect(shape(fill({ ...FRESH, ...load }, { return: less(25) }, of))).toEqual([
        [6, 3],
        [6, 3],
        [6, 3],
      ]);
    },
  );

  it('no run is under five minutes: shorter weeks are alike', () => {
    const of = {
      ...course,
      ladder: { ...course.ladder, rungs: [RUNGS[0]!, rung(5, runs([22, 8, 8]))] },
    };
    const place: Place = { ...FRESH, peak: 38, previous: 38, recent: recent(22), next: 2, last: 1 };
    // Half of 38 is 19; 22 of 38 would leave 4 for each of the others.
    expect(shape(fill(place, { return: less(50) }, of))).toEqual([6, 6, 6]);
    // Of 24.7 they have 5 each.
    expect(shape(fill(place, { return: less(35) }, of))).toEqual([14, 5, 5]);
  });

  it('the session’s cap shortens the week, and the next counts from what it was allowed', () => {
    // The long runs lie over 30 days back: 10 min and 2 are 12.
    const week = fill(after(LAST, { recent: recent(10) }), { return: less(25) });
    expect(Math.max(...(shape(week) as number[]))).toBe(12);
    expect(shape(week)).toEqual([12, 9, 9]);
    expect(week.after.previous).toBe(51);
    expect(week.after.recent.map(({ minutes }) => minutes)).toEqual([10, 12, 9, 9]);
  });

  it('a week on fewer days holds its sessions and no more', () => {
    const days = [MONDAY, MONDAY + 2];
    const week = fill(after(LAST), { return: less(25), days });
    expect(shape(week)).toEqual([21, 15]);
    expect(week.after.previous).toBe(51);
  });

  it('is over once the week that was run last fits again', () => {
    // 57 min and 25 % are 71.25: over the 70 min of the highest week, so the usual rise counts.
    const week = fill(after(LAST, { previous: 57, returning: true, next: LAST }));
    expect(week).toMatchObject({ rung: LAST, after: { returning: false, previous: 70 } });
    // A week missed is repeated; it does not climb.
    const again = fill(after(TEN, { recent: recent(12) }), {
      return: { kind: 'repeat', missedDays: 5 },
    });
    expect(again).toMatchObject({ rung: TEN, cap: 30 });
  });

  it('on few days stays on its way back', () => {
    const days = [MONDAY, MONDAY + 2];
    const place = after(LAST, { previous: 57, returning: true, next: LAST });
    const week = fill(place, { days });
    expect(week).toMatchObject({ rung: LAST, after: { returning: true, previous: 57 } });
  });

  it('a week is light up to 75 % of the highest', () => {
    expect(fill(after(LAST), { return: less(25) }).after.light).toBe(true);
    expect(fill(after(LAST, { previous: 51, returning: true })).after.light).toBe(false);
  });

  it('begins again where too little is left for a run without a break', () => {
    const injured = { ...course, setting: settingOf({ ...request, start: 'post-injury' }) };
    const rungs = [rung(0, bouts(0.5, 4, [4, 4, 4])), rung(8, runs([6, 6, 6]))];
    const of = { ...injured, ladder: { rungs, reachesGoal: true } };
    const place: Place = { ...FRESH, peak: 18, previous: 18, recent: recent(6), next: 2, last: 1 };
    // Half of 18 min are 9, a third of it 3.
    const week = fill({ ...place, light: false }, { return: less(50) }, of);
    expect(shape(week)).toEqual([
      [4, 0.5],
      [4, 0.5],
      [4, 0.5],
    ]);
    // What is allowed counts, so that it can grow.
    expect(week.after).toMatchObject({ previous: 9, returning: true });
  });
});

describe('the rung that holds no more than was run', () => {
  it('is the highest by minutes, longest session and step', () => {
    expect(heldRung(RUNGS, { minutes: 36 })).toBe(TWELVE);
    expect(heldRung(RUNGS, { minutes: 35.9 })).toBe(TEN);
    expect(heldRung(RUNGS, { minutes: 36, longest: 10 })).toBe(TEN);
    expect(heldRung(RUNGS, { minutes: 36, longest: 9.9 })).toBe(EIGHT);
    expect(heldRung(RUNGS, { minutes: 90, longest: 90, stepIndex: 1 })).toBe(EIGHT);
    expect(heldRung(RUNGS, { minutes: 90, stepIndex: 4 })).toBe(EIGHT);
    expect(heldRung(RUNGS, { minutes: 3 })).toBe(0);
  });
});

describe('where a plan goes on from', () => {
  const REVIEWED = '2026-03-02';
  const resume = (changes: Partial<RampResume> = {}): RampResume => ({
    weekNumber: 7,
    peakMinutes: 36,
    previousMinutes: 30,
    stepIndex: 5,
    sessionsOnStep: 3,
    longestMinutes: 12,
    lastRunDay: '2026-02-27',
    firstWeekMinutes: null,
    reviewedOn: REVIEWED,
    ...changes,
  });
  const place = (changes: Partial<RampResume>) =>
    firstPlace(course, { ...request, resume: resume(changes) });

  it('is the beginning of a new plan', () => {
    expect(firstPlace(course, request)).toBe(FRESH);
    expect(place({ peakMinutes: 0, longestMinutes: 0 })).toBe(FRESH);
  });

  it('is kept from one version to the next', () => {
    const here: Place = {
      peak: 70,
      previous: 51,
      light: true,
      returning: true,
      recent: recent(28, 21, 15, 15),
      next: TWENTY,
      last: TWELVE,
    };
    const rest = { weekNumber: 9, lastRunDay: REVIEWED, reviewedOn: REVIEWED };
    const kept = resumeOf(course, here, rest);
    expect(kept).toMatchObject({
      ...rest,
      stepIndex: 5,
      longestMinutes: 12,
      fullestMinutes: 12,
      sessionsOnStep: 0,
    });
    expect(firstPlace(course, { ...request, resume: kept })).toEqual(here);
    // In bouts nothing was run without a break.
    const early = resumeOf(course, { ...here, next: 2, last: 1 }, rest);
    expect(early).toMatchObject({ stepIndex: 0, longestMinutes: 0, fullestMinutes: 8 });
  });

  it('takes what a version left out as told of nothing', () => {
    expect(place({ rung: TEN })).toEqual({
      peak: 36,
      previous: 30,
      light: false,
      returning: false,
      recent: [],
      next: TEN,
      last: EIGHT,
    });
  });

  it('of an older release is the rung after the one that its load comes to', () => {
    const told = { next: TWENTY, last: TWELVE, peak: 36, previous: 30 };
    const run = { day: '2026-02-27', minutes: 12, response: 'clean' };
    expect(place({})).toEqual({ ...told, light: false, returning: false, recent: [run] });
    // In bouts the longest run is not told: a third of the week.
    expect(place({ longestMinutes: 0, stepIndex: 1, peakMinutes: 24 })).toMatchObject({
      last: EIGHT,
      recent: [{ minutes: 8 }],
    });
    expect(place({ longestMinutes: 0, stepIndex: 1, fullestMinutes: 9 })).toMatchObject({
      last: EIGHT,
      recent: [{ minutes: 9 }],
    });
    expect(place({ longestMinutes: 10, fullestMinutes: 0 })).toMatchObject({ last: TEN });
    expect(place({ lastRunDay: null })).toMatchObject({ recent: [{ day: request.startDay }] });
  });

  it('of an older release may name the minutes of its first week', () => {
    expect(place({ firstWeekMinutes: 24 })).toMatchObject({ next: EIGHT, last: EIGHT });
    // No more than what was run.
    expect(place({ firstWeekMinutes: 90 })).toMatchObject({ next: TWELVE, last: TWELVE });
  });
});
