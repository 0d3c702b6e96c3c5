import { Temporal } from 'temporal-polyfill';
import { ArgumentError } from './check.ts';

/** A calendar day as ISO text, `YYYY-MM-DD`. Core never asks the clock: days come in as arguments. */
export type IsoDay = string;

/** 0 = Monday … 6 = Sunday (ISO order, counted from 0). */
export type Weekday = 0 | 1 | 2 | 3 | 4 | 5 | 6;

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;
const MS_PER_DAY = 86_400_000;

/** The first and last day the program accepts. */
export const DAY_RANGE = { min: '1980-01-01', max: '2150-12-31' } as const;

/** True for a real calendar day inside `DAY_RANGE`, written `YYYY-MM-DD`. */
export function isIsoDay(text: string): boolean {
  if (!ISO_DAY.test(text) || text < DAY_RANGE.min || text > DAY_RANGE.max) return false;
  const epochMs = Date.UTC(+text.slice(0, 4), +text.slice(5, 7) - 1, +text.slice(8, 10));
  return new Date(epochMs).toISOString().slice(0, 10) === text;
}

/**
 * Days since 1970-01-01, for arithmetic in hot loops.
 * @throws ArgumentError when `day` is not a calendar day.
 */
export function dayNumber(day: IsoDay, argument = 'day'): number {
  if (typeof day !== 'string' || !isIsoDay(day)) {
    throw new ArgumentError(
      argument,
      'YYYY-MM-DD',
      undefined,
      `${argument} must be a calendar day from ${DAY_RANGE.min} to ${DAY_RANGE.max} written YYYY-MM-DD, but is ${String(day)}`,
    );
  }
  return Date.UTC(+day.slice(0, 4), +day.slice(5, 7) - 1, +day.slice(8, 10)) / MS_PER_DAY;
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
