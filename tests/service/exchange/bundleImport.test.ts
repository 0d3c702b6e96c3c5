import { createHash } from 'node:crypto';
import { readdirSync, rmSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { BundleRecords } from '../../../electron/contract/exchange/bundle.ts';
import { contentFile, listContents } from '../../../electron/service/backup/contents.ts';
import { presentContents } from '../../../electron/service/backup/folder.ts';
import { openOwn, testService, type TestDesk } from '../support/desk.ts';
import { soundVisit } from '../support/records.ts';
import { exifSegment, JPEG_16_BY_8 } from '../../support/pictures.ts';
import {
  changed,
  exported,
  imported,
  jsonOf,
  lookedAt,
  recordsOf,
  WORK,
} from './support/bundle.ts';
import { fullRecord, SESSION, WEIGHING } from './support/fullRecord.ts';

/** Everything of a bundle's records, told without what an import of differing records adds. */
const kept = async (desk: TestDesk): Promise<BundleRecords> => recordsOf(await exported(desk));
const historyOf = (desk: TestDesk, kind: 'visit' | 'client' | 'weighing' | 'session', id: string) =>
  desk.ok('history/list', { kind, recordId: id });
const filesOf = (desk: TestDesk): readonly string[] => listContents(presentContents(desk.folder));

async function amend(desk: TestDesk, visitId: string, dogId: string, weightKg: number) {
  const file = await desk.ok('dogs/file', { dogId });
  const { revision } = file.visits.find(({ id }) => id === visitId)!;
  await desk.ok('visits/save', {
    id: visitId,
    basedOn: revision,
    reason: 'Read again.',
    visit: { ...soundVisit(dogId, '2026-02-16'), weightKg, signs: ['cough'] },
    plan: null,
    food: null,
  });
}

describe('a bundle read back in', () => {
  test('the demonstration comes whole into an empty practice, and goes out the same', async () => {
    const demo = testService();
    await demo.ok('app/open', { which: 'demo' });
    const out = await exported(demo);
    const fresh = await openOwn();
    const done = await imported(fresh, out);
    expect(done).toMatchObject({ replaced: 0, kept: 0, leftOut: 0, filesMissing: 0 });
    expect(done.dogs.count).toBe(recordsOf(out).dogs.length);
    expect(await kept(fresh)).toEqual(recordsOf(out));
    const [line] = await fresh.ok('dogs/list', { query: '' });
    const file = await fresh.ok('dogs/file', { dogId: line!.id });
    expect(file).toEqual(await demo.ok('dogs/file', { dogId: line!.id }));
  });

  test('a record with history, bin and files comes whole; again, it changes nothing', async () => {
    const from = await openOwn();
    await fullRecord(from, 'Odette Fenn', 'Bramble');
    const out = await exported(from);
    const to = await openOwn();
    expect(await imported(to, out)).toMatchObject({
      added: { owners: 1, dogs: 1, visits: 2, plans: 1, sessions: 1, weighings: 1, attachments: 2 },
    });
    const first = await exported(to);
    expect(recordsOf(first)).toEqual(recordsOf(out));
    expect([...first.keys()].sort()).toEqual([...out.keys()].sort());
    expect(filesOf(to)).toEqual(filesOf(from));
    expect(readdirSync(presentContents(to.folder)).every((name) => name.length === 2)).toBe(true);

    const { look, token } = await lookedAt(to, out);
    for (const states of Object.values(look.states)) {
      expect(states).toMatchObject({ new: 0, different: 0, erased: 0 });
    }
    expect(look.newHistory).toBe(0);
    const choices = { different: 'theirs', erased: 'bring back' } as const;
    await to.ok('import/bundleRun', { token, digest: look.digest, workId: WORK, ...choices });
    expect(await kept(to)).toEqual(recordsOf(out));
  });

  test('a record that differs is told field by field, and stays where ours is chosen', async () => {
    const from = await openOwn();
    const { dog, visit } = await fullRecord(from, 'Odette Fenn', 'Bramble');
    const to = await openOwn();
    await imported(to, await exported(from));
    await amend(from, visit.id, dog.id, 25.5);
    const out = await exported(from);

    const before = await kept(to);
    const { look } = await lookedAt(to, out);
    expect(look.different).toMatchObject({
      count: 1,
      first: [{ kind: 'visits', dogName: 'Bramble', day: '2026-02-16', stays: false }],
    });
    expect(look.different.first[0]!.changes).toContainEqual({
      path: 'weightKg',
      label: 'Body weight',
      measure: 'kg',
      before: 24.2,
      after: 25.5,
    });
    expect(await imported(to, out)).toMatchObject({ replaced: 0, kept: 1 });
    expect(await kept(to)).toEqual(before);
  });

  test('theirs takes what differs, keeps what it was, and names the import', async () => {
    const from = await openOwn();
    const { dog, visit } = await fullRecord(from, 'Odette Fenn', 'Bramble');
    const to = await openOwn();
    await imported(to, await exported(from));
    await amend(from, visit.id, dog.id, 25.5);
    await from.ok('bin/restore', {
      kind: 'visit',
      id: (await from.ok('bin/list', {}))[0]!.id,
    });
    await from.ok('clients/save', {
      id: dog.clientId,
      basedOn: 1,
      client: { ...(await from.ok('dogs/file', { dogId: dog.id })).client, phone: '0170 5550' },
    });
    const out = await exported(from);
    expect(await imported(to, out, { different: 'theirs' })).toMatchObject({
      replaced: 3,
      kept: 0,
    });

    const file = await to.ok('dogs/file', { dogId: dog.id });
    expect(file.visits.map(({ weightKg }) => weightKg)).toEqual([25.5, 24]);
    expect(file.client.phone).toBe('0170 5550');
    // Here it was revision 2, so a form opened before the import is told.
    expect(file.visits[0]!.revision).toBe(3);
    const history = await historyOf(to, 'visit', visit.id);
    const last = history.at(-1)!;
    expect(last).toMatchObject({ action: 'amended', revision: 2 });
    expect(last.reason).toMatch(/Import of the bundle “bundle.zip”, made on 2026-03-02/);
    expect(last.changes).toMatchObject([{ path: 'weightKg', before: 24.2, after: 25.5 }]);
    expect((await historyOf(to, 'visit', file.visits[1]!.id)).map(({ action }) => action)).toEqual([
      'binned',
      'restored',
      'restored',
    ]);
    const { look } = await lookedAt(to, out);
    expect(look.different.count).toBe(0);
    const again = await kept(to);
    await imported(to, out, { different: 'theirs' });
    expect(await kept(to)).toEqual(again);
  });

  test('a weighing of theirs is told to a form opened before the import', async () => {
    const from = await openOwn();
    const { dog, weighingId: id } = await fullRecord(from, 'Odette Fenn', 'Bramble');
    const to = await openOwn();
    await imported(to, await exported(from));
    const amended = (weightKg: number, basedOn = 1) =>
      ({ id, basedOn, reason: 'Read again.', weighing: { ...WEIGHING, weightKg } }) as const;
    await from.ok('weighings/amend', amended(23.1));
    await to.ok('weighings/amend', amended(23.2));
    await imported(to, await exported(from), { different: 'theirs' });
    const file = await to.ok('dogs/file', { dogId: dog.id });
    expect(file.weighings).toMatchObject([{ weightKg: 23.1, revision: 3 }]);
    expect((await to.refused('weighings/amend', amended(23.3, 2))).kind).toBe('conflict');
  });

  test('what was taken out here comes back only where theirs is chosen', async () => {
    const from = await openOwn();
    const { dog, weighingId } = await fullRecord(from, 'Odette Fenn', 'Bramble');
    const out = await exported(from);
    const to = await openOwn();
    await imported(to, out);
    await to.ok('weighings/drop', { id: weighingId });
    await to.ok('sessions/drop', { dogId: dog.id, day: SESSION.day });

    const { look } = await lookedAt(to, out);
    expect(look.states.weighings).toMatchObject({ new: 0, different: 1 });
    expect(look.states.sessions).toMatchObject({ new: 0, different: 1 });
    await imported(to, out);
    expect((await to.ok('dogs/file', { dogId: dog.id })).weighings).toEqual([]);
    await imported(to, out, { different: 'theirs' });
    const file = await to.ok('dogs/file', { dogId: dog.id });
    expect(file.weighings).toMatchObject([WEIGHING]);
    expect(file.sessions).toMatchObject([SESSION]);
    const history = await historyOf(to, 'weighing', weighingId);
    expect(history.map(({ action }) => action)).toEqual(['removed', 'restored']);
    expect(history[1]!.reason).toMatch(/^Import of the bundle/);
  });

  test('one session a day and one reading a day, told at two desks', async () => {
    const from = await openOwn();
    const { dog } = await fullRecord(from, 'Odette Fenn', 'Bramble');
    const start = await exported(from);
    const to = await openOwn();
    await imported(to, start);
    const session = { ...SESSION, day: '2026-02-26' };
    await from.ok('sessions/save', { dogId: dog.id, session });
    await to.ok('sessions/save', { dogId: dog.id, session: { ...session, runMinutes: 4 } });
    const weighing = { ...WEIGHING, day: '2026-02-28' };
    await from.ok('weighings/save', { dogId: dog.id, weighing });
    await to.ok('weighings/save', { dogId: dog.id, weighing });
    const out = await exported(from);
    const { look } = await lookedAt(to, out);
    expect(look.states.sessions).toMatchObject({ new: 0, equal: 1, different: 1 });
    expect(look.states.weighings).toMatchObject({ new: 0, equal: 2, different: 0 });
    await imported(to, out, { different: 'theirs' });
    const file = await to.ok('dogs/file', { dogId: dog.id });
    expect(file.sessions.map(({ runMinutes }) => runMinutes)).toEqual([6, 6]);
    expect(file.weighings).toHaveLength(2);
    expect((await lookedAt(to, out)).look.different.count).toBe(0);
  });

  test('the plan in force stays ours or becomes theirs; the versions go on counting', async () => {
    const from = await openOwn();
    const { dog, visit } = await fullRecord(from, 'Odette Fenn', 'Bramble');
    const to = await openOwn();
    await imported(to, await exported(from));
    const plan = async (desk: TestDesk, minutes: number) => {
      const { plans } = await desk.ok('dogs/file', { dogId: dog.id });
      const request = { ...plans.at(-1)!.request, goal: { continuousMinutes: minutes } };
      const { revision } = (await desk.ok('dogs/file', { dogId: dog.id })).visits[0]!;
      await desk.ok('visits/save', {
        id: visit.id,
        basedOn: revision,
        reason: 'Another goal.',
        visit: { ...soundVisit(dog.id, '2026-02-16'), weightKg: 24.2, signs: ['cough'] },
        plan: request,
        food: null,
      });
    };
    await plan(from, 30);
    await plan(to, 15);
    const out = await exported(from);
    const inForce = async () => {
      const { plans } = await to.ok('dogs/file', { dogId: dog.id });
      const current = plans.filter((each) => each.current);
      expect(current).toHaveLength(1);
      return {
        versions: plans.map(({ version }) => version),
        goal: current[0]!.request.goal,
      };
    };
    await imported(to, out);
    expect(await inForce()).toEqual({ versions: [1, 2, 3], goal: { continuousMinutes: 15 } });
    await imported(to, out, { different: 'theirs' });
    expect(await inForce()).toEqual({ versions: [1, 2, 3], goal: { continuousMinutes: 30 } });
  });
});

describe('records that were removed here for good', () => {
  const ground = 'asked by the owner' as const;

  test('an erased owner is shown, left out, and comes back only on purpose', async () => {
    const desk = await openOwn();
    const { dog } = await fullRecord(desk, 'Odette Fenn', 'Bramble');
    await fullRecord(desk, 'Ada Sample', 'Rusk');
    const out = await exported(desk);
    await desk.ok('clients/erase', {
      clientId: dog.clientId,
      ground,
      confirmName: 'Odette Fenn',
      insideRetentionConfirmed: true,
    });
    const { look } = await lookedAt(desk, out);
    expect(look.erased).toMatchObject({
      count: 1,
      first: [{ kind: 'owners', name: 'Odette Fenn' }],
    });
    expect(look.states.dogs).toEqual({ new: 0, equal: 1, different: 0, erased: 1 });
    const without = await imported(desk, out);
    expect(without.leftOut).toBeGreaterThan(5);
    expect((await desk.ok('dogs/list', { query: '' })).map(({ name }) => name)).toEqual(['Rusk']);
    const back = await imported(desk, out, { erased: 'bring back' });
    expect(back).toMatchObject({ leftOut: 0, filesMissing: 0, added: { owners: 1, dogs: 1 } });
    const { owners, dogs, visits, attachments } = await kept(desk);
    expect({ owners, dogs, visits, attachments }).toEqual(
      (({ owners, dogs, visits, attachments }) => ({ owners, dogs, visits, attachments }))(
        recordsOf(out),
      ),
    );
    // Once back, it is a record like any other.
    expect((await lookedAt(desk, out)).look.erased.count).toBe(0);
  });

  test('so is a visit of which the bin was emptied', async () => {
    const desk = await openOwn();
    const { binnedVisitId } = await fullRecord(desk, 'Odette Fenn', 'Bramble');
    const out = await exported(desk);
    const entries = [{ kind: 'visit', id: binnedVisitId }] as const;
    await desk.ok('bin/empty', { entries: [...entries], ground, insideRetentionConfirmed: true });
    const { look } = await lookedAt(desk, out);
    expect(look.erased.first).toMatchObject([{ kind: 'visits', day: '2026-02-27' }]);
    await imported(desk, out);
    expect((await kept(desk)).visits).toHaveLength(1);
    await imported(desk, out, { erased: 'bring back' });
    expect((await kept(desk)).visits).toHaveLength(2);
    const actions = (await historyOf(desk, 'visit', binnedVisitId)).map(({ action }) => action);
    expect(actions.toSorted()).toEqual(['binned', 'removed', 'restored']);
    expect(actions.at(-1)).toBe('restored');
  });
});

describe('attached files', () => {
  test('one that was missing at the export is said so, and stays missing', async () => {
    const from = await openOwn();
    await fullRecord(from, 'Odette Fenn', 'Bramble');
    const [lost] = filesOf(from);
    rmSync(contentFile(presentContents(from.folder), lost!));
    const made = await from.ok('export/make', { clientId: null, workId: WORK });
    expect(made.missing).toBe(1);
    const out = await exported(from);
    expect(jsonOf(out, 'manifest.json')).toMatchObject({ missing: [lost] });
    const to = await openOwn();
    const { look } = await lookedAt(to, out);
    expect(look.files).toEqual({ here: 1, missing: 1 });
    expect(await imported(to, out)).toMatchObject({ filesMissing: 1 });
    expect(await kept(to)).toEqual(recordsOf(out));
  });

  test('a picture loses the place it was taken at, also by way of a bundle', async () => {
    const from = await openOwn();
    await fullRecord(from, 'Odette Fenn', 'Bramble');
    const place = 'By the weir, 50.1 N';
    const [start, rest] = [JPEG_16_BY_8.subarray(0, 2), JPEG_16_BY_8.subarray(2)];
    const photo = Buffer.concat([start, exifSegment(1, place), rest]);
    const [told, clean] = [photo, JPEG_16_BY_8].map((bytes) =>
      createHash('sha256').update(bytes).digest('hex'),
    );
    const entries = await exported(from);
    const { hash } = recordsOf(entries).attachments[0]!;
    let former = '';
    const bundle = changed(entries, ({ attachments }, { files }) => {
      for (const file of attachments.filter((each) => each.hash === hash)) {
        Object.assign(file, { hash: told, mediaType: 'image/jpeg', bytes: photo.length });
      }
      const listed = files.find(({ sha256 }) => sha256 === hash)!;
      former = listed.name;
      Object.assign(listed, { name: `files/${told}.jpg`, sha256: told, bytes: photo.length });
    });
    bundle.delete(former);
    bundle.set(`files/${told}.jpg`, photo);
    const to = await openOwn();
    await imported(to, bundle);
    const { attachments } = recordsOf(await exported(to));
    expect(attachments.map((file) => file.hash)).toContain(clean);
    const kept = readdirSync(presentContents(to.folder), { recursive: true, encoding: 'utf8' });
    expect(kept.some((name) => name.endsWith(clean!))).toBe(true);
    expect(kept.some((name) => name.endsWith(told!))).toBe(false);
  });

  test('a content that was lost here comes back with the bundle', async () => {
    const desk = await openOwn();
    const { dog } = await fullRecord(desk, 'Odette Fenn', 'Bramble');
    const out = await exported(desk);
    for (const hash of filesOf(desk)) rmSync(contentFile(presentContents(desk.folder), hash));
    await imported(desk, out);
    const files = await desk.ok('attachments/list', { dogId: dog.id });
    expect(files.map(({ missing }) => missing)).toEqual([false, false]);
  });
});

describe('an import that does not come to its end', () => {
  test.each([
    'Checking the records',
    'Comparing with the records',
    'Copying the attached files',
    'Keeping the dogs',
    'Keeping the visits',
    'Keeping the attached files',
    'Writing it through to the disk',
  ])('stopped at “%s”, it leaves neither records nor files', async (step) => {
    const from = await openOwn();
    await fullRecord(from, 'Odette Fenn', 'Bramble');
    const out = await exported(from);
    const to = await openOwn();
    const { token, look } = await lookedAt(to, out);
    const input = { token, digest: look.digest, different: 'ours', erased: 'leave out' } as const;
    const running = to.service.call('import/bundleRun', { ...input, workId: WORK });
    for (let state = null; state !== step;) {
      await new Promise((resolve) => setImmediate(resolve));
      state = (await to.ok('work/state', { workId: WORK }))?.step ?? null;
    }
    await to.ok('work/cancel', { workId: WORK });
    const answer = await running;
    expect(answer.ok ? 'done' : answer.error.kind).toBe('cancelled');
    expect((await kept(to)).owners).toEqual([]);
    expect(filesOf(to)).toEqual([]);
    // The bundle is still at hand, and comes whole.
    await to.ok('import/bundleRun', { ...input, workId: WORK });
    expect(await kept(to)).toEqual(recordsOf(out));
  });

  test('a record that changed since the look stops it', async () => {
    const from = await openOwn();
    const { dog, visit } = await fullRecord(from, 'Odette Fenn', 'Bramble');
    const to = await openOwn();
    await imported(to, await exported(from));
    await amend(from, visit.id, dog.id, 25.5);
    const { token, look } = await lookedAt(to, await exported(from));
    await amend(to, visit.id, dog.id, 23);
    const input = { token, digest: look.digest, different: 'theirs', erased: 'leave out' };
    const error = await to.refused('import/bundleRun', { ...input, workId: WORK });
    expect(error).toMatchObject({ kind: 'conflict' });
    expect((await to.ok('dogs/file', { dogId: dog.id })).visits[0]!.weightKg).toBe(23);
  });
});
