import ICAL from 'ical.js';
import PostalMime from 'postal-mime';
import { describe, expect, test } from 'vitest';
import { blankPlanRequest, blankPractice } from '../../../electron/contract/records/forms.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { dogOf, seenWithPlan, soundVisit } from '../support/records.ts';

async function openPractice(): Promise<TestDesk> {
  const desk = await openOwn();
  await desk.ok('practice/save', { ...blankPractice(), name: 'Practice of the test' });
  return desk;
}
async function planned(desk: TestDesk) {
  const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
  const { plan } = await seenWithPlan(desk, dogId, '2026-03-02');
  return { dogId, plan: plan! };
}
const eventsOf = (base64: string) =>
  new ICAL.Component(ICAL.parse(Buffer.from(base64, 'base64').toString()))
    .getAllSubcomponents('vevent')
    .map((event) => ({
      uid: String(event.getFirstPropertyValue('uid')),
      sequence: Number(event.getFirstPropertyValue('sequence')),
      day: String(event.getFirstPropertyValue('dtstart')),
      summary: String(event.getFirstPropertyValue('summary')),
      cancelled: event.getFirstPropertyValue('status') === 'CANCELLED',
    }));

describe('what goes home', () => {
  test('is a calendar with every outing of the plan in force, in the owner’s language', async () => {
    const desk = await openPractice();
    const { dogId, plan } = await planned(desk);
    const sessions = plan.ramp.weeks.flatMap((week) => week.sessions);
    const made = await desk.ok('goesHome/calendar', { dogId, language: 'de', alarmHour: 8 });
    const outings = eventsOf(made.base64).filter(({ uid }) => uid.includes('outing'));
    expect(outings.map(({ day }) => day)).toEqual(sessions.map(({ day }) => day));
    expect(outings.every(({ cancelled }) => !cancelled)).toBe(true);
    expect(outings[0]!.summary).toMatch(/^Rusk: .*gehen/);
    const review = eventsOf(made.base64).find(({ uid }) => uid.includes('-review@'));
    expect(review).toMatchObject({ day: sessions.at(-1)!.day, cancelled: false });
    expect(made.fileName).toBe('Rusk-calendar-2026-03-02.ics');
  });

  test('speaks of walks in a calendar of a walking programme', async () => {
    const desk = await openPractice();
    const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
    await desk.ok('visits/save', {
      id: null,
      visit: { ...soundVisit(dogId, '2026-03-02'), walkBase: 'failed' },
      plan: { ...blankPlanRequest('2026-03-02', 'unconditioned'), programme: 'walking' },
      food: null,
    });
    const { base64 } = await desk.ok('goesHome/calendar', { dogId, alarmHour: null });
    const text = Buffer.from(base64, 'base64').toString().replaceAll(/\r\n /g, '');
    expect(text).toContain('10\u00a0min brisk walk');
    expect(text).toContain('a steady walk');
    expect(text).not.toMatch(/Run on|trot easily/);
  });

  test('takes back the outings of a dog that may not run any more', async () => {
    const desk = await openPractice();
    const { dogId } = await planned(desk);
    const before = await desk.ok('goesHome/calendar', { dogId, alarmHour: null });
    desk.setDay('2026-03-10');
    const lame = { leftFore: 3, rightFore: 0, leftHind: 0, rightHind: 0 };
    const visit = { ...soundVisit(dogId, '2026-03-10'), lamenessWalk: lame };
    await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
    const after = await desk.ok('goesHome/calendar', { dogId, alarmHour: null });
    const outings = eventsOf(after.base64).filter(({ uid }) => uid.includes('outing'));
    expect(outings.length).toBeGreaterThan(0);
    expect(outings.every(({ cancelled }) => cancelled)).toBe(true);
    const told = new Map(eventsOf(before.base64).map((event) => [event.uid, event.sequence]));
    const review = eventsOf(after.base64).find(({ uid }) => uid.includes('-review@'));
    expect(review?.cancelled).toBe(true);
    for (const { uid, sequence } of outings) expect(sequence).toBeGreaterThan(told.get(uid)!);
  });

  test('of a later day counts above an earlier one, whatever went to the bin between', async () => {
    const desk = await openPractice();
    const { dogId } = await planned(desk);
    desk.setDay('2026-03-03');
    const extra = await desk.ok('visits/save', {
      id: null,
      visit: { ...soundVisit(dogId, '2026-03-03'), kind: 'follow-up' },
      plan: null,
      food: null,
    });
    const before = await desk.ok('goesHome/calendar', { dogId, alarmHour: null });
    await desk.ok('bin/put', { kind: 'visit', id: extra.visit.id, reason: 'entered by mistake' });
    desk.setDay('2026-03-04');
    const after = await desk.ok('goesHome/calendar', { dogId, alarmHour: null });
    expect(eventsOf(after.base64)[0]!.sequence).toBeGreaterThan(
      eventsOf(before.base64)[0]!.sequence,
    );
  });

  test('is a mail draft with the sheets that have something to say, and the calendar', async () => {
    const desk = await openPractice();
    const { dogId } = await planned(desk);
    const made = await desk.ok('goesHome/mail', {
      dogId,
      reader: 'owner',
      kinds: ['running-plan', 'feeding-sheet'],
    });
    expect(made.leftOut).toEqual([]);
    // Made, not sent: the story tells it, and nobody's facts have changed.
    const deeds = await desk.ok('dogs/deeds', { dogId });
    expect(deeds).toMatchObject([{ action: 'made', reason: 'Mail draft to the owner' }]);
    expect(await desk.ok('history/list', { kind: 'dog', recordId: dogId })).toEqual([]);
    const mail = await PostalMime.parse(Buffer.from(made.base64, 'base64'));
    expect(mail.attachments.map(({ mimeType }) => mimeType)).toEqual([
      'application/pdf',
      'text/calendar',
      'text/csv',
    ]);
    expect(mail.text).toContain('Dear Dana Owner,');
  });

  test('is the letter for the vet, without a calendar', async () => {
    const desk = await openPractice();
    const { dogId } = await planned(desk);
    const made = await desk.ok('goesHome/mail', { dogId, reader: 'vet', kinds: ['vet-letter'] });
    const mail = await PostalMime.parse(Buffer.from(made.base64, 'base64'));
    expect(mail.attachments).toHaveLength(1);
    expect(made.to).toBe('');
  });

  test('is nothing where nothing was decided, and says so', async () => {
    const desk = await openPractice();
    const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
    await desk.ok('visits/save', {
      id: null,
      visit: soundVisit(dogId, '2026-03-02'),
      plan: null,
      food: null,
    });
    const error = await desk.refused('goesHome/mail', {
      dogId,
      reader: 'owner',
      kinds: ['feeding-sheet'],
    });
    expect(error.message).toContain('No ration has been decided');
  });
});
