import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../../core/index.ts';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankVisit,
} from '../../../electron/contract/records/forms.ts';
import { DUE_PAST_DAYS } from '../../../electron/contract/dogs/due.ts';
import type { VisitFacts } from '../../../electron/contract/records.ts';
import { MOST_LISTED } from '../../../electron/contract/dogs/list.ts';
import { searchText } from '../../../electron/service/dogs/searchText.ts';
import { openOwn, temporaryFolder, testService, type TestDesk } from '../support/desk.ts';
import { ACCEPTED, seenWithPlan, soundVisit, tellAllDone } from '../support/records.ts';

const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };

async function addDog(desk: TestDesk, name: string, owner: object = {}): Promise<string> {
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: `${name} Owner`, ...owner },
    dog: { ...blankDog('female'), name, birthDay: '2021-05-01', adultWeightKg: 24 },
  });
  return dog.id;
}

function see(desk: TestDesk, dogId: string, day: string, change: Partial<VisitFacts> = {}) {
  return desk.ok('visits/save', {
    id: null,
    visit: {
      ...blankVisit(dogId, day),
      weightKg: 30,
      bcs: 5,
      muscle: 'normal',
      lamenessWalk: SOUND,
      lamenessTrot: SOUND,
      signsAsked: true,
      historyAsked: true,
      walkBase: 'passed',
      ...change,
    },
    plan: null,
    food: null,
  });
}

const names = async (desk: TestDesk, input: object): Promise<string[]> =>
  (await desk.ok('dogs/list', { query: '', ...input })).map(({ name }) => name);

describe('the list of dogs', () => {
  test('is ordered by each column, either way, with dogs never seen at the end', async () => {
    const desk = await openOwn();
    const rusk = await addDog(desk, 'Rusk', { name: 'Zoe' });
    const anka = await addDog(desk, 'Anka', { name: 'Mina' });
    await addDog(desk, 'Milo', { name: 'Adam' });
    await see(desk, rusk, '2026-02-01', { weightKg: 31, bcs: 4 });
    await see(desk, anka, '2026-02-20', { weightKg: 12, bcs: 7 });
    expect(await names(desk, {})).toEqual(['Anka', 'Rusk', 'Milo']);
    expect(await names(desk, { descending: false })).toEqual(['Rusk', 'Anka', 'Milo']);
    expect(await names(desk, { order: 'name' })).toEqual(['Anka', 'Milo', 'Rusk']);
    expect(await names(desk, { order: 'name', descending: true })).toEqual([
      'Rusk',
      'Milo',
      'Anka',
    ]);
    expect(await names(desk, { order: 'owner' })).toEqual(['Milo', 'Anka', 'Rusk']);
    expect(await names(desk, { order: 'weight' })).toEqual(['Rusk', 'Anka', 'Milo']);
    expect(await names(desk, { order: 'condition' })).toEqual(['Anka', 'Rusk', 'Milo']);
  });

  test('reaches notes, reason, diagnosis and vet where no name has the words', async () => {
    const desk = await openOwn();
    const rusk = await addDog(desk, 'Rusk', { name: 'Zoe', vetName: 'Dr Fenn' });
    const anka = await addDog(desk, 'Anka', { name: 'Mina' });
    await addDog(desk, 'Cruz', { name: 'Adam' });
    await see(desk, rusk, '2026-02-01', {
      diagnosis: 'Cruciate rupture, left',
      referral: 'Wants to run 5 km.',
    });
    await see(desk, anka, '2026-02-01', { notes: 'Très vive, 100 % sound.' });
    const found = async (query: string) => {
      const { dogs, count, foundIn } = await desk.ok('dogs/find', { query });
      expect(count).toBe(dogs.length);
      return [foundIn, ...dogs.map(({ name }) => name)];
    };
    expect(await found('rupture')).toEqual(['notes', 'Rusk']);
    expect(await found('FENN cruciate')).toEqual(['notes', 'Rusk']);
    expect(await found('tres')).toEqual(['notes', 'Anka']);
    expect(await found('anka sound')).toEqual(['notes', 'Anka']);
    // A short word looks for no note by itself, and stands in no way beside a longer one.
    expect(await found('to')).toEqual(['names']);
    expect(await found('to run 5 km')).toEqual(['notes', 'Rusk']);
    expect(await found('100 % s')).toEqual(['notes', 'Anka']);
    // A name that has the words leads alone.
    expect(await found('cru')).toEqual(['names', 'Cruz']);
    expect(await found('nothing of it')).toEqual(['names']);
    expect(await names(desk, { query: 'rupture', offset: 1 })).toEqual([]);
    await desk.ok('dogs/archive', { id: rusk, archived: true });
    expect(await found('rupture')).toEqual(['names']);
  });

  test('shows and orders by the latest weight, at a visit or between, seen or not', async () => {
    const desk = await openOwn();
    const rusk = await addDog(desk, 'Rusk');
    const anka = await addDog(desk, 'Anka');
    const milo = await addDog(desk, 'Milo');
    await addDog(desk, 'Nele');
    const weigh = (dogId: string, day: string, weightKg: number) =>
      desk.ok('weighings/save', {
        dogId,
        weighing: { day, weightKg, weighingMethod: 'other scale', scaleStepKg: 0.1, note: '' },
      });
    await see(desk, rusk, '2026-02-01', { weightKg: 31 });
    await weigh(rusk, '2026-02-20', 30.5);
    await weigh(rusk, '2026-01-20', 32);
    await see(desk, anka, '2026-02-10', { weightKg: null });
    await see(desk, anka, '2026-01-10', { weightKg: 12 });
    await weigh(milo, '2026-02-01', 20);
    // Of one day that of the visit counts.
    await weigh(anka, '2026-01-10', 13);
    const lines = await desk.ok('dogs/list', { query: '', order: 'weight' });
    expect(
      lines.map(({ name, lastVisitDay, lastWeightKg }) => [name, lastVisitDay, lastWeightKg]),
    ).toEqual([
      ['Rusk', '2026-02-01', 30.5],
      ['Milo', null, 20],
      ['Anka', '2026-02-10', 12],
      ['Nele', null, null],
    ]);
  });

  test('shows the last score that was given, and is ordered by it', async () => {
    const desk = await openOwn();
    for (const [name, first, last] of [
      ['Rusk', 8, null],
      ['Anka', 4, 6],
      ['Milo', null, 7],
    ] as const) {
      const id = await addDog(desk, name);
      await see(desk, id, '2026-01-10', { bcs: first });
      await see(desk, id, '2026-02-10', { bcs: last });
      expect((await desk.ok('dogs/file', { dogId: id })).state!.bcs).toBe(last ?? first);
    }
    const lines = await desk.ok('dogs/list', { query: '', order: 'condition' });
    expect(lines.map(({ name, lastBcs }) => [name, lastBcs])).toEqual([
      ['Rusk', 8],
      ['Milo', 7],
      ['Anka', 6],
    ]);
  });

  test('finds a phone number however it is spaced', async () => {
    const desk = await openOwn();
    await addDog(desk, 'Rusk', { phone: '0151 234-56/78' });
    await addDog(desk, 'Anka', { phone: '0170 111' });
    expect(await names(desk, { query: '0151 23456' })).toEqual(['Rusk']);
    expect(await names(desk, { query: '015123456' })).toEqual(['Rusk']);
    expect(await names(desk, { query: '3456' })).toEqual(['Rusk']);
    expect(await names(desk, { query: '34 56' })).toEqual(['Rusk']);
  });

  test('is narrowed to dogs due, off course, at the end of a plan, or without consent', async () => {
    const desk = await openOwn();
    const consent = {
      given: true,
      vet: 'Dr C. Vet',
      day: '2025-12-01',
      scope: '',
      expiryDay: null,
    };
    const toLose = { foodGoal: 'lose', targetWeightKg: 25, bcs: 7, consent } as const;
    const off = await addDog(desk, 'Offa');
    await see(desk, off, '2026-01-05', toLose);
    await see(desk, off, '2026-02-20', { ...toLose, weightKg: 30.5 });
    const ended = await addDog(desk, 'Enda');
    await desk.ok('visits/save', {
      id: null,
      visit: { ...soundVisit(ended, '2026-02-28'), weightKg: 20, bcs: 5, foodGoal: 'hold' },
      plan: {
        ...blankPlanRequest('2026-03-02', 'conditioned'),
        goal: { continuousMinutes: 5 },
      },
      food: null,
    });
    const fresh = await addDog(desk, 'Frea');
    await see(desk, fresh, '2026-03-01', { consent: { ...consent, expiryDay: '2026-03-01' } });
    const filtered = (...filters: string[]) => names(desk, { filters });

    expect(await filtered('off course')).toEqual(['Offa']);
    expect(await filtered('consent missing')).toEqual(['Frea', 'Enda']);
    expect(await filtered('plan ended')).toEqual([]);
    expect(await filtered('due for follow-up')).toEqual([]);
    desk.setDay('2026-06-01');
    // Nothing was told of its outings: on every page the plan waits, and so here.
    expect(await filtered('plan ended')).toEqual([]);
    expect(await filtered('stopped')).toEqual(['Enda']);
    expect((await filtered('due for follow-up')).sort()).toEqual(['Enda', 'Frea', 'Offa']);
    expect(await filtered('stopped', 'consent missing')).toEqual(['Enda']);
    const { planEndsOn, programme } = (await desk.ok('dogs/file', { dogId: ended })).state!;
    expect(programme).toMatchObject({ kind: 'waiting', for: 'outings' });
    await tellAllDone(desk, ended, addDays(planEndsOn!, 3));
    expect(await filtered('stopped')).toEqual([]);
    expect(await filtered('plan ended')).toEqual(['Enda']);
    expect((await desk.ok('dogs/find', { query: '', filters: ['consent missing'] })).count).toBe(2);
  });

  test('holds no dog whose weighing is overdue for longer than the due list says', async () => {
    const desk = await openOwn();
    const id = await addDog(desk, 'Rusk');
    await see(desk, id, '2026-03-01', {});
    const { weighDay } = (await desk.ok('dogs/file', { dogId: id })).state!;
    const due = () => names(desk, { filters: ['due for follow-up'] });
    desk.setDay(addDays(weighDay!, DUE_PAST_DAYS));
    expect(await due()).toEqual(['Rusk']);
    desk.setDay(addDays(weighDay!, DUE_PAST_DAYS + 1));
    expect(await due()).toEqual([]);
  });

  test('is narrowed to dogs that gain, those meant to left out, and to those that were stopped', async () => {
    const desk = await openOwn();
    // Under 1 % over more than 14 days is stable (German et al. 2011; S).
    for (const [name, secondKg, foodGoal] of [
      ['Up', 30.3, 'hold'],
      ['Steady', 30.2, 'hold'],
      ['Meant', 32, 'gain'],
    ] as const) {
      const id = await addDog(desk, name);
      await see(desk, id, '2026-01-05', { foodGoal, weightKg: 30 });
      await see(desk, id, '2026-01-20', { foodGoal, weightKg: secondKg });
    }
    expect(await names(desk, { filters: ['gaining'] })).toEqual(['Up']);

    const halt = await addDog(desk, 'Halt');
    await seenWithPlan(desk, halt, '2026-03-02');
    expect(await names(desk, { filters: ['stopped'] })).toEqual([]);
    desk.setDay('2026-03-17');
    const lame = { leftFore: 3, rightFore: 0, leftHind: 0, rightHind: 0 };
    await desk.ok('visits/save', {
      id: null,
      visit: { ...soundVisit(halt, '2026-03-17'), kind: 'follow-up', lamenessWalk: lame },
      plan: null,
      food: null,
      review: ACCEPTED,
    });
    expect(await names(desk, { filters: ['stopped'] })).toEqual(['Halt']);
  });

  test('tells all dogs of one owner, archived ones too', async () => {
    const desk = await openOwn();
    const id = await addDog(desk, 'Rusk');
    const { clientId } = (await desk.ok('dogs/file', { dogId: id })).dog;
    await desk.ok('dogs/save', {
      id: null,
      dog: { ...blankDog('female'), clientId, name: 'Anka', birthDay: '2021-05-01' },
    });
    await addDog(desk, 'Milo');
    await desk.ok('dogs/archive', { id, archived: true });
    const dogs = await desk.ok('dogs/ofOwner', { clientId });
    expect(dogs.map(({ name, archivedAt }) => [name, archivedAt !== null])).toEqual([
      ['Anka', false],
      ['Rusk', true],
    ]);
  });

  test('refuses an order and a filter it does not know', async () => {
    const desk = await openOwn();
    const order = await desk.refused('dogs/list', { query: '', order: 'phone' });
    expect(order.message).toContain('Order of the list must be one of: last visit, name');
    const filter = await desk.refused('dogs/list', { query: '', filters: ['late'] });
    expect(filter.message).toContain('Filter must be one of: due for follow-up');
  });
});

describe('dogs whose weight has left its course', () => {
  test('are listed with the latest weighing and the reason, while they are still seen', async () => {
    const desk = await openOwn();
    const toLose = { foodGoal: 'lose', targetWeightKg: 25, bcs: 7 } as const;
    const slow = await addDog(desk, 'Slow');
    await see(desk, slow, '2026-01-05', toLose);
    await see(desk, slow, '2026-02-20', { ...toLose, weightKg: 30.5 });
    const well = await addDog(desk, 'Well');
    await see(desk, well, '2026-01-05', toLose);
    await see(desk, well, '2026-02-20', { ...toLose, weightKg: 28 });
    const [line, ...others] = await desk.ok('dogs/offCourse', {});
    expect(others).toEqual([]);
    expect(line).toMatchObject({ dogId: slow, day: '2026-02-20', weightKg: 30.5 });
    expect(line!.reason.code).toBe('above-corridor');
    desk.setDay(addDays('2026-02-20', 91));
    expect(await desk.ok('dogs/offCourse', {})).toEqual([]);
  });
});

describe('twenty thousand dogs', () => {
  test('are found by any word, counted, and read page by page without a gap', async () => {
    const folder = temporaryFolder();
    const first = await openOwn(folder);
    await addDog(first, 'Brückner');
    await first.service.close();
    fill(join(folder, 'trotwell.sqlite'), 20_000);
    const desk = testService(folder);
    expect((await desk.ok('dogs/find', { query: '' })).count).toBe(20_001);
    expect(await names(desk, { query: 'BRUCK' })).toEqual(['Brückner']);
    expect(await names(desk, { query: 'dog 19999' })).toEqual(['Dog 19999']);
    expect((await desk.ok('dogs/find', { query: 'ellert' })).count).toBe(20_000);

    // The beginning comes with the count, in the same order as page by page.
    const order = { query: 'dog', order: 'name', descending: true } as const;
    const { dogs, count } = await desk.ok('dogs/find', order);
    expect([dogs.length, count]).toEqual([MOST_LISTED, 20_000]);
    expect(dogs).toEqual(await desk.ok('dogs/list', { ...order, offset: 0 }));

    const some = { query: '99', order: 'owner' } as const;
    const { count: matching } = await desk.ok('dogs/find', some);
    expect(matching).toBeGreaterThan(500);
    const seen = new Set<string>();
    for (let offset = 0; offset < matching; offset += MOST_LISTED) {
      const page = await desk.ok('dogs/list', { ...some, offset });
      page.forEach(({ id }) => seen.add(id));
    }
    expect(seen.size).toBe(matching);
  }, 60_000);
});

/** Dogs straight into the file: saving each as a practitioner would takes minutes. */
function fill(file: string, count: number): void {
  const db = new BetterSqlite3(file);
  const columns = (table: string): string[] =>
    (db.pragma(`table_info(${table})`) as { name: string }[]).map(({ name }) => name);
  const copy = (table: string, changes: Record<string, string>) => {
    const names = columns(table);
    const values = names.map((name) => (name in changes ? `@${name}` : name));
    return db.prepare(
      `INSERT INTO ${table} (${names.join()}) SELECT ${values.join()} FROM ${table} LIMIT 1`,
    );
  };
  const client = copy('client', { id: '', name: '', search_text: '' });
  const dog = copy('dog', { id: '', client_id: '', name: '', search_text: '' });
  const uuid = (kind: number, n: number) =>
    `00000000-0000-4000-8${kind}00-${String(n).padStart(12, '0')}`;
  db.transaction(() => {
    for (let n = 0; n < count; n += 1) {
      const name = `Ellért ${n}`;
      client.run({ id: uuid(1, n), name, search_text: searchText(name) });
      const called = `Dog ${n}`;
      const search_text = searchText(called, '');
      dog.run({ id: uuid(2, n), client_id: uuid(1, n), name: called, search_text });
    }
  })();
  db.close();
}
