import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  addMonths,
  DAY_RANGE,
  dayNumber,
  daysBetween,
  isIsoDay,
  monthsBetween,
  weekday,
} from '../../core/day.ts';
import { holds } from '../support/laws.ts';

// Core counts days by its own arithmetic, so that no page waits for a calendar library. It is held
// to Temporal, the date arithmetic of ECMAScript (S), as its polyfill carries it out.

const { PlainDate } = Temporal;
const FIRST = PlainDate.from(DAY_RANGE.min);
const LAST = FIRST.until(DAY_RANGE.max).days;
const days = fc.integer({ min: 0, max: LAST }).map((count) => FIRST.add({ days: count }));
/** Days at which months of different lengths meet. */
const ends = fc
  .record({
    year: fc.integer({ min: 1980, max: 2150 }),
    month: fc.integer({ min: 1, max: 12 }),
    day: fc.constantFrom(1, 28, 29, 30, 31),
  })
  .map((date) => PlainDate.from(date));
const anyDay = fc.oneof(days, ends);
const RUNS = { numRuns: 3000 };

describe('core’s days against Temporal', () => {
  it('adds months, and stops at the last day of a shorter one', () => {
    holds(
      fc.property(anyDay, fc.integer({ min: -1200, max: 1200 }), (day, months) => {
        expect(addMonths(day.toString(), months)).toBe(day.add({ months }).toString());
      }),
      RUNS,
    );
  });

  it('counts completed months both ways', () => {
    holds(
      fc.property(anyDay, anyDay, (from, to) => {
        const { months } = from.until(to, { largestUnit: 'months' });
        expect(monthsBetween(from.toString(), to.toString())).toBe(months);
      }),
      RUNS,
    );
  });

  it('adds and counts days, and knows the weekday', () => {
    holds(
      fc.property(anyDay, anyDay, (from, to) => {
        const count = from.until(to).days;
        expect(daysBetween(from.toString(), to.toString())).toBe(count);
        expect(addDays(from.toString(), count)).toBe(to.toString());
        expect(weekday(from.toString())).toBe(from.dayOfWeek - 1);
      }),
      RUNS,
    );
  });

  it('takes the same texts for days of the calendar', () => {
    const two = (n: number): string => String(n).padStart(2, '0');
    const isDay = (text: string): boolean => {
      try {
        return PlainDate.from(text, { overflow: 'reject' }).toString() === text;
      } catch {
        return false;
      }
    };
    for (const year of [1980, 2000, 2023, 2024, 2100]) {
      for (let month = 0; month <= 13; month += 1) {
        for (let day = 0; day <= 32; day += 1) {
          const text = `${year}-${two(month)}-${two(day)}`;
          expect(isIsoDay(text), text).toBe(isDay(text));
        }
      }
    }
  });

  it('takes no day with another character in it', () => {
    const signs = fc.constantFrom(...' -/:0OolI٣９+.,e\n');
    holds(
      fc.property(days, fc.integer({ min: 0, max: 10 }), signs, (day, at, sign) => {
        const text = day.toString();
        const changed = text.slice(0, at) + sign + text.slice(at + 1);
        fc.pre(!/^\d{4}-\d\d-\d\d$/.test(changed));
        expect(isIsoDay(changed)).toBe(false);
        expect(() => dayNumber(changed)).toThrow(RangeError);
      }),
      RUNS,
    );
  });

  it('takes the first and the last day of its range, and none beyond', () => {
    const beyond = [FIRST.subtract({ days: 1 }), PlainDate.from(DAY_RANGE.max).add({ days: 1 })];
    for (const day of beyond.map(String)) {
      expect(isIsoDay(day), day).toBe(false);
      expect(() => dayNumber(day, 'born'), day).toThrow(/^born must be/);
    }
    for (const day of Object.values(DAY_RANGE)) expect(isIsoDay(day), day).toBe(true);
  });

  it('moves by whole months only', () => {
    expect(() => addMonths('2024-01-31', 0.5)).toThrow(RangeError);
  });
});
