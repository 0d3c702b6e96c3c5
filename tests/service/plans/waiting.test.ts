import { describe, expect, test } from 'vitest';
import { plannedSessions } from '../../../core/index.ts';
import { blankPlanRequest, blankPractice } from '../../../electron/contract/records/forms.ts';
import type { PlanAnswer } from '../../../electron/contract/plans/answer.ts';
import type { HandoutKind, SessionInput, VisitFacts } from '../../../electron/contract/records.ts';
import { readPdf } from '../../templates/support/readPdf.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { ACCEPTED, dogOf, doneOn, soundVisit } from '../support/records.ts';

// A plan drawn up at an intake that says "vet first" or "walking only": the owner got no outings on
// paper, so the follow-up asks for none and counts none as missed.

const INTAKE = '2026-03-02';
const LATER = '2026-03-20';

/** A dog with a plan from an intake that found `facts`. */
async function taken(facts: Partial<VisitFacts>) {
  const desk = await openOwn();
  const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
  desk.setDay(INTAKE);
  const { plan } = await desk.ok('visits/save', {
    id: null,
    visit: { ...soundVisit(dogId, INTAKE), ...facts },
    plan: { ...blankPlanRequest(INTAKE, 'unconditioned'), goal: { continuousMinutes: 20 } },
    food: null,
  });
  desk.setDay(LATER);
  const file = () => desk.ok('dogs/file', { dogId });
  const due = plannedSessions([plan!]).filter(({ day }) => day < LATER);
  const follow = (sessions: readonly SessionInput[], review: PlanAnswer | null = ACCEPTED) =>
    desk.ok('visits/save', {
      id: null,
      visit: soundVisit(dogId, LATER),
      plan: null,
      food: null,
      sessions: [...sessions],
      review,
    });
  return { desk, dogId, due, file, follow };
}

/** The words of a sheet, printed by a practice that has a name. */
async function printed(desk: TestDesk, dogId: string, kind: HandoutKind): Promise<string> {
  await desk.ok('practice/save', { ...blankPractice(), name: 'Practice of the test' });
  const { base64 } = await desk.ok('handouts/render', { dogId, kind, paper: null });
  return (await readPdf(Buffer.from(base64, 'base64'))).text.replaceAll(/\s+/g, ' ');
}

const WAITING: readonly (readonly [string, Partial<VisitFacts>])[] = [
  ['vet first', { signs: ['cough'] }],
  ['walking only', { walkBase: 'failed' }],
];

describe.each(WAITING)('while the screening says %s', (_, facts) => {
  test('no outing of the plan is asked for, and none is untold', async () => {
    const { desk, dogId, due, file } = await taken(facts);
    expect(due.length).toBeGreaterThan(5);
    const { state } = await file();
    expect(state!.soFar).toMatchObject({ planned: 0, missed: 0, untold: 0 });
    expect(await desk.refused('runs/table', { dogId })).toMatchObject({ kind: 'input' });
  });

  test('the follow-up that lifts it begins the plan with its first week, and names no session', async () => {
    const { desk, dogId, due, file, follow } = await taken(facts);
    const { plan } = await follow([]);
    expect(plan!.review!.reasons.map(({ code }) => code)).toEqual(['review-not-begun']);
    expect(plan!.ramp.weeks[0]!.number).toBe(1);
    const { state } = await file();
    expect(state!.outings).toMatchObject({ planned: 0, untold: 0 });
    expect(state!.unasked).toEqual(due.map(({ day }) => day));
    expect(state!.programme.kind).toBe('running');
    const text = await printed(desk, dogId, 'progress-report');
    expect(text).toContain('Begin with the first week of the plan.');
    expect(text).not.toMatch(/once more|0 of 0|begins? again/);
  });

  test('what was run all the same counts, and what was called missed does not', async () => {
    const { due, file, follow } = await taken(facts);
    const [first, second] = due.slice(-2).map(({ day }) => day);
    await follow([
      doneOn(first!, { outcome: 'missed', nextDay: null }),
      doneOn(second!, { runMinutes: 9 }),
    ]);
    const { state, plans } = await file();
    expect(state!.outings).toMatchObject({ planned: 1, done: 1, missed: 0 });
    const codes = plans.at(-1)!.review!.reasons.map(({ code }) => code);
    expect(codes).not.toContain('review-missed');
    expect(codes).not.toContain('review-not-told');
    const { request, weeks } = plans.at(-1)!.ramp;
    expect(request.resume!.lastRunDay).toBe(second);
    // The one run does not carry the dog over the weeks that were not run.
    expect(weeks[0]!.runMinutes).toBeLessThanOrEqual(plans[0]!.ramp.weeks[0]!.runMinutes);
  });

  test('the record of the visit says that the plan waits, and speaks to nobody', async () => {
    const { desk, dogId } = await taken(facts);
    const text = await printed(desk, dogId, 'assessment-record');
    expect(text).toContain('Plan: version 1, drawn up but not in force: ');
    expect(text).not.toContain('weeks from');
    expect(text).not.toMatch(/\byou have seen\b/);
  });

  test('a plan left as it is asks from the follow-up on', async () => {
    const { desk, due, file, follow } = await taken(facts);
    await follow([], null);
    desk.setDay('2026-03-30');
    const { state } = await file();
    expect(state!.soFar!.untold).toBeGreaterThan(0);
    expect(state!.unasked).toEqual(expect.arrayContaining(due.map(({ day }) => day)));
  });
});

test('a plan in force asks for each of its outings', async () => {
  const { due, file } = await taken({});
  const { state } = await file();
  expect(state!.unasked).toEqual([]);
  expect(state!.soFar).toMatchObject({ planned: due.length, untold: due.length });
});
