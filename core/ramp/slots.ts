import { ArgumentError } from '../check.ts';
import { addDays, dayNumber, daysBetween, type IsoDay } from '../day.ts';
import type { Setting } from './request.ts';
import { runningDays, type Availability } from './schedule.ts';

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
  readonly startDay: IsoDay;
  readonly days: readonly IsoDay[];
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

/** A gap this much longer than usual means that running days were missed (D). */
const MISSED_FROM_DAYS = 3;

/** The rhythm of weeks without days out. @throws RangeError when the weekdays leave no plan. */
export function rhythmOf(setting: Setting): Rhythm {
  const availability: Availability = { ...setting.availability, out: new Set() };
  const { sessionsPerWeek } = setting.request;
  let lastRun: IsoDay | null = null;
  const counts: number[] = [];
  let restDays = 0;
  for (let week = 0; week < 5; week += 1) {
    const startDay = addDays(setting.startDay, week * 7);
    const days = runningDays(startDay, sessionsPerWeek, availability, lastRun);
    for (const day of days) {
      if (lastRun !== null) restDays = Math.max(restDays, daysBetween(lastRun, day) - 1);
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

interface Stretch {
  readonly number: number;
  readonly startDay: IsoDay;
  readonly length: number;
  readonly kind: SlotKind;
  readonly first: boolean;
}

function slotOf(
  setting: Setting,
  rhythm: Rhythm,
  stretch: Stretch,
  lastRun: IsoDay | null,
): Slot {
  const { number, startDay, kind } = stretch;
  const { sessionsPerWeek } = setting.request;
  const { availability } = setting;
  const days = runningDays(startDay, sessionsPerWeek, availability, lastRun, stretch.length);
  const gap = lastRun === null || days.length === 0 ? 0 : daysBetween(lastRun, days[0]!) - 1;
  // The first week of a reviewed plan was set by the review, break included.
  const missed = stretch.first ? 0 : gap - rhythm.restDays;
  return {
    number,
    startDay,
    days,
    kind,
    recovery: number % setting.rules.recoveryEvery === 0,
    return: returnAfter(missed, setting.rules),
  };
}

/** Lays out `count` ordinary weeks from the first day of the plan. */
export function weekSlots(setting: Setting, rhythm: Rhythm, count: number): Slot[] {
  const { resume } = setting.request;
  let lastRun = resume?.lastRunDay ?? null;
  return Array.from({ length: count }, (_, index) => {
    const number = (resume?.weekNumber ?? 1) + index;
    const recovery = number % setting.rules.recoveryEvery === 0;
    const startDay = addDays(setting.startDay, index * 7);
    const kind = recovery ? 'recovery' : 'build';
    const stretch: Stretch = { number, startDay, length: 7, kind, first: index === 0 };
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

/** Whole weeks that stand before the easy days of an event. */
export function weeksBeforeEvent(setting: Setting, eventDay: IsoDay): number {
  const whole = Math.floor(daysBetween(setting.startDay, eventDay) / 7);
  return whole === 1 ? 1 : Math.max(0, whole - 1);
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
  const days = daysBetween(setting.startDay, eventDay);
  const spare = days % 7;
  const whole = Math.floor(days / 7);
  const first = setting.request.resume?.weekNumber ?? 1;
  const stretches: Stretch[] = [];
  let startDay = addDays(setting.startDay, before.length * 7);
  if (spare > 0) {
    const number = first + before.length;
    stretches.push({ number, startDay, length: spare, kind: 'bridge', first: false });
    startDay = addDays(startDay, spare);
  }
  if (whole > 1) {
    const number = first + before.length + stretches.length;
    stretches.push({ number, startDay, length: 7, kind: 'event', first: false });
  }
  let lastRun = before.findLast((slot) => slot.days.length > 0)?.days.at(-1) ?? null;
  lastRun ??= setting.request.resume?.lastRunDay ?? null;
  return stretches.map((stretch) => {
    const slot = slotOf(setting, rhythm, stretch, lastRun);
    lastRun = slot.days.at(-1) ?? lastRun;
    return slot;
  });
}
