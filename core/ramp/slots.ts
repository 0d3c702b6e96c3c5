import { ArgumentError } from '../check.ts';
import { dayNumber, type IsoDay } from '../day.ts';
import type { Setting } from './request.ts';
import { runningDays, walkingDays, type Availability } from './schedule.ts';

/** Weeks the search for a goal goes on; three years of building is no plan any more (D). */
export const MOST_WEEKS = 156;

export type SlotKind = 'build' | 'event' | 'bridge';

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
  /** True where a recovery week is due; it falls out where the week before was light already. */
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

/** The running days of a week, or the days of its walks, which may follow one another. */
export function outingDays(
  { programme, request, rules, availability }: Setting,
  first: number,
  lastRun: number | null,
  length = 7,
): number[] {
  if (programme === 'walking') return walkingDays(first, rules.walkDays, availability, length);
  return runningDays(first, request.sessionsPerWeek, availability, lastRun, length);
}

/** The rhythm of weeks without days out. @throws RangeError when the weekdays leave no plan. */
export function rhythmOf(setting: Setting): Rhythm {
  const availability: Availability = { ...setting.availability, out: new Set() };
  const first = dayNumber(setting.startDay);
  let lastRun: number | null = null;
  const counts: number[] = [];
  let restDays = 0;
  for (let week = 0; week < RHYTHM_WEEKS; week += 1) {
    const days = outingDays({ ...setting, availability }, first + week * 7, lastRun);
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

/** What comes before a week: a break, or an illness after which its load does not rise yet. */
export function returnTo({ request, rules }: Setting, number: number, missedDays: number): Return {
  const back = returnAfter(missedDays, rules);
  const { weekNumber, holdsFirst = false } = request.resume ?? {};
  const holds = holdsFirst && number === weekNumber && back.kind === 'none';
  return holds ? { kind: 'repeat', missedDays: 0 } : back;
}

/** True where a week may be one of recovery; a walking programme is too short for them. */
export const isDue = ({ programme, rules }: Setting, number: number): boolean =>
  programme === 'running' && number % rules.recoveryEvery === 0;

interface Stretch {
  readonly number: number;
  readonly first: number;
  readonly length: number;
  readonly kind: SlotKind;
}

function slotOf(setting: Setting, rhythm: Rhythm, stretch: Stretch, lastRun: number | null): Slot {
  const { number, first, kind, length } = stretch;
  const days = outingDays(setting, first, lastRun, length);
  const gap = lastRun === null || days.length === 0 ? 0 : days[0]! - lastRun - 1;
  return {
    number,
    first,
    days,
    kind,
    recovery: isDue(setting, number),
    return: returnTo(setting, number, gap - rhythm.restDays),
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
    const stretch: Stretch = { number, first: start + index * 7, length: 7, kind: 'build' };
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
    stretches.push({ number, first, length: spare, kind: 'bridge' });
    number += 1;
    first += spare;
  }
  if (first + 7 === start + days) {
    stretches.push({ number, first, length: 7, kind: 'event' });
  }
  let lastRun = before.findLast((slot) => slot.days.length > 0)?.days.at(-1) ?? null;
  lastRun ??= lastRunBefore(setting);
  return stretches.map((stretch) => {
    const slot = slotOf(setting, rhythm, stretch, lastRun);
    lastRun = slot.days.at(-1) ?? lastRun;
    return slot;
  });
}
