import { describe, expect, it } from 'vitest';
import {
  courseOf,
  isLight,
  isRecovery,
  keptRuns,
  sessionLimit,
  startsAnew,
  weekLimit,
  type Load,
} from '../../../core/ramp/limits.ts';
import { settingOf } from '../../../core/ramp/request.ts';
import type { Return, Slot } from '../../../core/ramp/slots.ts';
import type { RampRequest } from '../../../core/ramp/types.ts';

// What a week may hold, by hand from the rules: 20 % over the highest whole week of a conditioned dog,
// 70 % of it to recover and of the week before an event's, 25 % back a week after a break (all D).

const request: RampRequest = {
  startDay: '2026-01-05',
  start: 'conditioned',
  sessionsPerWeek: 3,
  goal: { continuousMinutes: 30 },
};
const course = courseOf(settingOf(request));
/** Three sessions of six bouts of one minute. */
const START = 18;
const run = (day: string, minutes: number) => ({ day, minutes, response: 'clean' as const });
const load = (changes: Partial<Load> = {}): Load => ({
  peak: 50,
  previous: 40,
  light: false,
  returning: false,
  recent: [run('2026-01-30', 14)],
  ...changes,
});
const slot = (changes: Partial<Slot> = {}): Slot => ({
  number: 5,
  first: 0,
  days: [],
  kind: 'build',
  recovery: false,
  return: { kind: 'none' },
  ...changes,
});
const after = (back: Return, recovery = false) => slot({ return: back, recovery });
const less = (percent: number): Return => ({ kind: 'less', missedDays: 10, percent });
const REPEAT: Return = { kind: 'repeat', missedDays: 5 };
const RESTART: Return = { kind: 'restart', missedDays: 40 };
const limit = (of: Load, at = slot(), recovery = false) => weekLimit(course, of, at, recovery);

describe('the minutes of a week', () => {
  it('rise by the cap over the highest week, whatever the last one was', () => {
    expect(limit(load())).toBeCloseTo(60, 9);
    expect(limit(load({ previous: 20 }))).toBeCloseTo(60, 9);
  });

  it('begin with the first step where nothing was run, and after a restart', () => {
    expect(limit(load({ peak: 0, recent: [] }))).toBe(START);
    expect(limit(load(), after(RESTART))).toBe(START);
    expect(startsAnew(load({ peak: 0 }), slot())).toBe(false);
    expect(startsAnew(load({ recent: [] }), slot())).toBe(false);
    expect(limit(load({ peak: 4, previous: 4 }))).toBe(START);
  });

  it('are 70 % of the week before close to an event, and of the highest to recover', () => {
    expect(limit(load(), slot({ kind: 'event' }))).toBeCloseTo(28, 9);
    expect(limit(load(), slot({ kind: 'bridge' }))).toBeCloseTo(28, 9);
    expect(limit(load(), slot({ recovery: true }), true)).toBeCloseTo(35, 9);
    expect(limit(load({ peak: 20 }), slot({ recovery: true }), true)).toBe(START);
  });

  it('come again after up to a week missed, and are no more than the cap allows', () => {
    expect(limit(load(), after(REPEAT))).toBe(40);
    expect(limit(load({ peak: 30, previous: 40 }), after(REPEAT))).toBeCloseTo(36, 9);
    expect(limit(load({ previous: 5 }), after(REPEAT))).toBe(START);
  });

  it('are a quarter or half less after a longer break, and no more than a recovery that is due', () => {
    expect(limit(load(), after(less(25)))).toBeCloseTo(30, 9);
    expect(limit(load(), after(less(50)))).toBeCloseTo(20, 9);
    expect(limit(load({ previous: 30 }), after(less(50)))).toBe(START);
    expect(limit(load({ previous: 50 }), after(less(25), true))).toBeCloseTo(35, 9);
    expect(limit(load({ previous: 50, light: true }), after(less(25), true))).toBeCloseTo(37.5, 9);
    expect(limit(load({ previous: 40 }), after(less(25), true))).toBeCloseTo(30, 9);
  });

  it('come back by a quarter a week until they reach the highest', () => {
    expect(limit(load({ returning: true, previous: 30 }))).toBeCloseTo(37.5, 9);
    // 25 % of 40 are the highest week itself: from there on the usual cap counts.
    expect(limit(load({ returning: true, previous: 40 }))).toBeCloseTo(60, 9);
    expect(limit(load({ returning: true, previous: 39 }))).toBeCloseTo(48.75, 9);
  });
});

describe('a week to recover', () => {
  it('is one that is due, not after a light one, on the way back or close to an event', () => {
    const due = slot({ recovery: true });
    expect(isRecovery(load(), due)).toBe(true);
    expect(isRecovery(load(), slot())).toBe(false);
    expect(isRecovery(load({ light: true }), due)).toBe(false);
    expect(isRecovery(load({ returning: true }), due)).toBe(false);
    expect(isRecovery(load(), slot({ recovery: true, kind: 'event' }))).toBe(false);
    expect(isRecovery(load(), after(REPEAT, true))).toBe(true);
    expect(isRecovery(load(), after(less(25), true))).toBe(false);
    expect(isRecovery(load(), after(RESTART, true))).toBe(false);
  });

  it('was had up to 75 % of the highest', () => {
    expect(isLight(course, load(), 37.5)).toBe(true);
    expect(isLight(course, load(), 37.6)).toBe(false);
  });
});

describe('the minutes of a session', () => {
  it('are a tenth or two minutes over the longest of 30 days, and the first step at least', () => {
    expect(sessionLimit(course, [run('2026-01-30', 30)], '2026-02-02')).toBeCloseTo(33, 9);
    expect(sessionLimit(course, [run('2026-01-30', 14)], '2026-02-02')).toBeCloseTo(16, 9);
    expect(sessionLimit(course, [run('2026-01-30', 2)], '2026-02-02')).toBe(6);
    expect(sessionLimit(course, [], '2026-02-02')).toBe(6);
    expect(sessionLimit(course, [run('2026-01-01', 30)], '2026-02-02')).toBe(6);
  });

  it('look back on the last forty runs', () => {
    const runs = Array.from({ length: 45 }, (_, index) => run('2026-01-30', index));
    expect(keptRuns(runs).map(({ minutes }) => minutes)).toEqual(
      runs.slice(5).map((r) => r.minutes),
    );
  });
});

describe('walks', () => {
  const walking = courseOf(settingOf({ ...request, programme: 'walking' }));

  it('have no cap of run-minutes, in a week or a session', () => {
    expect(weekLimit(walking, load(), slot(), false)).toBe(Infinity);
    expect(sessionLimit(walking, load().recent, '2026-02-02')).toBe(Infinity);
  });
});
