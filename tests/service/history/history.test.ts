import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankVisit,
} from '../../../electron/contract/records/forms.ts';
import {
  clientFactsOf,
  dogFactsOf,
  visitFactsOf,
} from '../../../electron/contract/records/facts.ts';
import type { SessionInput, VisitFacts } from '../../../electron/contract/records.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';

const DRY = {
  name: 'Dry food',
  treat: false,
  kcalPer100g: 360,
  gramsPerDay: 240,
  gramsPerCup: null,
  fixedGrams: false,
  energyFrom: 'declared',
  label: null,
} as const;

async function withVisit(desk: TestDesk) {
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Dana Owner' },
    dog: { ...blankDog('female'), name: 'Rusk', birthDay: '2021-05-01' },
  });
  const facts: VisitFacts = { ...blankVisit(dog.id, '2026-03-02'), weightKg: 30, diet: [DRY] };
  const { visit } = await desk.ok('visits/save', {
    id: null,
    visit: facts,
    plan: null,
    food: null,
  });
  return { dog, visit, facts };
}

const amended = (
  id: string,
  visit: VisitFacts,
  basedOn: number | null | undefined,
  reason?: string,
) => ({
  id,
  visit,
  basedOn,
  plan: null,
  food: null,
  ...(reason === undefined ? {} : { reason }),
});

const historyOf = (desk: TestDesk, recordId: string) =>
  desk.ok('history/list', { kind: 'visit', recordId });

/** A second connection to the file, as no handler uses it. */
function rawOf(desk: TestDesk): BetterSqlite3.Database {
  return new BetterSqlite3(join(desk.folder, 'trotwell.sqlite'));
}

describe('amending a visit', () => {
  test('keeps what it was, why, and counts the revision', async () => {
    const desk = await openOwn();
    const { dog, visit, facts } = await withVisit(desk);
    expect(visit.revision).toBe(1);
    desk.setDay('2026-03-05');
    const changed = { ...facts, weightKg: 29.4, diet: [{ ...DRY, gramsPerDay: 220 }] };
    const saved = await desk.ok('visits/save', amended(visit.id, changed, 1, 'Read 30 for 29.4.'));
    expect(saved.visit).toMatchObject({ weightKg: 29.4, revision: 2, createdAt: visit.createdAt });
    expect(visitFactsOf((await desk.ok('dogs/file', { dogId: dog.id })).visits[0]!)).toEqual(
      changed,
    );

    expect(await historyOf(desk, visit.id)).toEqual([
      {
        id: 1,
        recordId: visit.id,
        at: expect.stringMatching(/^2026-03-05T/),
        author: '',
        action: 'amended',
        reason: 'Read 30 for 29.4.',
        revision: 1,
        changes: [
          { path: 'weightKg', label: 'Body weight', measure: 'kg', before: 30, after: 29.4 },
          {
            path: 'diet.Dry food.gramsPerDay',
            label: 'Dry food, amount',
            measure: 'g a day',
            before: 240,
            after: 220,
          },
        ],
      },
    ]);
    const raw = rawOf(desk);
    const kept = raw.prepare('SELECT before FROM history').pluck().get() as string;
    raw.close();
    expect(JSON.parse(kept)).toEqual(facts);
  });

  test('lists the steps oldest first, each against the next', async () => {
    const desk = await openOwn();
    const { visit, facts } = await withVisit(desk);
    for (const [index, weightKg] of [29, 28, 27].entries()) {
      await desk.ok(
        'visits/save',
        amended(visit.id, { ...facts, weightKg }, index + 1, `Step ${index + 1}`),
      );
    }
    const steps = (await historyOf(desk, visit.id)).map(({ reason, changes }) => [
      reason,
      changes[0]?.before,
      changes[0]?.after,
    ]);
    expect(steps).toEqual([
      ['Step 1', 30, 29],
      ['Step 2', 29, 28],
      ['Step 3', 28, 27],
    ]);
  });

  test('is refused without a reason, and nothing is written', async () => {
    const desk = await openOwn();
    const { dog, visit, facts } = await withVisit(desk);
    for (const reason of [undefined, '', '  \u0007 ']) {
      const error = await desk.refused(
        'visits/save',
        amended(visit.id, { ...facts, weightKg: 29 }, 1, reason),
      );
      expect(error).toMatchObject({ kind: 'input', fields: [{ path: 'reason' }] });
    }
    expect((await desk.ok('dogs/file', { dogId: dog.id })).visits).toEqual([visit]);
    expect(await historyOf(desk, visit.id)).toEqual([]);
  });

  test('writes nothing where nothing changed, and needs no reason then', async () => {
    const desk = await openOwn();
    const { visit, facts } = await withVisit(desk);
    desk.setDay('2026-03-09');
    const saved = await desk.ok('visits/save', amended(visit.id, facts, 1));
    expect(saved.visit).toEqual(visit);
    expect(await historyOf(desk, visit.id)).toEqual([]);
  });

  test('leaves the plan made then as it was', async () => {
    const desk = await openOwn();
    const { dog, visit, facts } = await withVisit(desk);
    const plan = { ...blankPlanRequest('2026-03-04', 'unconditioned') };
    const sent = { ...amended(visit.id, facts, 1), plan };
    const first = await desk.ok('visits/save', sent);
    await desk.ok('visits/save', amended(visit.id, { ...facts, bcs: 7 }, 1, 'Score left out.'));
    expect((await desk.ok('dogs/file', { dogId: dog.id })).plans).toEqual([first.plan]);
  });
});

describe('two writers', () => {
  test('the second is told, and nothing of it is written', async () => {
    const desk = await openOwn();
    const { dog, visit, facts } = await withVisit(desk);
    await desk.ok('visits/save', amended(visit.id, { ...facts, weightKg: 29 }, 1, 'First'));
    const second = amended(visit.id, { ...facts, weightKg: 31 }, 1, 'Second');
    const error = await desk.refused('visits/save', second);
    expect(error.kind).toBe('conflict');
    expect(error.message).toMatch(/was changed after you opened it.*Nothing of yours was saved/);
    expect((await desk.ok('dogs/file', { dogId: dog.id })).visits[0]!.weightKg).toBe(29);
    expect(await historyOf(desk, visit.id)).toHaveLength(1);

    await desk.ok('visits/save', { ...second, basedOn: 2 });
    expect((await historyOf(desk, visit.id)).map(({ reason }) => reason)).toEqual([
      'First',
      'Second',
    ]);
  });

  test('a save that names no revision is refused', async () => {
    const desk = await openOwn();
    const { dog, visit, facts } = await withVisit(desk);
    for (const basedOn of [undefined, null]) {
      const error = await desk.refused('visits/save', amended(visit.id, facts, basedOn));
      expect(error).toMatchObject({ kind: 'input', fields: [{ path: 'basedOn' }] });
    }
    const error = await desk.refused('dogs/save', { id: dog.id, dog: dogFactsOf(dog) });
    expect(error).toMatchObject({ kind: 'input', fields: [{ path: 'basedOn' }] });
  });

  test('on a dog and its owner: neither is written when one of the two has changed', async () => {
    const desk = await openOwn();
    const { dog } = await withVisit(desk);
    const { client: owner } = await desk.ok('dogs/file', { dogId: dog.id });
    const { clientId: _owner, ...facts } = dogFactsOf(dog);
    const client = clientFactsOf(owner);
    await desk.ok('dogs/save', {
      id: dog.id,
      basedOn: 1,
      dog: { ...dogFactsOf(dog), breed: 'Pointer cross' },
    });
    const sent = {
      id: dog.id,
      dog: { ...facts, breed: 'Lurcher' },
      dogBasedOn: 1,
      client: { ...client, phone: '000 999' },
      clientBasedOn: 1,
      reason: '',
    };
    expect((await desk.refused('dogs/amendWithOwner', sent)).kind).toBe('conflict');
    const stored = await desk.ok('dogs/file', { dogId: dog.id });
    expect(stored.client).toEqual(owner);
    expect(stored.dog.breed).toBe('Pointer cross');

    await desk.ok('dogs/amendWithOwner', { ...sent, dogBasedOn: 2 });
    const ofOwner = await desk.ok('history/list', { kind: 'client', recordId: owner.id });
    expect(ofOwner.map(({ changes }) => changes[0]?.after)).toEqual(['000 999']);
    const ofDog = await desk.ok('history/list', { kind: 'dog', recordId: dog.id });
    expect(ofDog.map(({ changes }) => changes[0]?.after)).toEqual(['Pointer cross', 'Lurcher']);
  });
});

describe('all or nothing', () => {
  test('a write that fails in the middle leaves visit and history as they were', async () => {
    const desk = await openOwn();
    const { dog, visit, facts } = await withVisit(desk);
    const raw = rawOf(desk);
    // The foods are written after the history, the visit's row and its other parts.
    raw.exec(`CREATE TRIGGER broken BEFORE INSERT ON diet_item
      BEGIN SELECT RAISE(ABORT, 'the disk is full'); END`);
    const sent = amended(visit.id, { ...facts, weightKg: 29, signs: ['cough'] }, 1, 'Mistyped');
    expect((await desk.refused('visits/save', sent)).kind).not.toBe('input');
    expect((await desk.ok('dogs/file', { dogId: dog.id })).visits).toEqual([visit]);
    expect(await historyOf(desk, visit.id)).toEqual([]);

    raw.exec('DROP TRIGGER broken');
    raw.close();
    expect((await desk.ok('visits/save', sent)).visit.revision).toBe(2);
  });
});

describe('history', () => {
  test('is never altered', async () => {
    const desk = await openOwn();
    const { visit, facts } = await withVisit(desk);
    await desk.ok('visits/save', amended(visit.id, { ...facts, weightKg: 29 }, 1, 'Mistyped'));
    const raw = rawOf(desk);
    for (const column of ['reason', 'author', 'before', 'at', 'revision']) {
      const alter = raw.prepare(`UPDATE history SET ${column} = ${column}`);
      expect(() => alter.run()).toThrow('history is never altered');
    }
    raw.close();
    expect((await historyOf(desk, visit.id))[0]?.reason).toBe('Mistyped');
  });

  test('of an unknown record is empty', async () => {
    const desk = await openOwn();
    expect(await historyOf(desk, '00000000-0000-4000-8000-000000000000')).toEqual([]);
  });
});

describe('session results', () => {
  const DONE: SessionInput = {
    day: '2026-03-01',
    outcome: 'done',
    runMinutes: null,
    longestRunMinutes: null,
    runKm: null,
    climbedM: null,
    nextDay: null,
    signs: [],
    note: '',
  };

  test('are kept when replaced and when removed, and come back under the same id', async () => {
    const desk = await openOwn();
    const { dog } = await withVisit(desk);
    const save = (session: SessionInput) => desk.ok('sessions/save', { dogId: dog.id, session });
    const first = await save(DONE);
    await save(DONE);
    await save({ ...DONE, outcome: 'shortened', runMinutes: 4 });
    await desk.ok('sessions/drop', { dogId: dog.id, day: DONE.day });
    await desk.ok('sessions/drop', { dogId: dog.id, day: DONE.day });
    expect((await desk.ok('dogs/file', { dogId: dog.id })).sessions).toEqual([]);
    expect((await save(DONE)).id).toBe(first.id);

    const entries = await desk.ok('history/list', { kind: 'session', recordId: first.id });
    expect(
      entries.map(({ action, changes }) => [
        action,
        ...changes.map(({ path, before, after }) => `${path}: ${before} > ${after}`),
      ]),
    ).toEqual([
      ['amended', 'outcome: done > shortened', 'runMinutes: null > 4'],
      ['removed', 'day: 2026-03-01 > null', 'outcome: shortened > null', 'runMinutes: 4 > null'],
      ['restored', 'day: null > 2026-03-01', 'outcome: null > done'],
    ]);
  });
});
