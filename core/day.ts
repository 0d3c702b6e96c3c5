import { ArgumentError, wholeInRange } from './check.ts';

/** A calendar day as ISO text, `YYYY-MM-DD`. Core never asks the clock: days come in as arguments. */
export type IsoDay = string;

/** 0 = Monday … 6 = Sunday (ISO order, counted from 0). */
export type Weekday = 0 | 1 | 2 | 3 | 4 | 5 | 6;

/** The first and last day the program accepts. */
export const DAY_RANGE = { min: '1980-01-01', max: '2150-12-31' } as const;

const MS_PER_DAY = 86_400_000;
const ZERO = 48;
const HYPHEN = 45;

/** The number that `length` digits from `start` on spell; NaN where one is no digit. */
function digits(text: string, start: number, length: number): number {
  let value = 0;
  for (let index = start; index < start + length; index += 1) {
    const digit = text.charCodeAt(index) - ZERO;
    if (!(digit >= 0 && digit <= 9)) return Number.NaN;
    value = 10 * value + digit;
  }
  return value;
}

const isLeap = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

/** Days before each month of a common year, and of the whole year. */
const DAYS_BEFORE = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365] as const;

const LEAP_DAYS_BEFORE_1970 = 477;

/** Days from 1970-01-01 to the first day of a year of the Gregorian calendar. */
function daysBeforeYear(year: number): number {
  const past = year - 1;
  return (
    365 * (year - 1970) +
    (Math.floor(past / 4) - Math.floor(past / 100) + Math.floor(past / 400)) -
    LEAP_DAYS_BEFORE_1970
  );
}

const leapDay = (year: number): number => (isLeap(year) ? 1 : 0);

/** Days from 1970-01-01 to the first day of a month, which is counted from 1. */
const daysBeforeMonth = (year: number, month: number): number =>
  daysBeforeYear(year) + DAYS_BEFORE[month - 1]! + (month > 2 ? leapDay(year) : 0);

const daysInMonth = (year: number, month: number): number =>
  DAYS_BEFORE[month]! - DAYS_BEFORE[month - 1]! + (month === 2 ? leapDay(year) : 0);

/** Days since 1970-01-01; NaN for no calendar day. By arithmetic: a practice has many thousands. */
function parseDay(text: string): number {
  if (text.length !== 10 || text.charCodeAt(4) !== HYPHEN || text.charCodeAt(7) !== HYPHEN) {
    return Number.NaN;
  }
  const year = digits(text, 0, 4);
  const month = digits(text, 5, 2);
  const day = digits(text, 8, 2);
  if (!(month >= 1 && month <= 12 && day >= 1)) return Number.NaN;
  if (day > daysInMonth(year, month)) return Number.NaN;
  return daysBeforeMonth(year, month) + day - 1;
}

/**
 * True for a real calendar day inside `DAY_RANGE`, written `YYYY-MM-DD`.
 * @example
 * isIsoDay('2024-02-29') // => true
 * isIsoDay('2026-02-29') // => false
 */
export function isIsoDay(text: string): boolean {
  return !Number.isNaN(parseDay(text)) && text >= DAY_RANGE.min && text <= DAY_RANGE.max;
}

/**
 * Days since 1970-01-01, for arithmetic in hot loops.
 * @throws ArgumentError when `day` is not a calendar day.
 * @example dayNumber('2000-01-01') // => 10957
 */
export function dayNumber(day: IsoDay, argument = 'day'): number {
  const days = typeof day === 'string' ? parseDay(day) : Number.NaN;
  if (Number.isNaN(days) || day < DAY_RANGE.min || day > DAY_RANGE.max) {
    throw new ArgumentError(
      argument,
      'YYYY-MM-DD',
      undefined,
      `${argument} must be a calendar day from ${DAY_RANGE.min} to ${DAY_RANGE.max} written YYYY-MM-DD, but is ${String(day)}`,
    );
  }
  return days;
}

/**
 * The day for a number from `dayNumber`.
 * @example dayFromNumber(10957) // => '2000-01-01'
 */
export function dayFromNumber(days: number): IsoDay {
  return new Date(days * MS_PER_DAY).toISOString().slice(0, 10);
}

/**
 * `day` moved by `days` (may be negative).
 * @example addDays('2026-02-27', 2) // => '2026-03-01'
 */
export function addDays(day: IsoDay, days: number): IsoDay {
  return dayFromNumber(dayNumber(day) + days);
}

/**
 * Days from `from` to `to`; negative when `to` is earlier.
 * @example daysBetween('2026-03-01', '2026-04-01') // => 31
 */
export function daysBetween(from: IsoDay, to: IsoDay): number {
  return dayNumber(to) - dayNumber(from);
}

/**
 * Day of the week of `day`, Monday = 0.
 * @example weekday('2026-03-02') // => 0
 */
export function weekday(day: IsoDay): Weekday {
  return ((((dayNumber(day) + 3) % 7) + 7) % 7) as Weekday;
}

/** More than lies between any two days of the range. */
const MONTHS_MOVED = { min: -12_000, max: 12_000 } as const;

/** Months since year 0, and the day of the month. */
function monthOf(day: IsoDay, argument?: string): { readonly month: number; readonly day: number } {
  dayNumber(day, argument);
  return { month: 12 * digits(day, 0, 4) + digits(day, 5, 2) - 1, day: digits(day, 8, 2) };
}

/**
 * `day` moved by whole calendar months; the last day of a shorter month where needed.
 * @example addMonths('2026-01-31', 1) // => '2026-02-28'
 */
export function addMonths(day: IsoDay, months: number): IsoDay {
  const from = monthOf(day);
  const moved = from.month + wholeInRange('months', months, 'months', MONTHS_MOVED);
  const year = Math.floor(moved / 12);
  const month = (moved % 12) + 1;
  const last = Math.min(from.day, daysInMonth(year, month));
  return dayFromNumber(daysBeforeMonth(year, month) + last - 1);
}

/**
 * Completed calendar months from `from` to `to` (an age in months).
 * @example monthsBetween('2020-05-17', '2026-05-16') // => 71
 */
export function monthsBetween(from: IsoDay, to: IsoDay): number {
  const [start, end] = [monthOf(from, 'from'), monthOf(to, 'to')];
  const months = end.month - start.month;
  if (months > 0 && end.day < start.day) return months - 1;
  return months < 0 && end.day > start.day ? months + 1 : months;
}
