import { describe, expect, test } from 'vitest';
import { blankClient, blankDog, blankVisit } from '../../../electron/contract/records/forms.ts';
import { dogFactsOf } from '../../../electron/contract/records/facts.ts';
import type { VisitFacts } from '../../../electron/contract/records.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';

async function withVisit(desk: TestDesk, name: string) {
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Dana Owner' },
    dog: { ...blankDog('female'), name, birthDay: '2021-05-01' },
  });
  const facts: VisitFacts = { ...blankVisit(dog.id, '2026-03-02'), weightKg: 30 };
  const kept = { visit: facts, plan: null, food: null };
  const { visit } = await desk.ok('visits/save', { id: null, ...kept });
  const amend = (weightKg: number, basedOn: number, reason: string) =>
    desk.ok('visits/save', {
      ...kept,
      id: visit.id,
      visit: { ...facts, weightKg },
      basedOn,
      reason,
    });
  return { dog, visit, amend };
}

const deedsOf = (desk: TestDesk, dogId: string) => desk.ok('dogs/deeds', { dogId });

describe('what was done to the records of a dog', () => {
  test('is nothing while all stands as it was first saved', async () => {
    const desk = await openOwn();
    const { dog } = await withVisit(desk, 'Rusk');
    expect(await deedsOf(desk, dog.id)).toEqual([]);
  });

  test('is told latest first, with author, reason and the day of the record as it was', async () => {
    const desk = await openOwn();
    const { dog, visit, amend } = await withVisit(desk, 'Rusk');
    desk.setDay('2026-03-05');
    await amend(29.4, 1, 'Read 30 for 29.4.');
    await desk.ok('dogs/save', {
      id: dog.id,
      basedOn: dog.revision,
      dog: { ...dogFactsOf(dog), breed: 'Mixed' },
    });
    const deeds = await deedsOf(desk, dog.id);
    expect(deeds.map(({ kind, action, reason, day }) => [kind, action, reason, day])).toEqual([
      ['dog', 'amended', '', null],
      ['visit', 'amended', 'Read 30 for 29.4.', '2026-03-02'],
    ]);
    expect(deeds[1]).toMatchObject({
      recordId: visit.id,
      visitId: visit.id,
      at: expect.stringMatching(/^2026-03-05T/),
      gone: false,
    });
  });

  test('says of every deed on a record whether it is out of the file now', async () => {
    const desk = await openOwn();
    const { dog, visit, amend } = await withVisit(desk, 'Rusk');
    await amend(29.4, 1, 'Read 30 for 29.4.');
    const gone = async () => (await deedsOf(desk, dog.id)).map((deed) => [deed.action, deed.gone]);
    await desk.ok('bin/put', { kind: 'visit', id: visit.id, reason: 'Wrong dog' });
    expect(await gone()).toEqual([
      ['binned', true],
      ['amended', true],
    ]);
    await desk.ok('bin/restore', { kind: 'visit', id: visit.id });
    expect(await gone()).toEqual([
      ['restored', false],
      ['binned', false],
      ['amended', false],
    ]);
    const [restored] = await deedsOf(desk, dog.id);
    expect(restored).toMatchObject({ day: '2026-03-02', visitId: visit.id });
  });

  test('are the dog’s own, and none of a dog that is not there', async () => {
    const desk = await openOwn();
    const one = await withVisit(desk, 'Rusk');
    const other = await withVisit(desk, 'Moss');
    await one.amend(29.4, 1, 'Read 30 for 29.4.');
    expect(await deedsOf(desk, one.dog.id)).toHaveLength(1);
    expect(await deedsOf(desk, other.dog.id)).toEqual([]);
    await desk.refused('dogs/deeds', { dogId: one.visit.id });
    await desk.ok('bin/put', { kind: 'dog', id: one.dog.id });
    await desk.refused('dogs/deeds', { dogId: one.dog.id });
  });
});
