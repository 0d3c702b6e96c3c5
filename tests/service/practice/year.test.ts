import { describe, expect, test } from 'vitest';
import { addDays } from '../../../core/index.ts';
import type { SessionInput } from '../../../electron/contract/records.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { dogOf, doneOn, seenWithPlan, soundVisit } from '../support/records.ts';

const TODAY = '2026-09-01';

/** A dog seen on `day` with a plan of which `told` says the outcome of each outing. */
async function withPlan(
  desk: TestDesk,
  name: string,
  day: string,
  told: (index: number, of: number) => Partial<SessionInput> | null,
) {
  desk.setDay(day);
  const { id: dogId } = await dogOf(desk, `${name} Owner`, name);
  const { plan } = await seenWithPlan(desk, dogId, day);
  const days = plan!.ramp.weeks.flatMap(({ sessions }) => sessions.map((session) => session.day));
  desk.setDay(TODAY);
  for (const [index, sessionDay] of days.entries()) {
    const more = told(index, days.length);
    if (more === null || sessionDay > TODAY) continue;
    await desk.ok('sessions/save', {
      dogId,
      session: doneOn(sessionDay, more),
    });
  }
  return { dogId, days, goal: plan!.ramp.goalReachedOn! };
}

/** Four dogs: one at its goal, one stopped, one never heard of again, one only being weighed. */
async function practice() {
  const desk = await openOwn();
  const done = await withPlan(desk, 'Rusk', '2026-01-12', () => ({}));
  const lame = await withPlan(desk, 'Anka', '2026-02-02', (index) =>
    index > 3 ? null : index === 3 ? { signs: ['lameness'] } : {},
  );
  const gone = await withPlan(desk, 'Milo', '2026-03-02', (index) => (index > 1 ? null : {}));
  const { id: slow } = await dogOf(desk, 'Nele Owner', 'Nele');
  for (const [index, weightKg] of [30, 29.9, 29.9, 29.8].entries()) {
    const day = addDays('2026-05-04', index * 28);
    desk.setDay(day);
    const visit = { ...soundVisit(slow, day), weightKg, targetWeightKg: 25 };
    await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
  }
  desk.setDay(TODAY);
  return { desk, done, lame, gone, slow };
}

describe('the practice’s year', () => {
  test('counts what the records of its dogs come to, month by month', async () => {
    const { desk, done, lame, gone, slow } = await practice();
    const { fromDay, toDay, year, dogs, years } = await desk.ok('practice/year', { year: null });
    expect([fromDay, toDay, years]).toEqual(['2025-10-01', TODAY, [2026]]);
    expect(dogs.map(({ name }) => name)).toEqual(['Anka', 'Milo', 'Nele', 'Rusk']);
    const month = (day: string) =>
      year.months.find((entry) => entry.day === `${day.slice(0, 7)}-01`)!;
    expect(month(done.days[0]!).started).toEqual([done.dogId]);
    expect(month(done.goal).reached).toEqual([done.dogId]);
    expect(month(lame.days[3]!).stopped).toEqual([lame.dogId]);
    expect(month(gone.days[1]!).lost).toEqual([gone.dogId]);
    const of = (outcome: string) =>
      year.outcomes.find((entry) => entry.outcome === outcome)!.dogIds;
    expect(of('reached')).toEqual([done.dogId]);
    expect(of('stopped')).toEqual([lame.dogId]);
    expect(of('lost')).toEqual([gone.dogId]);
    expect(year.stops).toEqual([{ cause: 'On an outing: lameness', dogIds: [lame.dogId] }]);
    expect(year.times[0]!.takenDays).toBe(year.times[0]!.plannedDays);
    expect(year.losses).toMatchObject([{ dogId: slow, against: 'slower' }]);
    // 0.2 kg of 30 kg in 12 weeks, by hand: about 0.05 % a week.
    expect(year.losses[0]!.percentPerWeek).toBeCloseTo(0.05, 1);
  });

  test('reads a calendar year, and leaves out what lies before and after', async () => {
    const { desk } = await practice();
    const before = await desk.ok('practice/year', { year: 2025 });
    expect(before.year.begun).toBe(0);
    expect(before.toDay).toBe('2025-12-31');
    const now = await desk.ok('practice/year', { year: 2026 });
    expect(now).toMatchObject({ fromDay: '2026-01-01', toDay: TODAY });
    expect(now.year.months).toHaveLength(9);
    expect(now.year.begun).toBe(3);
  });

  test('takes a dog in the archive as let go, and one in the bin not at all', async () => {
    const { desk, done, gone, lame } = await practice();
    await desk.ok('dogs/archive', { id: gone.dogId, archived: true });
    await desk.ok('bin/put', { kind: 'dog', id: lame.dogId, reason: 'Entered twice.' });
    const { year, dogs } = await desk.ok('practice/year', { year: null });
    expect(dogs.map(({ name }) => name)).toEqual(['Milo', 'Nele', 'Rusk']);
    // Rusk met its goal, but was never weighed again with weight still to lose.
    expect(year.months.flatMap(({ lost }) => lost)).toEqual([done.dogId]);
    expect(year.stops).toEqual([]);
  });

  test('refuses a year that is none', async () => {
    const desk = await openOwn();
    expect(await desk.refused('practice/year', { year: 2026.5 })).toMatchObject({ kind: 'input' });
    expect(await desk.refused('practice/year', { year: 12 })).toMatchObject({ kind: 'input' });
  });
});
