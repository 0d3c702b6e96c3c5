import { Readable } from 'node:stream';
import { describe, expect, test } from 'vitest';
import { blankClient, blankDog, blankVisit } from '../../../electron/contract/records/forms.ts';
import type { SessionInput } from '../../../electron/contract/records.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';

const session = (changes: Partial<SessionInput> = {}): SessionInput => ({
  day: '2026-02-20',
  outcome: 'shortened',
  runMinutes: 8,
  longestRunMinutes: null,
  runKm: null,
  climbedM: null,
  nextDay: null,
  signs: [],
  note: '',
  ...changes,
});

async function openDog(desk: TestDesk, name: string): Promise<string> {
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: `Owner of ${name}` },
    dog: { ...blankDog('female'), name, birthDay: '2022-04-01' },
  });
  return dog.id;
}

describe('the history of a dog’s sessions', () => {
  test('tells each change with day, reason and what it was, latest first, removed ones too', async () => {
    const desk = await openOwn();
    const dogId = await openDog(desk, 'Bess');
    const other = await openDog(desk, 'Rex');
    await desk.ok('sessions/save', { dogId, session: session() });
    await desk.ok('sessions/save', { dogId: other, session: session() });
    await desk.ok('sessions/save', { dogId: other, session: session({ runMinutes: 9 }) });
    expect(await desk.ok('history/ofDog', { dogId, kind: 'session' })).toEqual([]);
    await desk.ok('sessions/save', {
      dogId,
      session: session({ outcome: 'done', runMinutes: 12 }),
      reason: 'The owner looked at the watch.',
    });
    await desk.ok('sessions/save', { dogId, session: session({ day: '2026-02-22' }) });
    await desk.ok('sessions/drop', { dogId, day: '2026-02-22' });
    const entries = await desk.ok('history/ofDog', { dogId, kind: 'session' });
    expect(entries).toMatchObject([
      { action: 'removed', day: '2026-02-22', gone: true, reason: '' },
      {
        action: 'amended',
        day: '2026-02-20',
        gone: false,
        reason: 'The owner looked at the watch.',
      },
    ]);
    expect(entries[1]!.changes.map(({ label, before, after }) => [label, before, after])).toEqual([
      ['Outcome', 'shortened', 'done'],
      ['Time run', 8, 12],
    ]);
  });

  test('one that was told again after being removed is there, and says so', async () => {
    const desk = await openOwn();
    const dogId = await openDog(desk, 'Bess');
    await desk.ok('sessions/save', { dogId, session: session() });
    await desk.ok('sessions/drop', { dogId, day: '2026-02-20' });
    await desk.ok('sessions/save', { dogId, session: session({ outcome: 'done' }) });
    const entries = await desk.ok('history/ofDog', { dogId, kind: 'session' });
    expect(entries.map(({ action, day, gone }) => [action, day, gone])).toEqual([
      ['restored', '2026-02-20', false],
      ['removed', '2026-02-20', false],
    ]);
  });

  test('is not told of a dog in the bin', async () => {
    const desk = await openOwn();
    const dogId = await openDog(desk, 'Bess');
    await desk.ok('bin/put', { kind: 'dog', id: dogId });
    expect(await desk.refused('history/ofDog', { dogId, kind: 'session' })).toMatchObject({
      kind: 'not-found',
    });
  });
});

describe('the history of a dog’s weighings', () => {
  test('tells the day before of one that was moved, and which are gone', async () => {
    const desk = await openOwn();
    const dogId = await openDog(desk, 'Bess');
    const weighing = {
      day: '2026-02-09',
      weightKg: 24,
      weighingMethod: 'same scale',
      scaleStepKg: 0.1,
      note: '',
    } as const;
    const { id } = await desk.ok('weighings/save', { dogId, weighing });
    await desk.ok('weighings/amend', {
      id,
      basedOn: 1,
      reason: 'Wrong day.',
      weighing: { ...weighing, day: '2026-02-10' },
    });
    await desk.ok('weighings/drop', { id });
    const entries = await desk.ok('history/ofDog', { dogId, kind: 'weighing' });
    expect(entries.map(({ action, day, gone, recordId }) => [action, day, gone, recordId])).toEqual(
      [
        ['removed', '2026-02-10', true, id],
        ['amended', '2026-02-09', false, id],
      ],
    );
    await desk.ok('weighings/restore', { id });
    const [latest] = await desk.ok('history/ofDog', { dogId, kind: 'weighing' });
    expect(latest).toMatchObject({ action: 'restored', day: '2026-02-10', gone: false });
  });
});

test('the history of a dog’s files names file and visit', async () => {
  const desk = await openOwn();
  const dogId = await openDog(desk, 'Bess');
  const { visit } = await desk.ok('visits/save', {
    id: null,
    visit: blankVisit(dogId, '2026-03-02'),
    plan: null,
    food: null,
  });
  const taken = await desk.service.takeIn(
    'letter.pdf',
    Readable.from([Buffer.from('%PDF-1.7\n%%EOF\n')]),
    1e6,
  );
  if (!taken.ok) expect.fail(taken.error.message);
  const { id } = await desk.ok('attachments/add', {
    visitId: visit.id,
    token: taken.value.token,
    kind: 'letter of the vet',
    name: 'letter.pdf',
    thumbnail: null,
  });
  await desk.ok('bin/put', { kind: 'attachment', id, reason: 'Of another dog.' });
  expect(await desk.ok('history/ofDog', { dogId, kind: 'attachment' })).toMatchObject([
    {
      action: 'binned',
      name: 'letter.pdf',
      visitId: visit.id,
      reason: 'Of another dog.',
      gone: true,
    },
  ]);
});
