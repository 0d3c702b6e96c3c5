import { expect, test } from 'vitest';
import { addDays, plannedSessions } from '../../../core/index.ts';
import { blankVisit } from '../../../electron/contract/records/forms.ts';
import { openOwn } from '../support/desk.ts';
import { ACCEPTED, dogOf, seenWithPlan, soundVisit, tellAllDone } from '../support/records.ts';

// After an illness 48 h of normal appetite and energy, then half the load: our own choice (D).
test('an illness told at a visit halves the plan, from two days after the dog was well', async () => {
  const desk = await openOwn();
  const { id: dogId } = await dogOf(desk, 'Dana Owner', 'Rusk');
  await seenWithPlan(desk, dogId, '2026-03-02');
  await tellAllDone(desk, dogId, '2026-04-13');
  const { visits, state } = await desk.ok('dogs/file', { dogId });
  const before = state!.programme.kind === 'running' ? state!.programme.week!.runMinutes : 0;
  const facts = { ...soundVisit(dogId, '2026-04-13'), wellSince: '2026-04-12' };
  const { visit, plan } = await desk.ok('visits/save', {
    id: null,
    visit: facts,
    plan: null,
    review: ACCEPTED,
    food: null,
  });
  expect(plan!.review!.reasons.map(({ code }) => code)).toContain('review-illness');
  const first = plannedSessions([plan!]).find(({ day }) => day >= '2026-04-13')!;
  expect(first.day >= addDays('2026-04-12', 2)).toBe(true);
  const week = plan!.ramp.weeks.find(({ sessions }) => sessions.length === 3)!;
  expect(week.runMinutes).toBeLessThan(before);
  expect(visit.wellSince).toBe('2026-04-12');
  // It belongs to its visit: the next one asks anew.
  expect(blankVisit(dogId, '2026-05-01', visit, null).wellSince).toBeNull();
  expect(visits).toHaveLength(1);
});
