import { ICalCalendar, ICalCalendarMethod, ICalEventStatus, ICalAlarmType } from 'ical-generator';

/** Text of a record as one line of a file or header: a control character could begin another. */
export const oneLine = (text: string): string =>
  text.replace(/[\u0000-\u001f\u007f\u2028\u2029]+/g, ' ').trim();

/** One whole day of the calendar: an outing, a weighing, the end of the plan. */
export interface CalendarDay {
  /** Names it within the dog's calendar, the same in every version. */
  readonly key: string;
  /** `YYYY-MM-DD`; a day has no time zone. */
  readonly day: string;
  readonly summary: string;
  /** Lines of the description; may be empty. */
  readonly lines: readonly string[];
}

export interface CalendarInput {
  readonly dogId: string;
  /** Shown as the calendar's name. */
  readonly name: string;
  readonly language: string;
  /** Counts up with every change of the record: a higher one replaces what was sent before. */
  readonly sequence: number;
  readonly days: readonly CalendarDay[];
  /** What an earlier version announced and this one does not. */
  readonly cancelled: readonly CalendarDay[];
  /** Hour of the day at which the phone reminds; null for no reminder. */
  readonly alarmHour: number | null;
  /** The moment it is made. */
  readonly instant: Date;
}

/**
 * A calendar file (iCalendar, RFC 5545). Every entry is a whole day without a time zone. Its UID is
 * made of the dog and the entry's key, so that a calendar that takes the file in again changes its
 * entries instead of doubling them; what is no longer planned comes as cancelled.
 */
export function calendarFile(input: CalendarInput): string {
  const calendar = new ICalCalendar({
    name: input.name,
    prodId: { company: 'Trotwell', product: 'plan', language: input.language.toUpperCase() },
    method: ICalCalendarMethod.PUBLISH,
  });
  const planned = new Set(input.days.map(({ key }) => key));
  for (const day of input.days) addDay(calendar, input, day, false);
  for (const day of input.cancelled) {
    if (!planned.has(day.key)) addDay(calendar, input, day, true);
  }
  return calendar.toString();
}

function addDay(
  calendar: ICalCalendar,
  { dogId, sequence, instant, alarmHour }: CalendarInput,
  { key, day, summary, lines }: CalendarDay,
  cancelled: boolean,
): void {
  const event = calendar.createEvent({
    id: `${dogId}-${key}@trotwell`,
    sequence,
    stamp: instant,
    start: day,
    allDay: true,
    summary: oneLine(summary),
    ...(lines.length === 0 ? {} : { description: lines.map(oneLine).join('\n') }),
    ...(cancelled ? { status: ICalEventStatus.CANCELLED } : {}),
  });
  if (alarmHour === null || cancelled) return;
  event.createAlarm({
    type: ICalAlarmType.display,
    triggerAfter: alarmHour * 3600,
    description: oneLine(summary),
  });
}
