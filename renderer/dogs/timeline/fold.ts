import { addDays } from '../../../core/day.ts';
import type { TimelineEntry } from './entry.ts';

/** Shown at once, and how far back; our own choice (D). */
export const FIRST_SHOWN = 20;
export const FIRST_DAYS = 365;
/** How many more come with each unfolding. */
export const MORE_SHOWN = 50;

/** How many entries stand open at first: the latest of the last year, and a few where there are none. */
export function firstOpen(entries: readonly TimelineEntry[], today: string): number {
  const since = addDays(today, -FIRST_DAYS);
  const recent = entries.filter(({ day }) => day >= since).length;
  return wholeDays(entries, Math.min(FIRST_SHOWN, Math.max(recent, Math.min(3, entries.length))));
}

/** At least `count` entries, and none of a day whose others are shown left out. */
export function wholeDays(entries: readonly TimelineEntry[], count: number): number {
  const last = entries[count - 1]?.day;
  if (last === undefined) return entries.length;
  return entries.findLastIndex(({ day }) => day === last) + 1;
}

/** Entries in order, day by day. */
export function byDay(
  entries: readonly TimelineEntry[],
): readonly { readonly day: string; readonly entries: readonly TimelineEntry[] }[] {
  return [...Map.groupBy(entries, ({ day }) => day)].map(([day, own]) => ({ day, entries: own }));
}
