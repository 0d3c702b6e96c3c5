import { describe, expect, test } from 'vitest';
import { addDays } from '../../../core/index.ts';
import { blankPractice } from '../../../electron/contract/records/forms.ts';
import { readPdf } from '../../templates/support/readPdf.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { ACCEPTED, dogOf, doneOn, seenWithPlan, soundVisit } from '../support/records.ts';

/** Two weeks into a plan; the days are those of the sessions that are over. */
async function inPlan(desk: TestDesk) {
  const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
  const { plan } = await seenWithPlan(desk, dogId, '2026-03-02');
  desk.setDay('2026-03-17');
  const days = plan!.ramp.weeks
    .flatMap(({ sessions }) => sessions.map(({ day }) => day))
    .filter((day) => day < '2026-03-17');
  return { dogId, days, sent: { id: null, visit: soundVisit(dogId, '2026-03-17'), plan: null } };
}

describe('a follow-up saved in one go', () => {
  test('keeps sessions, food and the next version of the plan together', async () => {
    const desk = await openOwn();
    const { dogId, days, sent } = await inPlan(desk);
    const saved = await desk.ok('visits/save', {
      ...sent,
      food: { decision: 'accepted', kcalPerDay: null, foodSwitch: null, note: '' },
      sessions: days.map((day) => doneOn(day)),
      review: ACCEPTED,
    });
    expect(saved.plan).toMatchObject({ version: 2, current: true, origin: 'reviewed' });
    expect(saved.plan?.visitId).toBe(saved.visit.id);
    // Every session was done and normal: the review must have seen the results sent with it.
    expect(saved.plan?.review?.decision).toBe('progress');
    expect(saved.foodDecision?.visitId).toBe(saved.visit.id);
    const file = await desk.ok('dogs/file', { dogId });
    expect(file.sessions.map(({ day }) => day)).toEqual(days);
    expect(file.plans.map(({ current }) => current)).toEqual([false, true]);
  });

  test('keeps and prints the energy typed by hand, whatever the accepted plan proposes', async () => {
    const desk = await openOwn();
    const { dogId, days, sent } = await inPlan(desk);
    const food = { kcalPerDay: 990, foodSwitch: null, note: '' };
    const saved = await desk.ok('visits/save', {
      ...sent,
      food: { ...food, decision: 'edited' },
      sessions: days.map((day) => doneOn(day)),
      review: ACCEPTED,
    });
    expect(saved.foodDecision).toMatchObject({ decision: 'edited', kcalPerDay: 990 });
    expect(saved.foodDecision!.proposal.kcalPerDay).not.toBeCloseTo(990, 0);
    const practice = { ...blankPractice(), name: 'Invented Practice' };
    await desk.ok('practice/save', { ...practice, intakeSheets: [] });
    const chosen = { kinds: null, dogId, paper: null };
    expect(await desk.refused('handouts/bundle', chosen)).toMatchObject({
      fields: [{ message: 'Choose at least one sheet.' }],
    });
    await desk.ok('practice/save', {
      ...practice,
      intakeSheets: ['running-plan', 'feeding-sheet'],
    });
    const sheets = await desk.ok('handouts/bundle', chosen);
    const { text } = await readPdf(Buffer.from(sheets.base64, 'base64'));
    expect(text.replaceAll(/\s+/g, ' ')).toContain('990 kcal');
    // The record names one amount: the one decided on.
    const kept = { kind: 'assessment-record', dogId, paper: null } as const;
    const record = await desk.ok('handouts/render', kept);
    const read = await readPdf(Buffer.from(record.base64, 'base64'));
    const proposed = Math.round(saved.foodDecision!.proposal.kcalPerDay!);
    expect(read.text).toContain('990 kcal');
    expect(read.text).not.toContain(`${proposed} kcal`);
  });

  test('keeps nothing where another ration was accepted than is proposed by then', async () => {
    const desk = await openOwn();
    const { dogId, days, sent } = await inPlan(desk);
    const error = await desk.refused('visits/save', {
      ...sent,
      food: { decision: 'accepted', kcalPerDay: 990, foodSwitch: null, note: '' },
      sessions: days.map((day) => doneOn(day)),
      review: ACCEPTED,
    });
    expect(error.fields?.[0]?.path).toBe('food.decision');
    expect(error.fields?.[0]?.message).toContain('you accepted 990');
    const file = await desk.ok('dogs/file', { dogId });
    expect(file.visits).toHaveLength(1);
    expect(file.sessions).toEqual([]);
  });

  test('judges the plan by the findings of the same visit', async () => {
    const desk = await openOwn();
    const { days, sent } = await inPlan(desk);
    const lame = { leftFore: 0, rightFore: 0, leftHind: 3, rightHind: 0 };
    const saved = await desk.ok('visits/save', {
      ...sent,
      visit: { ...sent.visit, lamenessTrot: lame },
      food: null,
      sessions: days.map((day) => doneOn(day)),
      review: ACCEPTED,
    });
    expect(saved.plan?.review?.decision).toBe('stop');
    expect(saved.plan?.ramp.weeks).toEqual([]);
  });

  test('leaves the plan alone while nothing is decided on it', async () => {
    const desk = await openOwn();
    const { dogId, days, sent } = await inPlan(desk);
    const first = days[0]!;
    await desk.ok('visits/save', { ...sent, food: null, sessions: [doneOn(first)] });
    const file = await desk.ok('dogs/file', { dogId });
    expect(file.plans).toHaveLength(1);
    expect(file.sessions).toHaveLength(1);
  });

  test('keeps the proposed plan and, as the next version, what was changed of it by hand', async () => {
    const desk = await openOwn();
    const { dogId, days, sent } = await inPlan(desk);
    const preview = await inPlanPreview(desk, sent, days);
    const day = preview.ramp.weeks.at(-1)!.sessions.at(-1)!.day;
    const saved = await desk.ok('visits/save', {
      ...sent,
      food: null,
      sessions: days.map((entry) => doneOn(entry)),
      review: { ...ACCEPTED, decision: 'edited', edits: [{ kind: 'remove', day }], note: 'Fair.' },
    });
    expect(saved.plan).toMatchObject({ origin: 'edited', current: true, note: 'Fair.' });
    const { plans } = await desk.ok('dogs/file', { dogId });
    const mine = plans.filter(({ visitId }) => visitId === saved.visit.id);
    expect(mine.map(({ origin }) => origin)).toEqual(['reviewed', 'edited']);
    const daysOf = (index: number) =>
      mine[index]!.ramp.weeks.flatMap(({ sessions }) => sessions.map((session) => session.day));
    expect(daysOf(0)).toContain(day);
    expect(daysOf(1)).not.toContain(day);
  });

  test('keeps one version where nothing was changed by hand, whatever the answer is called', async () => {
    const desk = await openOwn();
    const { dogId, days, sent } = await inPlan(desk);
    const { day } = (await inPlanPreview(desk, sent, days)).ramp.weeks.at(-1)!.sessions.at(-1)!;
    const edits = [{ kind: 'remove' as const, day }];
    for (const review of [
      { ...ACCEPTED, decision: 'edited' as const },
      { ...ACCEPTED, edits },
    ]) {
      const { visit } = await desk.ok('visits/save', { ...sent, food: null, review });
      const { plans } = await desk.ok('dogs/file', { dogId });
      const mine = plans.filter(({ visitId }) => visitId === visit.id);
      expect(mine.map(({ origin }) => origin)).toEqual(['reviewed']);
    }
  });

  test('takes what was run on the day of the visit', async () => {
    const desk = await openOwn();
    const { dogId, sent } = await inPlan(desk);
    await desk.ok('visits/save', { ...sent, food: null, sessions: [doneOn('2026-03-17')] });
    const { sessions } = await desk.ok('dogs/file', { dogId });
    expect(sessions.map(({ day }) => day)).toEqual(['2026-03-17']);
  });
});

/** The plan that a review of these results proposes, from a visit on another desk. */
async function inPlanPreview(
  desk: TestDesk,
  sent: Awaited<ReturnType<typeof inPlan>>['sent'],
  days: readonly string[],
) {
  const { id: dogId } = await dogOf(desk, 'Pat Owner', 'Twin');
  desk.setDay('2026-03-02');
  await seenWithPlan(desk, dogId, '2026-03-02');
  desk.setDay('2026-03-17');
  const saved = await desk.ok('visits/save', {
    ...sent,
    visit: { ...sent.visit, dogId },
    food: null,
    sessions: days.map((day) => doneOn(day)),
    review: ACCEPTED,
  });
  return saved.plan!;
}

describe('a follow-up that is refused', () => {
  /** What must not have changed: nothing of a refused follow-up may stay behind. */
  async function untouched(desk: TestDesk, dogId: string): Promise<void> {
    const file = await desk.ok('dogs/file', { dogId });
    expect(file.sessions).toEqual([]);
    expect(file.visits).toHaveLength(1);
    expect(file.plans).toHaveLength(1);
  }

  test('for a session of a day to come names it, and keeps nothing', async () => {
    const desk = await openOwn();
    const { dogId, days, sent } = await inPlan(desk);
    const error = await desk.refused('visits/save', {
      ...sent,
      food: null,
      sessions: [doneOn(days[0]!), doneOn('2026-04-01')],
      review: ACCEPTED,
    });
    expect(error.fields?.[0]).toMatchObject({
      path: 'sessions.1.day',
      message: 'Day of the session must not lie in the future.',
    });
    await untouched(desk, dogId);
  });

  test('for a day to come names it, and keeps nothing', async () => {
    const desk = await openOwn();
    const { dogId, sent } = await inPlan(desk);
    const error = await desk.refused('visits/save', {
      ...sent,
      visit: { ...sent.visit, day: addDays(sent.visit.day, 365) },
      food: null,
    });
    expect(error.fields?.[0]).toMatchObject({
      path: 'visit.day',
      message: 'Day of the visit must not lie in the future.',
    });
    await untouched(desk, dogId);
  });

  test('for a ration accepted where none is proposed names the decision, and keeps nothing', async () => {
    const desk = await openOwn();
    const { dogId, sent } = await inPlan(desk);
    const error = await desk.refused('visits/save', {
      ...sent,
      visit: { ...sent.visit, bcs: 1 },
      food: { decision: 'accepted', kcalPerDay: null, foodSwitch: null, note: '' },
    });
    expect(error.fields?.[0]).toMatchObject({
      path: 'food.decision',
      message: 'There is no proposed ration to accept: edit it, or decline.',
    });
    await untouched(desk, dogId);
  });

  test('for a broken rule without a reason keeps nothing', async () => {
    const desk = await openOwn();
    const { dogId, days, sent } = await inPlan(desk);
    const { ramp } = await inPlanPreview(desk, sent, days);
    const { number } = ramp.weeks.find(({ startDay }) => startDay > '2026-03-17')!;
    const error = await desk.refused('visits/save', {
      ...sent,
      food: null,
      sessions: days.map((day) => doneOn(day)),
      review: {
        ...ACCEPTED,
        decision: 'edited',
        edits: [{ kind: 'week', number, runMinutes: 500 }],
      },
    });
    expect(error.fields?.[0]?.path).toBe('review.kept');
    await untouched(desk, dogId);
  });

  test('for two plans at once says which to choose', async () => {
    const desk = await openOwn();
    const { dogId, sent } = await inPlan(desk);
    const { plans } = await desk.ok('dogs/file', { dogId });
    const error = await desk.refused('visits/save', {
      ...sent,
      plan: plans[0]!.request,
      food: null,
      review: ACCEPTED,
    });
    expect(error.fields?.[0]?.path).toBe('review.decision');
    await untouched(desk, dogId);
  });

  test('for a review without a plan in force says so', async () => {
    const desk = await openOwn();
    const { id } = await dogOf(desk, 'Dana Owner', 'Rusk');
    const error = await desk.refused('visits/save', {
      id: null,
      visit: soundVisit(id, '2026-03-02'),
      plan: null,
      food: null,
      review: ACCEPTED,
    });
    expect(error.message).toContain('running plan');
    expect((await desk.ok('dogs/file', { dogId: id })).visits).toEqual([]);
  });
});
