import { existsSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankPractice,
  blankVisit,
} from '../../../electron/contract/records/forms.ts';
import type { VisitFacts } from '../../../electron/contract/records.ts';
import { openOwn, temporaryFolder, testService, type TestDesk } from '../support/desk.ts';

const DOG = { ...blankDog('female'), name: 'Bess', breed: 'Pointer cross', birthDay: '2022-04-01' };
const OWNER = { ...blankClient(), name: 'Zoë Müller', phone: '000 123' };
const NOBODY = '00000000-0000-4000-8000-000000000000';

async function withDog(desk: TestDesk) {
  return desk.ok('dogs/saveWithOwner', { client: OWNER, dog: DOG });
}

function fullVisit(dogId: string): VisitFacts {
  return {
    ...blankVisit(dogId, '2026-03-02'),
    weightKg: 24.3,
    bcs: 6,
    muscle: 'mild loss',
    lamenessWalk: { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: null },
    lamenessTrot: { leftFore: 0, rightFore: 1, leftHind: 0, rightHind: 0 },
    gaitNote: 'Short on the right fore at trot.',
    measurements: [
      {
        kind: 'joint angle',
        limb: 'leftHind',
        joint: 'stifle',
        movement: 'flexion',
        value: 45,
        note: '',
      },
      { kind: 'thigh girth', limb: 'leftHind', value: 33.5, note: 'mid thigh, standing, clipped' },
      { kind: 'standing weight', limb: 'rightHind', value: 4.8, note: '' },
    ],
    footfalls: [{ limb: 'leftFore', touchDowns: [0, 0.62], liftOffs: [0.35, 0.96] }],
    signs: ['cough'],
    airwayDisease: true,
    airwayClearance: true,
    overrides: [{ code: 'lameness-trot', reason: 'Seen by the vet today.' }],
    consent: {
      given: true,
      vet: 'Dr Example',
      day: '2026-02-20',
      scope: 'Conditioning',
      expiryDay: '2027-02-20',
    },
    targetWeightKg: 22.5,
    diet: [
      {
        name: 'Dry food',
        treat: false,
        kcalPer100g: 360,
        gramsPerDay: 240.5,
        gramsPerCup: 92,
        fixedGrams: true,
        energyFrom: 'label',
        label: { proteinPct: 26, fatPct: 15, fibrePct: 3, moisturePct: 9, ashPct: 7 },
      },
    ],
    notes: 'Line one\nline two',
  };
}

describe('first run', () => {
  test('no practice is open, and records are refused until one is', async () => {
    const desk = testService();
    const status = await desk.ok('app/status', {});
    expect(status).toMatchObject({
      open: null,
      ownExists: false,
      practice: null,
      today: '2026-03-02',
    });
    expect((await desk.refused('dogs/list', { query: '' })).kind).toBe('no-practice');
    expect(existsSync(join(desk.folder, 'trotwell.sqlite'))).toBe(false);
  });

  test('an own practice opens by itself the next time', async () => {
    const desk = await openOwn();
    await desk.ok('practice/save', { ...blankPractice(), name: 'Mine' });
    await desk.service.close();
    const again = testService(desk.folder);
    await again.ok('dogs/list', { query: '' });
    expect((await again.ok('app/status', {})).practice?.name).toBe('Mine');
  });
});

describe('the file', () => {
  test('is WAL with full synchronisation, foreign keys and our application id', async () => {
    const desk = await openOwn();
    await withDog(desk);
    const db = new BetterSqlite3(join(desk.folder, 'trotwell.sqlite'), { readonly: true });
    expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
    expect(db.pragma('application_id', { simple: true })).toBe(0x54524f54);
    expect(db.pragma('user_version', { simple: true })).toBeGreaterThan(0);
    const loose = db
      .prepare(
        "SELECT name FROM pragma_table_list WHERE strict = 0 AND type = 'table' AND name NOT LIKE 'sqlite%'",
      )
      .pluck()
      .all();
    db.close();
    expect(loose).toEqual([]);
  });

  test('leaves no write-ahead log behind when closed', async () => {
    const desk = await openOwn();
    await withDog(desk);
    await desk.service.close();
    expect(existsSync(join(desk.folder, 'trotwell.sqlite-wal'))).toBe(false);
  });
});

test('a practice that is opened again holds its file once, and lets it go', async () => {
  const folder = temporaryFolder();
  await (await openOwn(folder)).service.close();
  const again = await openOwn(folder);
  await again.service.close();
  // SQLite removes the log when the last one closes the file.
  expect(existsSync(join(folder, 'trotwell.sqlite-wal'))).toBe(false);
});

describe('owners and dogs', () => {
  test('a dog and its new owner are kept together', async () => {
    const desk = await openOwn();
    const dog = await withDog(desk);
    const file = await desk.ok('dogs/file', { dogId: dog.id });
    expect(file.client.name).toBe('Zoë Müller');
    expect(file.dog).toEqual(dog);
    expect(file.visits).toEqual([]);
    expect(file.assessment).toBeNull();
  });

  test('neither is kept when one is refused', async () => {
    const desk = await openOwn();
    const error = await desk.refused('dogs/saveWithOwner', {
      client: OWNER,
      dog: { ...DOG, birthDay: '2026-03-03' },
    });
    expect(error.fields?.[0]).toMatchObject({ path: 'dog.birthDay' });
    expect(await desk.ok('clients/list', { query: '' })).toEqual([]);
  });

  test.each(['muller', 'ZOE', 'bess', 'pointer 123', 'mül'])('are found by "%s"', async (query) => {
    const desk = await openOwn();
    await withDog(desk);
    expect(await desk.ok('dogs/list', { query })).toHaveLength(1);
  });

  test.each(['%', '_', 'x', 'bess x'])('are not found by "%s"', async (query) => {
    const desk = await openOwn();
    await withDog(desk);
    expect(await desk.ok('dogs/list', { query })).toEqual([]);
  });

  test('a change is kept; an unknown id is refused', async () => {
    const desk = await openOwn();
    const { id, createdAt: _c, updatedAt: _u, revision, ...dog } = await withDog(desk);
    const changed = await desk.ok('dogs/save', {
      id,
      basedOn: revision,
      dog: { ...dog, withersCm: 58 },
    });
    expect(changed).toMatchObject({ withersCm: 58, revision: revision + 1 });
    expect((await desk.refused('dogs/save', { id: NOBODY, basedOn: 1, dog })).kind).toBe(
      'not-found',
    );
  });
});

describe('visits', () => {
  test('are read back exactly as they were saved', async () => {
    const desk = await openOwn();
    const dog = await withDog(desk);
    const facts = fullVisit(dog.id);
    const saved = await desk.ok('visits/save', { id: null, visit: facts, plan: null, food: null });
    const file = await desk.ok('dogs/file', { dogId: dog.id });
    expect(file.visits).toEqual([saved.visit]);
    expect(saved.visit).toMatchObject(facts);
  });

  test('show in the list of dogs with the latest weight and score', async () => {
    const desk = await openOwn();
    const dog = await withDog(desk);
    const facts = fullVisit(dog.id);
    await desk.ok('visits/save', { id: null, visit: facts, plan: null, food: null });
    await desk.ok('visits/save', {
      id: null,
      visit: { ...facts, kind: 'follow-up', day: '2026-02-01', weightKg: 25 },
      plan: null,
      food: null,
    });
    const [line] = await desk.ok('dogs/list', { query: '' });
    expect(line).toMatchObject({ lastVisitDay: '2026-03-02', lastWeightKg: 24.3, lastBcs: 6 });
  });

  test('refuse a value out of range with field, unit and range', async () => {
    const desk = await openOwn();
    const dog = await withDog(desk);
    const error = await desk.refused('visits/save', {
      id: null,
      visit: { ...fullVisit(dog.id), weightKg: 1500 },
      plan: null,
      food: null,
    });
    expect(error.kind).toBe('input');
    expect(error.fields).toEqual([
      {
        path: 'visit.weightKg',
        message: 'Body weight must be from 0.1 to 150 kg.',
        said: 'Body weight must be from {0.1 to 150 kg}.',
      },
    ]);
  });

  test('of a dog that is not there are refused', async () => {
    const desk = await openOwn();
    const error = await desk.refused('visits/save', {
      id: null,
      visit: fullVisit(NOBODY),
      plan: null,
      food: null,
    });
    expect(error.kind).toBe('not-found');
  });

  test('are kept whole or not at all when the plan asked with them is impossible', async () => {
    const desk = await openOwn();
    const dog = await withDog(desk);
    const error = await desk.refused('visits/save', {
      id: null,
      visit: fullVisit(dog.id),
      plan: {
        ...blankPlanRequest('2026-03-04', 'conditioned'),
        eventDay: '2026-03-01',
      },
      food: null,
    });
    expect(error.kind).toBe('input');
    expect((await desk.ok('dogs/file', { dogId: dog.id })).visits).toEqual([]);
  });
});

describe('drafts', () => {
  test('survive a restart and are dropped on request', async () => {
    const desk = await openOwn();
    await desk.ok('drafts/put', { key: 'visit:new', json: '{"weight":"28,4"}' });
    await desk.service.close();
    const again = testService(desk.folder);
    expect((await again.ok('drafts/get', { key: 'visit:new' }))?.json).toBe('{"weight":"28,4"}');
    await again.ok('drafts/drop', { key: 'visit:new' });
    expect(await again.ok('drafts/get', { key: 'visit:new' })).toBeNull();
  });
});
