import { Temporal } from 'temporal-polyfill';
import { ArgumentError } from './check.ts';

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

/** Days since 1970-01-01; NaN for no calendar day. By arithmetic: a practice has many thousands. */
function parseDay(text: string): number {
  if (text.length !== 10 || text.charCodeAt(4) !== HYPHEN || text.charCodeAt(7) !== HYPHEN) {
    return Number.NaN;
  }
  const year = digits(text, 0, 4);
  const month = digits(text, 5, 2);
  const day = digits(text, 8, 2);
  if (!(month >= 1 && month <= 12 && day >= 1)) return Number.NaN;
  const leap = isLeap(year);
  const length = DAYS_BEFORE[month]! - DAYS_BEFORE[month - 1]! + (leap && month === 2 ? 1 : 0);
  if (day > length) return Number.NaN;
  return daysBeforeYear(year) + DAYS_BEFORE[month - 1]! + (leap && month > 2 ? 1 : 0) + day - 1;
}

/** True for a real calendar day inside `DAY_RANGE`, written `YYYY-MM-DD`. */
export function isIsoDay(text: string): boolean {
  return !Number.isNaN(parseDay(text)) && text >= DAY_RANGE.min && text <= DAY_RANGE.max;
}

/**
 * Days since 1970-01-01, for arithmetic in hot loops.
 * @throws ArgumentError when `day` is not a calendar day.
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

/** The day for a number from `dayNumber`. */
export function dayFromNumber(days: number): IsoDay {
  return new Date(days * MS_PER_DAY).toISOString().slice(0, 10);
}

/** `day` moved by `days` (may be negative). */
export function addDays(day: IsoDay, days: number): IsoDay {
  return dayFromNumber(dayNumber(day) + days);
}

/** Days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: IsoDay, to: IsoDay): number {
  return dayNumber(to) - dayNumber(from);
}

/** Day of the week of `day`, Monday = 0. */
export function weekday(day: IsoDay): Weekday {
  return ((((dayNumber(day) + 3) % 7) + 7) % 7) as Weekday;
}

/** `day` moved by whole calendar months; the last day of a shorter month where needed. */
export function addMonths(day: IsoDay, months: number): IsoDay {
  dayNumber(day);
  return Temporal.PlainDate.from(day).add({ months }).toString();
}

/** Completed calendar months from `from` to `to` (an age in months). */
export function monthsBetween(from: IsoDay, to: IsoDay): number {
  dayNumber(from, 'from');
  dayNumber(to, 'to');
  return Temporal.PlainDate.from(from).until(to, { largestUnit: 'months' }).months;
}
