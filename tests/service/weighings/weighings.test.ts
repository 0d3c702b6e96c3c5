import { describe, expect, test } from 'vitest';
import { blankClient, blankDog, blankVisit } from '../../../electron/contract/records/forms.ts';
import type { WeighingInput } from '../../../electron/contract/weighings/weighing.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';

const NOBODY = '00000000-0000-4000-8000-000000000000';

function weighing(changes: Partial<WeighingInput> = {}): WeighingInput {
  return {
    day: '2026-03-09',
    weightKg: 23.8,
    weighingMethod: 'other scale',
    scaleStepKg: 0.2,
    note: 'At the vet.',
    ...changes,
  };
}

async function seenDog(desk: TestDesk) {
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Zoë Example' },
    dog: { ...blankDog('female'), name: 'Bess', birthDay: '2022-04-01' },
  });
  const visit = { ...blankVisit(dog.id, '2026-03-02'), weightKg: 24.3, bcs: 6 };
  await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
  desk.setDay('2026-03-30');
  return dog;
}

describe('weighings between visits', () => {
  test('stand in the file, oldest first, and count in the assessment', async () => {
    const desk = await openOwn();
    const { id: dogId } = await seenDog(desk);
    await desk.ok('weighings/save', { dogId, weighing: weighing({ day: '2026-03-16' }) });
    const saved = await desk.ok('weighings/save', {
      dogId,
      weighing: weighing({ weightKg: 24 }),
    });
    expect(saved).toMatchObject({ dogId, origin: 'typed', weightKg: 24, author: '' });
    const file = await desk.ok('dogs/file', { dogId });
    expect(file.weighings.map(({ day }) => day)).toEqual(['2026-03-09', '2026-03-16']);
    expect(file.assessment!.weightKg).toBe(23.8);
    expect(file.assessment!.trend.points).toHaveLength(3);
  });

  test('move the day the next one is due', async () => {
    const desk = await openOwn();
    const { id: dogId } = await seenDog(desk);
    const dueOn = async () =>
      (await desk.ok('dogs/due', {})).find(({ reason }) => reason === 'weigh')?.day;
    const before = await dueOn();
    await desk.ok('weighings/save', { dogId, weighing: weighing({ day: '2026-03-04' }) });
    const after = await dueOn();
    expect(before).toBe('2026-03-30');
    expect(after).toBe('2026-04-01');
  });

  test.each([
    ['in the future', { day: '2026-03-31' }, 'weighing.day', 'future'],
    ['before birth', { day: '2022-03-31' }, 'weighing.day', 'day of birth (2022-04-01)'],
    [
      'too light',
      { weightKg: 0.05 },
      'weighing.weightKg',
      'Body weight must be from 0.1 to 150 kg',
    ],
    ['too coarse a scale', { scaleStepKg: 6 }, 'weighing.scaleStepKg', 'from 0.001 to 5 kg'],
    ['already at a visit', { day: '2026-03-02', weightKg: 24.3 }, 'weighing.weightKg', 'already'],
    ['the same reading', { day: '2026-03-02', weightKg: 24.3004 }, 'weighing.weightKg', 'already'],
  ])('%s: says so beside the field', async (_name, changes, path, words) => {
    const desk = await openOwn();
    const { id: dogId } = await seenDog(desk);
    const input = { dogId, weighing: weighing(changes) };
    const error = await desk.refused('weighings/save', input);
    expect(error.fields).toMatchObject([{ path, message: expect.stringContaining(words) }]);
    expect((await desk.ok('dogs/file', { dogId })).weighings).toEqual([]);
  });

  test('a second of the same day and weight is noticed, another weight is not one', async () => {
    const desk = await openOwn();
    const { id: dogId } = await seenDog(desk);
    await desk.ok('weighings/save', { dogId, weighing: weighing() });
    await desk.refused('weighings/save', { dogId, weighing: weighing({ note: 'again' }) });
    await desk.ok('weighings/save', { dogId, weighing: weighing({ weightKg: 23.9 }) });
    expect((await desk.ok('dogs/file', { dogId })).weighings).toHaveLength(2);
  });

  test('dropped, kept in the history, and brought back as it was', async () => {
    const desk = await openOwn();
    const { id: dogId } = await seenDog(desk);
    const saved = await desk.ok('weighings/save', { dogId, weighing: weighing() });
    await desk.ok('weighings/drop', { id: saved.id });
    expect((await desk.ok('dogs/file', { dogId })).weighings).toEqual([]);
    expect(await desk.ok('weighings/restore', { id: saved.id })).toEqual(saved);
    expect((await desk.ok('dogs/file', { dogId })).weighings).toEqual([saved]);
    const history = await desk.ok('history/list', { kind: 'weighing', recordId: saved.id });
    expect(history.map(({ action }) => action)).toEqual(['removed', 'restored']);
  });

  test('one that is there or never was is not brought back; neither is one typed again since', async () => {
    const desk = await openOwn();
    const { id: dogId } = await seenDog(desk);
    const saved = await desk.ok('weighings/save', { dogId, weighing: weighing() });
    expect(await desk.refused('weighings/restore', { id: saved.id })).toMatchObject({
      kind: 'not-found',
    });
    expect(await desk.refused('weighings/drop', { id: NOBODY })).toMatchObject({
      kind: 'not-found',
    });
    await desk.ok('weighings/drop', { id: saved.id });
    await desk.ok('weighings/save', { dogId, weighing: weighing() });
    expect(await desk.refused('weighings/restore', { id: saved.id })).toMatchObject({
      kind: 'input',
    });
  });
});

describe('a weighing that was saved', () => {
  async function savedWeighing() {
    const desk = await openOwn();
    const { id: dogId } = await seenDog(desk);
    const saved = await desk.ok('weighings/save', { dogId, weighing: weighing() });
    const amend = (changes: Partial<WeighingInput>, basedOn: number, reason = 'Misread.') => ({
      id: saved.id,
      basedOn,
      reason,
      weighing: weighing(changes),
    });
    return { desk, dogId, saved, amend };
  }

  test('is amended with a reason; the history tells what it was, and by whom', async () => {
    const { desk, dogId, saved, amend } = await savedWeighing();
    await desk.ok('practitioners/save', {
      id: null,
      practitioner: { name: 'Ana Example', initials: 'AE', active: true },
    });
    const { practitioners } = await desk.ok('practitioners/list', {});
    await desk.ok('practitioners/atDesk', { practitionerId: practitioners[0]!.id });
    const amended = await desk.ok(
      'weighings/amend',
      amend({ day: '2026-03-10', weightKg: 28.3, weighingMethod: 'wet coat' }, 1),
    );
    expect(amended).toMatchObject({
      id: saved.id,
      dogId,
      weightKg: 28.3,
      revision: 2,
      origin: 'typed',
    });
    expect((await desk.ok('dogs/file', { dogId })).weighings).toEqual([amended]);
    const [entry, ...more] = await desk.ok('history/list', {
      kind: 'weighing',
      recordId: saved.id,
    });
    expect(more).toEqual([]);
    expect(entry).toMatchObject({
      action: 'amended',
      author: 'AE',
      reason: 'Misread.',
      revision: 1,
    });
    expect(entry!.changes.map(({ label, before, after }) => [label, before, after])).toEqual([
      ['Day of the weighing', '2026-03-09', '2026-03-10'],
      ['Body weight', 23.8, 28.3],
      ['How weighed', 'other scale', 'wet coat'],
    ]);
  });

  test('changed by somebody else since it was opened: a conflict, and nothing is kept', async () => {
    const { desk, dogId, amend } = await savedWeighing();
    await desk.ok('weighings/amend', amend({ weightKg: 23.9 }, 1));
    const error = await desk.refused('weighings/amend', amend({ weightKg: 25 }, 1));
    expect(error).toMatchObject({ kind: 'conflict' });
    expect(error.message).toContain('The weighing was changed after you opened it');
    const [kept] = (await desk.ok('dogs/file', { dogId })).weighings;
    expect(kept).toMatchObject({ weightKg: 23.9, revision: 2 });
    expect(await desk.ok('weighings/amend', amend({ weightKg: 25 }, 2))).toMatchObject({
      weightKg: 25,
      revision: 3,
    });
  });

  test('nothing changed: nothing is kept, and no reason is asked for', async () => {
    const { desk, saved, amend } = await savedWeighing();
    expect(await desk.ok('weighings/amend', amend({}, 1, ''))).toEqual(saved);
    expect(await desk.ok('history/list', { kind: 'weighing', recordId: saved.id })).toEqual([]);
  });

  test.each([
    [
      'without a reason',
      { weightKg: 25 },
      ' \u200b',
      'reason',
      'Reason for the amendment is needed',
    ],
    ['in the future', { day: '2026-03-31' }, 'x', 'weighing.day', 'future'],
    ['as at the visit', { day: '2026-03-02', weightKg: 24.3 }, 'x', 'weighing.weightKg', 'already'],
  ])('%s: refused beside the field', async (_name, changes, reason, path, words) => {
    const { desk, dogId, saved, amend } = await savedWeighing();
    const error = await desk.refused('weighings/amend', amend(changes, 1, reason));
    expect(error.fields).toMatchObject([{ path, message: expect.stringContaining(words) }]);
    expect((await desk.ok('dogs/file', { dogId })).weighings).toEqual([saved]);
  });

  test('is no double of itself: its note alone can be changed', async () => {
    const { desk, amend } = await savedWeighing();
    expect(await desk.ok('weighings/amend', amend({ note: 'After the walk.' }, 1))).toMatchObject({
      note: 'After the walk.',
    });
  });

  test('amended, dropped and brought back is as it was amended', async () => {
    const { desk, dogId, saved, amend } = await savedWeighing();
    const amended = await desk.ok('weighings/amend', amend({ weightKg: 25 }, 1));
    await desk.ok('weighings/drop', { id: saved.id });
    expect(await desk.refused('weighings/amend', amend({ weightKg: 26 }, 2))).toMatchObject({
      kind: 'not-found',
    });
    expect(await desk.ok('weighings/restore', { id: saved.id })).toEqual(amended);
    expect((await desk.ok('dogs/file', { dogId })).weighings).toEqual([amended]);
  });
});

test('a weighing that was put right, and never dropped, cannot be brought back', async () => {
  const desk = await openOwn();
  const { id: dogId } = await seenDog(desk);
  const { id, revision } = await desk.ok('weighings/save', { dogId, weighing: weighing() });
  const right = weighing({ weightKg: 23.1 });
  const reason = 'Misread.';
  await desk.ok('weighings/amend', { id, basedOn: revision, reason, weighing: right });
  expect((await desk.refused('weighings/restore', { id })).kind).toBe('not-found');
  const { weighings } = await desk.ok('dogs/file', { dogId });
  expect(weighings.map(({ weightKg }) => weightKg)).toEqual([23.1]);
});
