import {
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { createHash, randomUUID } from 'node:crypto';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { blankClient, blankPractice } from '../../../electron/contract/records/forms.ts';
import {
  contentFile,
  contentsOf,
  listContents,
} from '../../../electron/service/backup/contents.ts';
import { pngChunk, pngOf } from '../../support/pictures.ts';
import { openOwn, temporaryFolder, testService, type TestDesk } from '../support/desk.ts';
import { dogOf, soundVisit } from '../support/records.ts';

const PASSPHRASE = 'eleven geese on a gate';

async function addOwner(desk: TestDesk, name: string): Promise<void> {
  await desk.ok('clients/save', { id: null, client: { ...blankClient(), name } });
}

const owners = async (desk: TestDesk): Promise<string[]> =>
  (await desk.ok('clients/list', { query: '' })).map(({ name }) => name).sort();

/** Names a content in the records, and stores it, as the attachment of a visit would. */
function addContent(folder: string, bytes: string | Buffer): string {
  const hash = createHash('sha256').update(bytes).digest('hex');
  const db = new BetterSqlite3(join(folder, 'trotwell.sqlite'));
  db.prepare('INSERT INTO stored_file VALUES (?, ?, ?, ?)').run(
    hash,
    'application/pdf',
    bytes.length,
    '2026-03-02T12:00:00.000Z',
  );
  db.close();
  const file = contentFile(join(folder, 'files'), hash);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, bytes);
  return hash;
}

const made = async (desk: TestDesk, passphrase: string | null): Promise<string> => {
  const { token } = await desk.ok('backup/make', { passphrase, workId: randomUUID() });
  const given = desk.service.giveOut(token);
  if (!given.ok) return expect.fail('no file');
  const taken = await desk.service.takeIn('kept.trotwell', given.value.file, 1e9);
  return taken.ok ? taken.value.token : expect.fail('not taken in');
};

describe('backups made by themselves', () => {
  test('are made at closing when something changed, and only then', async () => {
    const folder = temporaryFolder();
    const first = await openOwn(folder);
    await addOwner(first, 'Ada Sample');
    await first.service.close();
    const second = await openOwn(folder, '2026-03-03');
    expect(await owners(second)).toEqual(['Ada Sample']);
    await second.service.close();
    const third = testService(folder, '2026-03-04');
    expect((await third.ok('backup/status', {})).kept).toHaveLength(1);
    await addOwner(third, 'Ben Sample');
    await third.service.close();
    const { kept } = await testService(folder, '2026-03-05').ok('backup/status', {});
    expect(kept.map(({ reason }) => reason)).toEqual(['automatic', 'automatic']);
    expect(kept[0]!.madeAt.slice(0, 10)).toBe('2026-03-04');
  });

  test('are made once a day while the practice stays open', async () => {
    const desk = await openOwn();
    for (const day of ['2026-03-02', '2026-03-03', '2026-03-04']) {
      desk.setDay(day);
      await addOwner(desk, `Owner of ${day}`);
      await addOwner(desk, `Another of ${day}`);
    }
    const { kept } = await desk.ok('backup/status', {});
    expect(kept.map(({ madeAt }) => madeAt.slice(0, 10))).toEqual(['2026-03-04', '2026-03-03']);
  });

  test('are made whatever the clock says, forth and back, and the newest made stays', async () => {
    const desk = await openOwn();
    await desk.ok('backup/settings', { dailyBackups: 2, weeklyBackups: 0 });
    const days = ['2031-01-01', '2031-01-02', '2026-03-03', '2025-12-31', '2026-03-04'];
    for (const [index, day] of days.entries()) {
      desk.setDay(day);
      await addOwner(desk, `Owner of ${day}`);
      const { kept, fromFuture, failure } = await desk.ok('backup/status', {});
      expect(failure).toBeNull();
      expect(kept[0]!.madeAt.slice(0, 10)).toBe(day);
      const ahead = kept.some(({ madeAt }) => madeAt.slice(0, 10) > day);
      expect(fromFuture !== null, day).toBe(ahead);
      // The files' own times lie in the future as well, as after a start with a wrong clock.
      for (const { name } of kept) {
        utimesSync(
          join(desk.folder, 'backups', name),
          new Date('2040-01-01'),
          new Date('2040-01-01'),
        );
      }
      const source = { name: kept[0]!.name };
      const look = await desk.ok('backup/look', { source, passphrase: null, workId: randomUUID() });
      expect(look.summary.owners).toBe(index + 1);
    }
  });

  test('leave nothing half written behind once the program starts again', async () => {
    const folder = temporaryFolder();
    const desk = await openOwn(folder);
    await addOwner(desk, 'Ada Sample');
    addContent(folder, 'a letter');
    await desk.service.close();
    const left = ['backups/x.sqlite.part', 'backups/x.sqlite.part-journal', 'files/x.part'];
    for (const name of left) writeFileSync(join(folder, name), 'half');
    const next = testService(folder);
    await next.ok('app/status', {});
    for (const name of left) expect(existsSync(join(folder, name)), name).toBe(false);
  });

  test('are not made of the demonstration', async () => {
    const desk = testService();
    await desk.ok('app/open', { which: 'demo' });
    await desk.service.close();
    expect(existsSync(join(desk.folder, 'backups'))).toBe(false);
  });

  test('stay as many as were chosen, with the attachments they name', async () => {
    const desk = await openOwn();
    await desk.ok('backup/settings', { dailyBackups: 2, weeklyBackups: 0 });
    const early = addContent(desk.folder, 'a letter');
    desk.setDay('2026-03-03');
    await addOwner(desk, 'Ada Sample');
    // The backup follows the answer; the next call waits for it.
    await desk.ok('backup/status', {});
    const store = join(desk.folder, 'backups', 'files');
    expect(readFileSync(contentFile(store, early), 'utf8')).toBe('a letter');
    const db = new BetterSqlite3(join(desk.folder, 'trotwell.sqlite'));
    db.prepare('DELETE FROM stored_file').run();
    db.close();
    for (const day of ['2026-03-04', '2026-03-05', '2026-03-06']) {
      desk.setDay(day);
      await addOwner(desk, day);
    }
    const { kept, settings } = await desk.ok('backup/status', {});
    expect(settings).toEqual({ dailyBackups: 2, weeklyBackups: 0 });
    expect(kept).toHaveLength(2);
    expect(existsSync(contentFile(store, early))).toBe(false);
  });
});

describe.each([null, PASSPHRASE])('a backup to keep elsewhere (passphrase: %s)', (passphrase) => {
  test('shows what is in it, and brings the old state back with its attachments', async () => {
    const desk = await openOwn();
    await desk.ok('practice/save', { ...blankPractice(), name: 'Invented practice' });
    await addOwner(desk, 'Ada Sample');
    const hash = addContent(desk.folder, 'a letter');
    const token = await made(desk, passphrase);
    await addOwner(desk, 'Ben Sample');
    rmSync(join(desk.folder, 'files'), { recursive: true });

    const source = { token };
    const look = await desk.ok('backup/look', { source, passphrase, workId: randomUUID() });
    expect(look.summary).toMatchObject({ practiceName: 'Invented practice', owners: 1, dogs: 0 });
    expect(look.present).toMatchObject({ owners: 2 });
    expect(look.protectedByPassphrase).toBe(passphrase !== null);
    expect(await owners(desk)).toEqual(['Ada Sample', 'Ben Sample']);

    const done = await desk.ok('backup/restore', { source, passphrase, workId: randomUUID() });
    expect(done).toMatchObject({ missing: 0, setAside: null });
    expect(await owners(desk)).toEqual(['Ada Sample']);
    expect(readFileSync(contentFile(join(desk.folder, 'files'), hash), 'utf8')).toBe('a letter');
    expect(readdirSync(desk.folder)).not.toContain('restore');

    const before = (await desk.ok('backup/status', {})).kept[0]!;
    expect(before.reason).toBe('before-restore');
    const back = { source: { name: before.name }, passphrase: null, workId: randomUUID() };
    await desk.ok('backup/restore', back);
    expect(await owners(desk)).toEqual(['Ada Sample', 'Ben Sample']);
  });

  test('can be made the beginning of the records on a new computer', async () => {
    const desk = await openOwn();
    await addOwner(desk, 'Ada Sample');
    addContent(desk.folder, 'a letter');
    const { token } = await desk.ok('backup/make', { passphrase, workId: randomUUID() });
    const given = desk.service.giveOut(token);
    const other = testService();
    const taken = await other.service.takeIn('a.trotwell', given.ok ? given.value.file : '', 1e9);
    if (!taken.ok) return expect.fail('not taken in');
    const source = { token: taken.value.token };
    await other.ok('backup/restore', { source, passphrase, workId: randomUUID() });
    expect(await owners(other)).toEqual(['Ada Sample']);
  });
});

test.each([
  ['at a visit', true],
  ['chosen for a visit', false],
])('a picture %s loses the place it was taken at, also by a restore', async (_what, saved) => {
  const PLACE = 'By the weir, 50.1 N';
  const desk = await openOwn();
  const { id: dogId } = await dogOf(desk, 'Odette Fenn', 'Bramble');
  const place = pngChunk('prVt', Buffer.from(PLACE));
  const photo = join(temporaryFolder(), 'photo.png');
  writeFileSync(photo, pngOf(3, 3));
  const taken = await desk.service.takeIn('photo.png', photo, 1e6);
  const { token } = taken.ok ? taken.value : expect.fail('not taken in');
  const file = { dogId, token, kind: 'photo', name: 'photo.png', thumbnail: null } as const;
  await desk.ok('waiting/add', file);
  const visit = { id: null, visit: soundVisit(dogId, '2026-03-01'), plan: null, food: null };
  if (saved) await desk.ok('visits/save', visit);
  // As an earlier version may have kept it: not on the list of what draws a picture.
  const told = addContent(desk.folder, pngOf(3, 3, [place]));
  const db = new BetterSqlite3(join(desk.folder, 'trotwell.sqlite'));
  const [clean] = contentsOf(db).filter((hash) => hash !== told);
  db.prepare('UPDATE attachment SET hash = ?').run(told);
  db.prepare('UPDATE draft SET json = replace(json, ?, ?)').run(clean, told);
  db.prepare('DELETE FROM stored_file WHERE hash = ?').run(clean);
  db.close();

  const input = { source: { token: await made(desk, null) }, passphrase: null };
  const restored = await desk.ok('backup/restore', { ...input, workId: randomUUID() });
  expect(restored.missing).toBe(0);
  expect(listContents(join(desk.folder, 'files'))).toEqual([clean]);
  const named = await desk.ok(saved ? 'attachments/list' : 'waiting/list', { dogId });
  expect(named).toMatchObject([{ name: 'photo.png', missing: false }]);
});

describe('a restore is refused, and nothing is changed,', () => {
  test('with the wrong passphrase, from a damaged file, and when cancelled', async () => {
    const desk = await openOwn();
    await addOwner(desk, 'Ada Sample');
    const token = await made(desk, PASSPHRASE);
    await addOwner(desk, 'Ben Sample');
    const input = { source: { token }, passphrase: 'eleven geese on a gata', workId: randomUUID() };
    const wrong = await desk.refused('backup/restore', input);
    expect(wrong.fields?.[0]?.path).toBe('passphrase');

    const workId = randomUUID();
    const running = desk.service.call('backup/restore', {
      source: { token },
      passphrase: PASSPHRASE,
      workId,
    });
    for (
      let tries = 0;
      (await desk.ok('work/state', { workId })) === null && tries < 500;
      tries++
    ) {
      await new Promise((resolve) => setTimeout(resolve, 2));
    }
    await desk.ok('work/cancel', { workId });
    const answer = await running;
    expect(answer.ok ? '' : answer.error.kind).toBe('cancelled');
    expect(await owners(desk)).toEqual(['Ada Sample', 'Ben Sample']);
    expect(readdirSync(desk.folder)).not.toContain('restore');
  });

  test('when the database inside is damaged, another program’s, newer or changed by hand', async () => {
    const desk = await openOwn();
    await addOwner(desk, 'Ada Sample');
    desk.setDay('2026-03-03');
    await addOwner(desk, 'Ben Sample');
    const { name } = (await desk.ok('backup/status', {})).kept[0]!;
    const file = join(desk.folder, 'backups', name);
    const whole = readFileSync(file);
    const restoring = () =>
      desk.refused('backup/restore', { source: { name }, passphrase: null, workId: randomUUID() });

    const holed = Buffer.from(whole);
    holed.fill(7, 4096 * 3, 4096 * 6);
    writeFileSync(file, holed);
    expect((await restoring()).message).toContain('damaged');

    for (const [sql, words] of [
      ['PRAGMA application_id = 5', 'not one of Trotwell'],
      ['PRAGMA user_version = 99', 'newer'],
      [
        'CREATE TRIGGER t AFTER INSERT ON client BEGIN DELETE FROM dog; END',
        'not those of Trotwell',
      ],
    ] as const) {
      writeFileSync(file, whole);
      const db = new BetterSqlite3(file);
      db.exec(sql);
      db.close();
      expect((await restoring()).message, sql).toContain(words);
    }
    expect(await owners(desk)).toEqual(['Ada Sample', 'Ben Sample']);
  });

  test('while the demonstration is open', async () => {
    const desk = await openOwn();
    await addOwner(desk, 'Ada Sample');
    await desk.ok('app/open', { which: 'demo' });
    const { name } = (await desk.ok('backup/status', {})).kept[0]!;
    const input = { source: { name }, passphrase: null, workId: randomUUID() };
    expect((await desk.refused('backup/restore', input)).kind).toBe('conflict');
    expect(
      (await desk.refused('backup/make', { passphrase: null, workId: randomUUID() })).kind,
    ).toBe('conflict');
  });

  test('for names that are no backups', async () => {
    const desk = await openOwn();
    for (const name of ['trotwell.sqlite', 'automatic-2026-03-02T12-00-00-000Z.sqlite']) {
      const input = { source: { name }, passphrase: null, workId: randomUUID() };
      expect((await desk.refused('backup/restore', input)).kind).toBe('not-found');
    }
  });
});

describe('records that cannot be opened', () => {
  test('are said to be damaged; a backup takes their place, and they are kept aside', async () => {
    const folder = temporaryFolder();
    const desk = await openOwn(folder);
    await addOwner(desk, 'Ada Sample');
    await desk.service.close();
    const own = join(folder, 'trotwell.sqlite');
    writeFileSync(own, 'rubbish'.repeat(1000));

    const next = testService(folder, '2026-03-04');
    const status = await next.ok('app/status', {});
    expect(status).toMatchObject({ open: null, ownExists: true, trouble: { kind: 'damaged' } });
    expect((await next.refused('clients/list', { query: '' })).trouble).toBe('damaged');
    const { name } = (await next.ok('backup/status', {})).kept[0]!;
    const input = { source: { name }, passphrase: null };
    expect((await next.ok('backup/look', { ...input, workId: randomUUID() })).present).toBeNull();
    expect(readFileSync(own, 'utf8')).toContain('rubbish');
    const done = await next.ok('backup/restore', { ...input, workId: randomUUID() });
    expect(done.status).toMatchObject({ open: 'own', trouble: null });
    expect(done.setAside).toMatch(/^set-aside-2026-03-04/);
    expect(readFileSync(join(folder, done.setAside!, 'trotwell.sqlite'), 'utf8')).toContain(
      'rubbish',
    );
    expect(await owners(next)).toEqual(['Ada Sample']);
  });
});
