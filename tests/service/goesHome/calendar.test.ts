import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import {
  calendarFile,
  type CalendarDay,
  type CalendarInput,
} from '../../../electron/service/goesHome/calendar.ts';
import { HOSTILE_NAMES } from '../../support/hostileTexts.ts';

// Read back by a second library: ical.js (RFC 5545, 7265). The rules for UID, SEQUENCE and STATUS
// are those of RFC 5545, 3.8.4.7, 3.8.7.4 and 3.8.1.11 (M).

const day = (key: string, iso: string, summary = 'Run'): CalendarDay => ({
  key,
  day: iso,
  summary,
  lines: ['36 min in all', 'Soft, flat path'],
});
const input = (more: Partial<CalendarInput> = {}): CalendarInput => ({
  dogId: 'd1',
  name: 'Bramble',
  language: 'en',
  sequence: 3,
  days: [day('outing-2026-03-02', '2026-03-02'), day('weigh', '2026-03-16', 'Weigh Bramble')],
  cancelled: [],
  alarmHour: null,
  instant: new Date('2026-03-01T12:00:00Z'),
  ...more,
});
const read = (text: string) => {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return calendar.getAllSubcomponents('vevent').map((event) => ({
    uid: String(event.getFirstPropertyValue('uid')),
    sequence: Number(event.getFirstPropertyValue('sequence')),
    start: event.getFirstPropertyValue('dtstart') as ICAL.Time,
    summary: String(event.getFirstPropertyValue('summary')),
    description: String(event.getFirstPropertyValue('description')),
    status: event.getFirstPropertyValue('status'),
    alarms: event.getAllSubcomponents('valarm'),
  }));
};

/** What a calendar does that takes files in: an entry is its UID, the higher sequence counts. */
function takenIn(...files: readonly string[]) {
  const entries = new Map<string, ReturnType<typeof read>[number]>();
  for (const event of files.flatMap(read)) {
    const before = entries.get(event.uid);
    if (before === undefined || event.sequence >= before.sequence) entries.set(event.uid, event);
  }
  return [...entries.values()].filter(({ status }) => status !== 'CANCELLED');
}

describe('a calendar file', () => {
  test('has whole days without a time zone', () => {
    const [run] = read(calendarFile(input()));
    expect(run!.start.isDate).toBe(true);
    expect(run!.start.toString()).toBe('2026-03-02');
    expect(run!.description).toBe('36 min in all\nSoft, flat path');
    expect(calendarFile(input())).not.toContain('TZID');
  });

  test.each(['America/New_York', 'Pacific/Auckland', 'UTC'])('is the same in %s', (zone) => {
    const before = process.env['TZ'];
    const here = calendarFile(input());
    process.env['TZ'] = zone;
    expect(calendarFile(input())).toBe(here);
    if (before === undefined) delete process.env['TZ'];
    else process.env['TZ'] = before;
  });

  test('taken in twice, doubles nothing', () => {
    const file = calendarFile(input());
    expect(takenIn(file, file)).toHaveLength(2);
  });

  test('of a new version moves what moved and cancels what is gone', () => {
    const next = calendarFile(
      input({
        sequence: 4,
        days: [day('outing-2026-03-04', '2026-03-04'), day('weigh', '2026-03-20')],
        cancelled: [day('outing-2026-03-02', '2026-03-02'), day('weigh', '2026-03-16')],
      }),
    );
    const left = takenIn(calendarFile(input()), next);
    expect(left.map(({ start }) => start.toString()).sort()).toEqual(['2026-03-04', '2026-03-20']);
  });

  test('reminds in the morning where that is wished', () => {
    const [run] = read(calendarFile(input({ alarmHour: 8 })));
    const trigger = run!.alarms[0]!.getFirstPropertyValue('trigger') as ICAL.Duration;
    expect(trigger.toSeconds()).toBe(8 * 3600);
    expect(read(calendarFile(input()))[0]!.alarms).toEqual([]);
  });

  test.each(HOSTILE_NAMES)('keeps $what as text', ({ typed: text }) => {
    const file = calendarFile(
      input({ name: text, days: [{ ...day('a', '2026-03-02'), summary: text, lines: [text] }] }),
    );
    const events = read(file);
    expect(events).toHaveLength(1);
    expect(events[0]!.uid).toBe('d1-a@trotwell');
    expect(events[0]!.alarms).toEqual([]);
  });
});
