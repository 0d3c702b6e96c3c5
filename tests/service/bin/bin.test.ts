import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blankVisit } from '../../../electron/contract/records/forms.ts';
import type { BinKind } from '../../../electron/contract/keeping/bin.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { dogOf, seenWithPlan, soundVisit } from '../support/records.ts';
import { holdsAsync } from '../../support/laws.ts';

const TODAY = '2026-03-02';
const EMPTYING = { ground: 'entered by mistake', insideRetentionConfirmed: true } as const;

const names = async (desk: TestDesk): Promise<string[]> =>
  (await desk.ok('dogs/list', { query: '' })).map(({ name }) => name).sort();

/** Reads the file of records beside the open service. */
function rows(desk: TestDesk, statement: string): Record<string, unknown>[] {
  const db = new BetterSqlite3(join(desk.folder, 'trotwell.sqlite'), { readonly: true });
  try {
    return db.prepare(statement).all() as Record<string, unknown>[];
  } finally {
    db.close();
  }
}

describe('a visit in the bin', () => {
  test('takes its plan and its food decision out of sight, and none is in force', async () => {
    const desk = await openOwn();
    const dog = await dogOf(desk, 'Ada Owner', 'Bess');
    const first = await seenWithPlan(desk, dog.id, '2026-02-02');
    const second = await seenWithPlan(desk, dog.id, '2026-03-01');
    const check = await desk.ok('bin/check', { kind: 'visit', id: second.visit.id });
    expect(check).toMatchObject({ visits: 1, plans: 1, foodDecisions: 1, files: 0 });
    expect(check).toMatchObject({ endsPlan: true, endsFood: true });

    await desk.ok('bin/put', { kind: 'visit', id: second.visit.id, reason: 'Wrong dog' });
    const file = await desk.ok('dogs/file', { dogId: dog.id });
    expect(file.visits.map(({ id }) => id)).toEqual([first.visit.id]);
    expect(file.plans.map(({ version, current }) => [version, current])).toEqual([[1, false]]);
    expect(file.foodDecisions.map(({ visitId }) => visitId)).toEqual([first.visit.id]);
    const review = { dogId: dog.id, visitId: null, clearedByVetOn: null, note: '' };
    expect((await desk.refused('plans/review', review)).kind).toBe('not-found');
    expect(await desk.refused('bin/check', { kind: 'visit', id: second.visit.id })).toMatchObject({
      kind: 'not-found',
    });
  });

  test('leaves the due list as it was before the visit', async () => {
    const desk = await openOwn();
    const dog = await dogOf(desk, 'Ada Owner', 'Bess');
    await desk.ok('visits/save', {
      id: null,
      visit: soundVisit(dog.id, '2026-02-01'),
      plan: null,
      food: null,
    });
    const before = await desk.ok('dogs/due', {});
    const { visit } = await seenWithPlan(desk, dog.id, '2026-02-20');
    desk.setDay('2026-06-20');
    const later = await desk.ok('dogs/due', {});
    expect(later.some(({ reason }) => reason === 'plan on hold')).toBe(true);
    await desk.ok('bin/put', { kind: 'visit', id: visit.id });
    const gone = await desk.ok('dogs/due', {});
    expect(gone.some(({ reason }) => reason === 'plan on hold')).toBe(false);
    desk.setDay(TODAY);
    expect(await desk.ok('dogs/due', {})).toEqual(before);
  });

  test('brings its plan back in force when none was made since', async () => {
    const desk = await openOwn();
    const dog = await dogOf(desk, 'Ada Owner', 'Bess');
    await seenWithPlan(desk, dog.id, '2026-02-02');
    const { visit, plan } = await seenWithPlan(desk, dog.id, '2026-03-01');
    await desk.ok('bin/put', { kind: 'visit', id: visit.id });
    await desk.ok('bin/restore', { kind: 'visit', id: visit.id });
    const file = await desk.ok('dogs/file', { dogId: dog.id });
    expect(file.plans.find(({ current }) => current)?.id).toBe(plan!.id);
  });

  test('does not when another was made since', async () => {
    const desk = await openOwn();
    const dog = await dogOf(desk, 'Ada Owner', 'Bess');
    const { visit } = await seenWithPlan(desk, dog.id, '2026-02-02');
    await desk.ok('bin/put', { kind: 'visit', id: visit.id });
    const later = await seenWithPlan(desk, dog.id, '2026-03-01');
    await desk.ok('bin/restore', { kind: 'visit', id: visit.id });
    const { plans } = await desk.ok('dogs/file', { dogId: dog.id });
    expect(plans.map(({ version }) => version)).toEqual([1, 2]);
    expect(plans.find(({ current }) => current)?.id).toBe(later.plan!.id);
  });

  test('cannot be amended, and its draft is not listed', async () => {
    const desk = await openOwn();
    const dog = await dogOf(desk, 'Ada Owner', 'Bess');
    const { visit } = await seenWithPlan(desk, dog.id, TODAY);
    await desk.ok('drafts/put', { key: `visit:${dog.id}:${visit.id}`, json: '{}' });
    expect(await desk.ok('drafts/list', {})).toHaveLength(1);
    await desk.ok('bin/put', { kind: 'visit', id: visit.id });
    expect(await desk.ok('drafts/list', {})).toEqual([]);
    const refused = await desk.refused('visits/save', {
      id: visit.id,
      basedOn: 1,
      reason: 'Late',
      visit: soundVisit(dog.id, TODAY),
      plan: null,
      food: null,
    });
    expect(refused.kind).toBe('not-found');
  });
});

describe('a dog or an owner in the bin', () => {
  test('is left out of every list and cannot be opened or written to', async () => {
    const desk = await openOwn();
    const bess = await dogOf(desk, 'Ada Owner', 'Bess');
    const rusk = await dogOf(desk, 'Ben Keeper', 'Rusk');
    for (const dog of [bess, rusk]) await seenWithPlan(desk, dog.id, '2026-02-02');
    await desk.ok('drafts/put', { key: `visit:${bess.id}:new`, json: '{}' });
    await desk.ok('bin/put', { kind: 'client', id: bess.clientId });

    expect(await names(desk)).toEqual(['Rusk']);
    expect((await desk.ok('dogs/find', { query: '' })).count).toBe(1);
    expect((await desk.ok('clients/list', { query: '' })).map(({ name }) => name)).toEqual([
      'Ben Keeper',
    ]);
    desk.setDay('2026-04-02');
    for (const name of ['dogs/due', 'dogs/offCourse'] as const) {
      expect((await desk.ok(name, {})).map(({ dogId }) => dogId)).not.toContain(bess.id);
    }
    desk.setDay(TODAY);
    expect(await desk.ok('drafts/list', {})).toEqual([]);
    const { id: _id, ...facts } = bess;
    const writes = [
      ['dogs/file', { dogId: bess.id }],
      ['dogs/save', { id: bess.id, basedOn: 1, reason: 'x', dog: facts }],
      ['visits/save', { id: null, visit: blankVisit(bess.id, TODAY), plan: null, food: null }],
      ['plans/review', { dogId: bess.id, visitId: null, clearedByVetOn: null, note: '' }],
      ['handouts/render', { kind: 'vet-letter', dogId: bess.id, paper: null }],
      ['dogs/archive', { id: bess.id, archived: true }],
    ] as const;
    for (const [name, input] of writes) {
      expect([name, (await desk.refused(name, stripped(name, input))).kind]).toEqual([
        name,
        'not-found',
      ]);
    }
  });

  test('comes back whole', async () => {
    const desk = await openOwn();
    const dog = await dogOf(desk, 'Ada Owner', 'Bess');
    await seenWithPlan(desk, dog.id, '2026-02-02');
    const before = await desk.ok('dogs/file', { dogId: dog.id });
    await desk.ok('bin/put', { kind: 'dog', id: dog.id });
    await desk.ok('bin/restore', { kind: 'dog', id: dog.id });
    expect(await desk.ok('dogs/file', { dogId: dog.id })).toEqual(before);
  });

  test('keeps what lies in it: the outer one is restored first', async () => {
    const desk = await openOwn();
    const dog = await dogOf(desk, 'Ada Owner', 'Bess');
    await desk.ok('bin/put', { kind: 'dog', id: dog.id });
    await desk.ok('bin/put', { kind: 'client', id: dog.clientId });
    const lines = await desk.ok('bin/list', {});
    expect(lines.map(({ kind, inside }) => [kind, inside])).toEqual(
      expect.arrayContaining([
        ['client', null],
        ['dog', 'client'],
      ]),
    );
    const refused = await desk.refused('bin/restore', { kind: 'dog', id: dog.id });
    expect(refused.kind).toBe('conflict');
    await desk.ok('bin/restore', { kind: 'client', id: dog.clientId });
    await desk.ok('bin/restore', { kind: 'dog', id: dog.id });
    expect(await names(desk)).toEqual(['Bess']);
  });

  test('leaves in the history what it was, who moved it and why', async () => {
    const desk = await openOwn();
    const dog = await dogOf(desk, 'Ada Owner', 'Bess');
    await desk.ok('bin/put', { kind: 'dog', id: dog.id, reason: 'Entered twice' });
    await desk.ok('bin/restore', { kind: 'dog', id: dog.id });
    const kept = rows(desk, 'SELECT action, reason, revision, before FROM history ORDER BY id');
    expect(kept.map(({ action, reason }) => [action, reason])).toEqual([
      ['binned', 'Entered twice'],
      ['restored', ''],
    ]);
    expect(JSON.parse(kept[0]!['before'] as string)).toMatchObject({
      name: 'Bess',
      birthDay: '2021-05-01',
      clientId: dog.clientId,
    });
    const listed = await desk.ok('history/list', { kind: 'dog', recordId: dog.id });
    expect(listed.map(({ action }) => action)).toEqual(['binned', 'restored']);
  });
});

/** A dog's file holds more than its form; the save takes the form only. */
function stripped(name: string, input: object): object {
  if (name !== 'dogs/save') return input;
  const sent = input as { dog: Record<string, unknown> };
  const { createdAt: _c, updatedAt: _u, revision: _r, archivedAt: _a, ...dog } = sent.dog;
  return { ...sent, dog };
}

describe('emptying', () => {
  test('needs the confirmation while the retention period runs, and says until when', async () => {
    const desk = await openOwn();
    const dog = await dogOf(desk, 'Ada Owner', 'Bess');
    const { visit } = await seenWithPlan(desk, dog.id, TODAY);
    await desk.ok('bin/put', { kind: 'visit', id: visit.id });
    const [line] = await desk.ok('bin/list', {});
    expect(line).toMatchObject({
      title: TODAY,
      dogName: 'Bess',
      insideRetention: true,
      keepUntil: '2036-03-02',
      plans: 1,
      foodDecisions: 1,
    });
    const entries = [{ kind: 'visit' as const, id: visit.id }];
    const refused = await desk.refused('bin/empty', {
      entries,
      ground: 'entered by mistake',
      insideRetentionConfirmed: false,
    });
    expect(refused.fields?.[0]?.path).toBe('insideRetentionConfirmed');
    expect(await desk.ok('bin/list', {})).toHaveLength(1);
    desk.setDay('2036-03-02');
    expect((await desk.ok('bin/list', {}))[0]!.insideRetention).toBe(true);
    desk.setDay('2036-03-03');
    expect((await desk.ok('bin/list', {}))[0]!.insideRetention).toBe(false);
    await desk.ok('bin/empty', {
      entries,
      ground: 'retention period over',
      insideRetentionConfirmed: false,
    });
    expect(await desk.ok('bin/list', {})).toEqual([]);
  });

  test('removes the chosen entries with all that belongs to them, and nothing else', async () => {
    const desk = await openOwn();
    const bess = await dogOf(desk, 'Ada Owner', 'Bess');
    const rusk = await dogOf(desk, 'Ben Keeper', 'Rusk');
    for (const dog of [bess, rusk]) {
      await seenWithPlan(desk, dog.id, '2026-02-02');
      await desk.ok('drafts/put', { key: `visit:${dog.id}:new`, json: '{}' });
    }
    await desk.ok('bin/put', { kind: 'dog', id: bess.id });
    await desk.ok('bin/put', { kind: 'dog', id: rusk.id });
    const before = rows(desk, `SELECT * FROM visit WHERE dog_id = '${rusk.id}'`);
    const emptied = await desk.ok('bin/empty', {
      entries: [{ kind: 'dog', id: bess.id }],
      ...EMPTYING,
    });
    expect(emptied).toEqual({ entries: 1, visits: 1, files: 0 });
    expect(rows(desk, 'SELECT name FROM dog')).toEqual([{ name: 'Rusk' }]);
    expect(rows(desk, `SELECT * FROM visit`)).toEqual(before);
    expect(rows(desk, 'SELECT dog_id FROM plan')).toEqual([{ dog_id: rusk.id }]);
    expect(rows(desk, 'SELECT dog_id FROM food_decision')).toEqual([{ dog_id: rusk.id }]);
    expect(rows(desk, 'SELECT key FROM draft')).toEqual([{ key: `visit:${rusk.id}:new` }]);
    const history = rows(desk, `SELECT action, before FROM history WHERE record_id = '${bess.id}'`);
    expect(history).toEqual([{ action: 'removed', before: 'null' }]);
    const { erasures } = await desk.ok('erasures/list', {});
    expect(erasures).toMatchObject([
      { ground: 'entered by mistake', insideRetention: true, dogs: 1, visits: 1, files: 0 },
    ]);
  });

  test('takes all or nothing', async () => {
    const desk = await openOwn();
    const bess = await dogOf(desk, 'Ada Owner', 'Bess');
    const rusk = await dogOf(desk, 'Ben Keeper', 'Rusk');
    await desk.ok('bin/put', { kind: 'dog', id: bess.id });
    const entries = [bess, rusk].map(({ id }) => ({ kind: 'dog' as const, id }));
    expect((await desk.refused('bin/empty', { entries, ...EMPTYING })).kind).toBe('not-found');
    expect(rows(desk, 'SELECT name FROM dog ORDER BY name')).toHaveLength(2);
  });

  test('takes an entry together with the one it lies in', async () => {
    const desk = await openOwn();
    const dog = await dogOf(desk, 'Ada Owner', 'Bess');
    const { visit } = await seenWithPlan(desk, dog.id, TODAY);
    await desk.ok('bin/put', { kind: 'visit', id: visit.id });
    await desk.ok('bin/put', { kind: 'client', id: dog.clientId });
    await desk.ok('bin/empty', {
      entries: [
        { kind: 'client', id: dog.clientId },
        { kind: 'visit', id: visit.id },
      ],
      ...EMPTYING,
    });
    expect(rows(desk, 'SELECT id FROM client UNION SELECT id FROM visit')).toEqual([]);
    expect(rows(desk, 'SELECT dogs, visits FROM erasure')).toEqual([{ dogs: 1, visits: 1 }]);
  });
});

describe('an archived dog', () => {
  test('leaves the lists, is found when asked for, opens as before and comes back', async () => {
    const desk = await openOwn();
    const dog = await dogOf(desk, 'Ada Owner', 'Bess');
    await seenWithPlan(desk, dog.id, '2026-02-02');
    desk.setDay('2026-03-20');
    expect(await desk.ok('dogs/due', {})).not.toEqual([]);
    const archived = await desk.ok('dogs/archive', { id: dog.id, archived: true });
    expect(archived.archivedAt).not.toBeNull();
    expect(await names(desk)).toEqual([]);
    expect(await desk.ok('dogs/due', {})).toEqual([]);
    const found = await desk.ok('dogs/list', { query: 'bess', filters: ['archived too'] });
    expect(found.map(({ archivedAt }) => archivedAt)).toEqual([archived.archivedAt]);
    expect((await desk.ok('dogs/file', { dogId: dog.id })).dog).toEqual(archived);
    await desk.ok('dogs/archive', { id: dog.id, archived: false });
    expect(await names(desk)).toEqual(['Bess']);
    const actions = rows(desk, 'SELECT action FROM history ORDER BY id');
    expect(actions).toEqual([{ action: 'archived' }, { action: 'unarchived' }]);
  });

  test('is not archived twice', async () => {
    const desk = await openOwn();
    const dog = await dogOf(desk, 'Ada Owner', 'Bess');
    const first = await desk.ok('dogs/archive', { id: dog.id, archived: true });
    desk.setDay('2026-03-20');
    expect(await desk.ok('dogs/archive', { id: dog.id, archived: true })).toEqual(first);
    expect(rows(desk, 'SELECT id FROM history')).toHaveLength(1);
  });
});

describe('any way of putting in and taking out', () => {
  test('changes no other record, and restoring everything gives back the file as it was', async () => {
    const desk = await openOwn();
    const bess = await dogOf(desk, 'Ada Owner', 'Bess');
    const rusk = await dogOf(desk, 'Ben Keeper', 'Rusk');
    const targets: { kind: BinKind; id: string }[] = [];
    for (const dog of [bess, rusk]) {
      for (const day of ['2026-02-02', '2026-03-01']) {
        const { visit } = await seenWithPlan(desk, dog.id, day);
        targets.push({ kind: 'visit', id: visit.id });
      }
      targets.push({ kind: 'dog', id: dog.id }, { kind: 'client', id: dog.clientId });
    }
    const original = everything(desk);
    const steps = fc.array(fc.record({ put: fc.boolean(), target: fc.nat(targets.length - 1) }), {
      minLength: 1,
      maxLength: 12,
    });
    let done = 0;
    await holdsAsync(
      fc.asyncProperty(steps, async (sequence) => {
        for (const { put, target } of sequence) {
          const before = everything(desk);
          const { kind, id } = targets[target]!;
          const answer = await desk.service.call(put ? 'bin/put' : 'bin/restore', { kind, id });
          const after = everything(desk);
          if (answer.ok) done++;
          for (const [table, kept] of Object.entries(before)) {
            for (const [key, row] of Object.entries(kept)) {
              const same = { ...after[table]![key]! };
              // Only where the record lies may have changed, and only of the one that was moved.
              if (table === kind && key === id && answer.ok) same['binned_at'] = row['binned_at'];
              expect(same).toEqual(row);
            }
          }
        }
        for (const kind of ['client', 'dog', 'visit'] as const) {
          for (const line of await desk.ok('bin/list', {})) {
            if (line.kind === kind) await desk.ok('bin/restore', { kind, id: line.id });
          }
        }
        expect(everything(desk)).toEqual(original);
      }),
      { seed: 1, numRuns: 60 },
    );
    console.log(`bin: ${done} moves of 60 sequences, every one taken back`);
    expect(done).toBeGreaterThan(100);
  });
});

type Rows = Record<string, Record<string, Record<string, unknown>>>;

/** All rows of the records, by table and id; without the history, which every move adds to. */
function everything(desk: TestDesk): Rows {
  const tables = ['client', 'dog', 'visit', 'plan', 'food_decision', 'session_result', 'weighing'];
  const read: Rows = {};
  for (const table of tables) {
    read[table] = Object.fromEntries(
      rows(desk, `SELECT * FROM ${table}`).map((row) => [row['id'] as string, row]),
    );
  }
  return read;
}
