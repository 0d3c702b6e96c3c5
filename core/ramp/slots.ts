import { ArgumentError } from '../check.ts';
import { dayNumber, type IsoDay } from '../day.ts';
import type { Setting } from './request.ts';
import { runningDays, type Availability } from './schedule.ts';

/** Weeks the search for a goal goes on; three years of building is no plan any more (D). */
export const MOST_WEEKS = 156;

export type SlotKind = 'build' | 'recovery' | 'event' | 'bridge';

/** How much load a week may hold, seen from the calendar alone. */
export type Return =
  | { readonly kind: 'none' }
  /** Days were missed: the week before is repeated. */
  | { readonly kind: 'repeat'; readonly missedDays: number }
  | { readonly kind: 'less'; readonly missedDays: number; readonly percent: number }
  /** So long a break that the dog begins anew, from the walk base. */
  | { readonly kind: 'restart'; readonly missedDays: number };

/** A week on the calendar, before its load is known. */
export interface Slot {
  readonly number: number;
  /** Day number of the first day. */
  readonly first: number;
  /** Day numbers of the running days. */
  readonly days: readonly number[];
  readonly kind: SlotKind;
  readonly recovery: boolean;
  readonly return: Return;
}

/** What an undisturbed week looks like. */
export interface Rhythm {
  /** Running days of an undisturbed week; the fewest where they alternate. */
  readonly sessions: number;
  /** The most rest days in a row. */
  readonly restDays: number;
}

/** Enough for weeks that alternate to show. */
const RHYTHM_WEEKS = 5;

/** A gap this much longer than usual means that running days were missed (D). */
const MISSED_FROM_DAYS = 3;

/** The rhythm of weeks without days out. @throws RangeError when the weekdays leave no plan. */
export function rhythmOf(setting: Setting): Rhythm {
  const availability: Availability = { ...setting.availability, out: new Set() };
  const first = dayNumber(setting.startDay);
  let lastRun: number | null = null;
  const counts: number[] = [];
  let restDays = 0;
  for (let week = 0; week < RHYTHM_WEEKS; week += 1) {
    const { sessionsPerWeek } = setting.request;
    const days = runningDays(first + week * 7, sessionsPerWeek, availability, lastRun);
    for (const day of days) {
      if (lastRun !== null) restDays = Math.max(restDays, day - lastRun - 1);
      lastRun = day;
    }
    counts.push(days.length);
  }
  if (Math.max(...counts) < 2) {
    throw new ArgumentError(
      'weekdays',
      '',
      undefined,
      'weekdays must leave at least two running days a week that do not follow one another (sessionsPerWeek)',
    );
  }
  return { sessions: Math.max(2, Math.min(...counts)), restDays };
}

/** Tells a break from the ordinary rest between running days. */
export function returnAfter(missedDays: number, rules: Setting['rules']): Return {
  if (missedDays < MISSED_FROM_DAYS) return { kind: 'none' };
  if (missedDays <= rules.breakRepeatDays) return { kind: 'repeat', missedDays };
  if (missedDays <= rules.breakShortDays) {
    return { kind: 'less', missedDays, percent: rules.breakShortPercent };
  }
  if (missedDays <= rules.breakLongDays) {
    return { kind: 'less', missedDays, percent: rules.breakLongPercent };
  }
  return { kind: 'restart', missedDays };
}

/**
 * True for the week whose minutes a review has set: its first building week. A recovery week that
 * is due comes before it, so that holding never costs the recovery. A new break takes precedence.
 */
export function isReviewed(setting: Setting, slots: readonly Slot[], index: number): boolean {
  if (typeof setting.request.resume?.firstWeekMinutes !== 'number') return false;
  const building = ({ kind, days }: Slot): boolean => kind === 'build' && days.length > 0;
  const slot = slots[index]!;
  if (slot.return.kind === 'less' || slot.return.kind === 'restart') return false;
  return building(slot) && !slots.slice(0, index).some(building);
}

interface Stretch {
  readonly number: number;
  readonly first: number;
  readonly length: number;
  readonly kind: SlotKind;
  /** The first week of a reviewed plan was set by the review, break included. */
  readonly ofReview?: boolean;
}

function slotOf(setting: Setting, rhythm: Rhythm, stretch: Stretch, lastRun: number | null): Slot {
  const { number, first, kind, length } = stretch;
  const { sessionsPerWeek } = setting.request;
  const days = runningDays(first, sessionsPerWeek, setting.availability, lastRun, length);
  const gap = lastRun === null || days.length === 0 ? 0 : days[0]! - lastRun - 1;
  const missed = stretch.ofReview === true ? 0 : gap - rhythm.restDays;
  return {
    number,
    first,
    days,
    kind,
    recovery: number % setting.rules.recoveryEvery === 0,
    return: returnAfter(missed, setting.rules),
  };
}

function lastRunBefore(setting: Setting): number | null {
  const day = setting.request.resume?.lastRunDay ?? null;
  return day === null ? null : dayNumber(day);
}

/** Lays out `count` ordinary weeks from the first day of the plan. */
export function weekSlots(setting: Setting, rhythm: Rhythm, count: number): Slot[] {
  const start = dayNumber(setting.startDay);
  const firstNumber = setting.request.resume?.weekNumber ?? 1;
  let lastRun = lastRunBefore(setting);
  return Array.from({ length: count }, (_, index) => {
    const number = firstNumber + index;
    const kind = number % setting.rules.recoveryEvery === 0 ? 'recovery' : 'build';
    const first = start + index * 7;
    const stretch: Stretch = { number, first, length: 7, kind, ofReview: index === 0 };
    const slot = slotOf(setting, rhythm, stretch, lastRun);
    lastRun = slot.days.at(-1) ?? lastRun;
    return slot;
  });
}

/** The event is a running day itself, so the day before it stays free. */
export function keepEveFree(setting: Setting, eventDay: IsoDay): Setting {
  const out = new Set(setting.availability.out).add(dayNumber(eventDay) - 1);
  return { ...setting, availability: { ...setting.availability, out } };
}

/**
 * True where running only begins and the event is so near that the first week, the lightest there
 * is, stands right before it.
 */
export function lacksEasyWeek({ request, startDay }: Setting, eventDay: IsoDay): boolean {
  const begins = (request.resume?.peakMinutes ?? 0) === 0;
  return begins && dayNumber(eventDay) - dayNumber(startDay) < 14;
}

/** Whole weeks that stand before the easy days of an event. */
export function weeksBeforeEvent(setting: Setting, eventDay: IsoDay): number {
  const whole = Math.floor((dayNumber(eventDay) - dayNumber(setting.startDay)) / 7);
  return lacksEasyWeek(setting, eventDay) ? whole : Math.max(0, whole - 1);
}

/**
 * The easy days up to an event: the last seven, and before them the days that do not fill a week.
 */
export function eventSlots(
  setting: Setting,
  rhythm: Rhythm,
  before: readonly Slot[],
  eventDay: IsoDay,
): Slot[] {
  const start = dayNumber(setting.startDay);
  const days = dayNumber(eventDay) - start;
  const spare = days % 7;
  let number = (setting.request.resume?.weekNumber ?? 1) + before.length;
  let first = start + before.length * 7;
  const stretches: Stretch[] = [];
  if (spare > 0) {
    const ofReview = before.length === 0;
    stretches.push({ number, first, length: spare, kind: 'bridge', ofReview });
    number += 1;
    first += spare;
  }
  if (first + 7 === start + days) {
    const ofReview = stretches.length === 0 && before.length === 0;
    stretches.push({ number, first, length: 7, kind: 'event', ofReview });
  }
  let lastRun = before.findLast((slot) => slot.days.length > 0)?.days.at(-1) ?? null;
  lastRun ??= lastRunBefore(setting);
  return stretches.map((stretch) => {
    const slot = slotOf(setting, rhythm, stretch, lastRun);
    lastRun = slot.days.at(-1) ?? lastRun;
    return slot;
  });
}
