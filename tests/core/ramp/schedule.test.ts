import { describe, expect, it } from 'vitest';
import { addDays, dayNumber, type Weekday } from '../../../core/day.ts';
import { rhythmOf, weekSlots, eventSlots } from '../../../core/ramp/slots.ts';
import { runningDays, walkingDays, type Availability } from '../../../core/ramp/schedule.ts';
import { settingOf } from '../../../core/ramp/request.ts';
import type { RampRequest } from '../../../core/ramp/types.ts';

// The days of a week, as places from its first: never two in a row, as even as they can be.

const MONDAY = dayNumber('2026-01-05');
const EVERY_DAY: readonly Weekday[] = [0, 1, 2, 3, 4, 5, 6];
const available = (weekdays = EVERY_DAY, out: readonly number[] = []): Availability => ({
  weekdays,
  out: new Set(out.map((offset) => MONDAY + offset)),
});
const runs = (count: number, of = available(), lastRun: number | null = null, length = 7) =>
  runningDays(MONDAY, count, of, lastRun === null ? null : MONDAY + lastRun, length).map(
    (day) => day - MONDAY,
  );
const walks = (count: number, of = available(), length = 7) =>
  walkingDays(MONDAY, count, of, length).map((day) => day - MONDAY);

describe('running days', () => {
  it('are spread evenly, the earliest first', () => {
    expect([1, 2, 3, 4].map((count) => runs(count))).toEqual([
      [0],
      [0, 3],
      [0, 2, 4],
      [0, 2, 4, 6],
    ]);
  });

  it('leave a day after the last run before them', () => {
    expect(runs(3, available(), -1)).toEqual([1, 3, 5]);
    expect(runs(3, available(), -2)).toEqual([0, 2, 4]);
    expect(runs(4, available(), -1)).toEqual([1, 3, 5]);
  });

  it('are fewer where no more fit, and then end early', () => {
    expect(runs(3, available([0, 1, 2]))).toEqual([0, 2]);
    expect(runs(3, available([0, 3, 5, 6]))).toEqual([0, 3, 5]);
    // Of two where three were asked for the pair that ends first, of two asked for the most even.
    expect(runs(3, available([0, 2, 3]))).toEqual([0, 2]);
    expect(runs(2, available([0, 2, 3]))).toEqual([0, 3]);
    expect(runs(3, available([5]))).toEqual([5]);
    expect(runs(3, available([]))).toEqual([]);
    expect(runs(3, available(), null, 4)).toEqual([0, 2]);
    expect(runs(3, available(EVERY_DAY, [0, 2, 4]))).toEqual([1, 3, 5]);
  });
});

describe('walking days', () => {
  it('may follow one another; those left free lie far apart', () => {
    expect(walks(3)).toEqual([0, 2, 4]);
    expect(walks(4)).toEqual([0, 1, 3, 5]);
    expect(walks(5)).toEqual([0, 1, 3, 4, 5]);
    expect(walks(6)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(walks(7)).toEqual([0, 1, 2, 3, 4, 5, 6]);
    expect(walks(2)).toEqual([0, 1]);
  });

  it('take a free day where another falls out', () => {
    expect(walks(5, available(EVERY_DAY, [0]))).toEqual([1, 2, 3, 4, 5]);
    expect(walks(5, available([0, 2, 6]))).toEqual([0, 2, 6]);
    expect(walks(5, available(), 3)).toEqual([0, 1, 2]);
    expect(walks(5, available([0, 1, 2]))).toEqual([0, 1, 2]);
  });
});

describe('the weeks of a plan', () => {
  const setting = (changes: Partial<RampRequest> = {}) =>
    settingOf({
      startDay: '2026-01-05',
      start: 'conditioned',
      sessionsPerWeek: 3,
      goal: { continuousMinutes: 30 },
      ...changes,
    });
  const slots = (changes: Partial<RampRequest>, count: number) => {
    const of = setting(changes);
    return weekSlots(of, rhythmOf(of), count);
  };
  const away = (from: number, days: number) =>
    Array.from({ length: days }, (_, index) => addDays('2026-01-05', from + index));

  it('have the fewest running days of weeks that alternate, and the longest rest between', () => {
    expect(rhythmOf(setting())).toEqual({ sessions: 3, restDays: 2 });
    expect(rhythmOf(setting({ sessionsPerWeek: 2 }))).toEqual({ sessions: 2, restDays: 3 });
    // Monday, Wednesday, Friday and Sunday, then Tuesday, Thursday and Saturday.
    expect(rhythmOf(setting({ sessionsPerWeek: 4 }))).toEqual({ sessions: 3, restDays: 1 });
    expect(rhythmOf(setting({ weekdays: [0, 2] }))).toEqual({ sessions: 2, restDays: 4 });
    // Days out are no part of it.
    expect(rhythmOf(setting({ daysOut: away(0, 30) }))).toEqual({ sessions: 3, restDays: 2 });
    expect(() => rhythmOf(setting({ weekdays: [2, 3] }))).toThrow(/weekdays/);
  });

  it('tell of the days that were missed before them', () => {
    const kinds = (days: number) => {
      const all = slots({ daysOut: away(7, days) }, 8);
      return all.filter(({ days: of }) => of.length > 0)[1]!.return;
    };
    expect(kinds(0)).toEqual({ kind: 'none' });
    expect(kinds(2)).toEqual({ kind: 'none' });
    expect(kinds(7)).toEqual({ kind: 'repeat', missedDays: 7 });
    expect(kinds(8)).toEqual({ kind: 'less', missedDays: 8, percent: 25 });
    expect(kinds(14)).toEqual({ kind: 'less', missedDays: 14, percent: 25 });
    expect(kinds(15)).toEqual({ kind: 'less', missedDays: 15, percent: 50 });
    expect(kinds(28)).toEqual({ kind: 'less', missedDays: 28, percent: 50 });
    expect(kinds(29)).toEqual({ kind: 'restart', missedDays: 29 });
    // A week without a running day is no return yet.
    expect(slots({ daysOut: away(7, 7) }, 3)[1]!.return).toEqual({ kind: 'none' });
  });

  it('begin with the last run of a version before, and count on from it', () => {
    const resume = {
      weekNumber: 8,
      peakMinutes: 40,
      previousMinutes: 40,
      stepIndex: 2,
      sessionsOnStep: 3,
      longestMinutes: 0,
      lastRunDay: '2026-01-04',
      firstWeekMinutes: null,
      reviewedOn: '2026-01-05',
    };
    const [first, second] = slots({ resume }, 2);
    expect(first).toMatchObject({
      number: 8,
      recovery: true,
      days: [1, 3, 5].map((d) => MONDAY + d),
    });
    expect(second).toMatchObject({ number: 9, recovery: false });
    const ill = { ...resume, holdsFirst: true };
    const held = slots({ resume: ill }, 2);
    expect(held.map((slot) => slot.return)).toEqual([
      { kind: 'repeat', missedDays: 0 },
      { kind: 'none' },
    ]);
    const long = slots({ resume: { ...ill, lastRunDay: '2025-12-20' } }, 1);
    expect(long[0]!.return).toMatchObject({ kind: 'less' });
    expect(slots({ programme: 'walking' }, 4)[3]!.recovery).toBe(false);
  });

  it('end with the easy days before an event, which come after the last run', () => {
    const of = setting({ daysOut: away(14, 7) });
    const rhythm = rhythmOf(of);
    const before = weekSlots(of, rhythm, 3);
    const easy = eventSlots(of, rhythm, before, addDays('2026-01-05', 31));
    expect(easy).toMatchObject([
      { number: 4, first: MONDAY + 21, kind: 'bridge', return: { kind: 'repeat', missedDays: 7 } },
      { number: 5, first: MONDAY + 24, kind: 'event', return: { kind: 'none' } },
    ]);
    expect(easy[0]!.days.every((day) => day < MONDAY + 24)).toBe(true);
    const whole = eventSlots(of, rhythm, before, addDays('2026-01-05', 28));
    expect(whole).toMatchObject([{ number: 4, first: MONDAY + 21, kind: 'event' }]);
    // Sunday was run, so Monday is free.
    const four = setting({ sessionsPerWeek: 4 });
    const week = weekSlots(four, rhythmOf(four), 1);
    const [next] = eventSlots(four, rhythmOf(four), week, addDays('2026-01-05', 14));
    expect(next!.days.map((day) => day - MONDAY)).toEqual([8, 10, 12]);
  });
});
