import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createHash, randomUUID } from 'node:crypto';
import { dirname, join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { blankClient } from '../../electron/contract/records/forms.ts';
import { contentFile } from '../../electron/service/backup/contents.ts';
import { openOwn, temporaryFolder, testService } from '../service/support/desk.ts';
import { dogOf } from '../service/support/records.ts';
import { SMALL_PDF } from '../support/pictures.ts';
import { smallDisk } from '../attack/support/smallDisk.ts';
import { lookAt, start } from './support/run.ts';

const FOLDER_FILES = ['trotwell.sqlite'];
const sha256 = (bytes: Buffer | string): string => createHash('sha256').update(bytes).digest('hex');

/** A closed folder of records with one owner, about 40 kB of notes, and a backup. */
async function closedFolder(folder = temporaryFolder()): Promise<string> {
  const desk = await openOwn(folder, '2026-02-27');
  for (const name of ['Ada', 'Ben', 'Cem', 'Dana']) {
    const client = { ...blankClient(), name, notes: 'word '.repeat(2000) };
    await desk.ok('clients/save', { id: null, client });
  }
  await desk.service.close();
  return folder;
}

const owners = async (folder: string): Promise<number> => {
  const desk = testService(folder);
  const count = (await desk.ok('clients/list', { query: '' })).length;
  await desk.service.close();
  return count;
};

/** Opens a file that is not as it should be: says so, leaves it alone, and a backup brings all back. */
async function saysSoAndRestores(folder: string, words: RegExp): Promise<void> {
  const file = join(folder, 'trotwell.sqlite');
  const left = sha256(readFileSync(file));
  const desk = testService(folder);
  const { trouble, open } = await desk.ok('app/status', {});
  expect(open).toBeNull();
  expect(trouble?.kind).toBe('damaged');
  expect(trouble?.message).toMatch(words);
  expect((await desk.refused('clients/list', { query: '' })).kind).toBe('storage');
  expect(sha256(readFileSync(file))).toBe(left);
  const { name } = (await desk.ok('backup/status', {})).kept[0]!;
  const input = { source: { name }, passphrase: null, workId: randomUUID() };
  const { setAside } = await desk.ok('backup/restore', input);
  expect(sha256(readFileSync(join(folder, setAside!, 'trotwell.sqlite')))).toBe(left);
  expect(await desk.ok('clients/list', { query: '' })).toHaveLength(4);
  await desk.service.close();
}

describe('a file of records that', () => {
  test('lacks its end, wherever it was cut, is said to be damaged and a backup replaces it', async () => {
    const whole = readFileSync(join(await closedFolder(), 'trotwell.sqlite'));
    const places = [0, 1, 15, 16, 50, 99, 100, 511, 512, 4095, 4096, 4097, 8192];
    const step = Math.floor(whole.length / 7);
    for (let at = step; at < whole.length; at += step) places.push(at + 1);
    places.push(whole.length - 4096, whole.length - 1);
    for (const place of places) {
      const folder = await closedFolder();
      writeFileSync(join(folder, 'trotwell.sqlite'), whole.subarray(0, place));
      await saysSoAndRestores(folder, /missing|not a database|empty|damaged/);
    }
    console.log(`Cut off at ${places.length} places: all said so, all restored`);
  });

  test('holds garbage is said to be no database and a backup replaces it', async () => {
    const folder = await closedFolder();
    writeFileSync(join(folder, 'trotwell.sqlite'), 'rubbish '.repeat(5000));
    await saysSoAndRestores(folder, /not a database/);
  });

  test('has a hole inside: no backup is made of it, the good ones stay, and one replaces it', async () => {
    const folder = await closedFolder();
    const file = join(folder, 'trotwell.sqlite');
    const bytes = readFileSync(file);
    const at = bytes.indexOf('word word');
    const page = Math.floor(at / 4096) * 4096;
    bytes.fill(0xff, page, page + 4096);
    writeFileSync(file, bytes);
    const good = readdirSync(join(folder, 'backups'));
    const desk = testService(folder, '2026-03-05');
    await desk.ok('app/status', {});
    await desk.service.close();
    const next = testService(folder, '2026-03-06');
    const { kept, failure } = await next.ok('backup/status', {});
    expect(kept.map(({ name }) => name)).toEqual(good.filter((name) => name.endsWith('.sqlite')));
    expect(failure?.message).toContain('damaged');
    const input = { source: { name: kept[0]!.name }, passphrase: null, workId: randomUUID() };
    const { setAside } = await next.ok('backup/restore', input);
    expect(readFileSync(join(folder, setAside!, 'trotwell.sqlite')).equals(bytes)).toBe(true);
    expect(await next.ok('clients/list', { query: '' })).toHaveLength(4);
  });

  test('is of a newer version is left alone, and no restore is forced on it', async () => {
    const folder = await closedFolder();
    lookAt(folder, (db) => db.pragma('user_version = 99'));
    const before = FOLDER_FILES.map((name) => sha256(readFileSync(join(folder, name))));
    const desk = testService(folder);
    expect((await desk.ok('app/status', {})).trouble).toMatchObject({ kind: 'newer' });
    await desk.service.close();
    expect(FOLDER_FILES.map((name) => sha256(readFileSync(join(folder, name))))).toEqual(before);
  });

  test('is held by another program is waited for, said to be held, and works afterwards', async () => {
    const folder = await closedFolder();
    const other = new BetterSqlite3(join(folder, 'trotwell.sqlite'));
    other.exec('BEGIN IMMEDIATE');
    const desk = testService(folder);
    const save = { id: null, client: { ...blankClient(), name: 'Eve' } };
    expect(await desk.refused('clients/save', save)).toMatchObject({
      kind: 'storage',
      trouble: 'held',
    });
    const { name } = (await desk.ok('backup/status', {})).kept[0]!;
    const input = { source: { name }, passphrase: null, workId: randomUUID() };
    expect((await desk.refused('backup/restore', input)).trouble).toBe('held');
    other.exec('ROLLBACK');
    other.close();
    await desk.ok('clients/save', save);
    expect(await desk.ok('clients/list', { query: '' })).toHaveLength(5);
  });

  test('names attachments that are gone: backups go on, and say how many', async () => {
    const folder = await closedFolder();
    const hash = sha256('a letter');
    lookAt(folder, (db) =>
      db
        .prepare("INSERT INTO stored_file VALUES (?, 'application/pdf', 8, '2026-02-27')")
        .run(hash),
    );
    const desk = testService(folder);
    expect(await desk.ok('backup/make', { passphrase: null, workId: randomUUID() })).toMatchObject({
      missing: 1,
    });
    const file = contentFile(join(folder, 'files'), hash);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, 'a lettex');
    expect(await desk.ok('backup/make', { passphrase: null, workId: randomUUID() })).toMatchObject({
      missing: 1,
    });
    expect(readFileSync(file, 'utf8')).toBe('a lettex');
  });
});

/** What other users may do with what lies in a folder, by name. */
function openToOthers(folder: string): string[] {
  return ['.', ...readdirSync(folder, { recursive: true, encoding: 'utf8' })].filter(
    (name) => (statSync(join(folder, name)).mode & 0o077) !== 0,
  );
}

describe.skipIf(process.platform === 'win32')('a folder of records', () => {
  test('is the user’s alone, also one that was made beforehand', async () => {
    const folder = temporaryFolder();
    const desk = await openOwn(folder, '2026-02-27');
    await desk.ok('clients/save', { id: null, client: { ...blankClient(), name: 'Ada' } });
    await desk.service.takeIn('x.csv', join(import.meta.dirname, 'adverse.test.ts'), 1e6);
    const { id: dogId } = await dogOf(desk, 'Ben', 'Rusk');
    const letter = join(temporaryFolder(), 'letter.pdf');
    writeFileSync(letter, SMALL_PDF);
    const taken = await desk.service.takeIn('letter.pdf', letter, 1e6);
    const { token } = taken.ok ? taken.value : expect.fail('not taken');
    const file = { dogId, token, kind: 'other', name: 'letter.pdf', thumbnail: null } as const;
    await desk.ok('waiting/add', file);
    chmodSync(folder, 0o700);
    expect(openToOthers(folder)).toEqual([]);
    await desk.service.close();
    for (const name of ['.', ...readdirSync(folder, { recursive: true, encoding: 'utf8' })]) {
      chmodSync(join(folder, name), name.includes('.') && name !== '.' ? 0o644 : 0o755);
    }
    writeFileSync(join(folder, 'shopping list'), 'not ours', { mode: 0o644 });
    const next = testService(folder);
    expect((await next.ok('app/status', {})).trouble).toBeNull();
    expect(openToOthers(folder)).toEqual(['shopping list']);
  });

  test.each([
    ['a file', 'A file lies where the folder of records should be'],
    ['a folder in the place of the records', 'A folder lies where the file of records should be'],
  ])('with %s in the way is no first start', async (_what, words) => {
    const folder = temporaryFolder();
    const place = words.startsWith('A file') ? join(folder, 'records') : folder;
    if (place === folder) mkdirSync(join(folder, 'trotwell.sqlite'));
    else writeFileSync(place, 'a file');
    const desk = testService(place);
    const status = await desk.ok('app/status', {});
    expect(status).toMatchObject({ open: null, ownExists: true, trouble: { kind: 'unreadable' } });
    expect(status.trouble?.message).toContain(words);
    const refused = await desk.refused('app/open', { which: 'own' });
    expect(refused).toMatchObject({ kind: 'storage', trouble: 'unreadable' });
  });
});

const asRoot = process.platform === 'linux' && process.getuid?.() === 0;

describe.runIf(asRoot)('a disk that (needs root on Linux)', () => {
  test('is full where a backup is to be kept says so, leaves nothing there, and keeps the backup', async () => {
    const place = smallDisk(2);
    if (place === null) return;
    try {
      const desk = testService(await closedFolder());
      const { token } = await desk.ok('backup/make', { passphrase: null, workId: randomUUID() });
      writeFileSync(join(place.folder, 'ballast'), Buffer.alloc(2 * 1024 * 1024 - 8192));
      const kept = join(place.folder, 'kept.trotwell');
      expect(await desk.service.writeOut(token, kept)).toMatchObject({
        ok: false,
        error: { message: 'The disk there has no room for the file. Choose another place.' },
      });
      place.writable(false);
      expect(await desk.service.writeOut(token, kept)).toMatchObject({
        ok: false,
        error: { message: 'Nothing can be written there. Choose another folder.' },
      });
      expect(readdirSync(place.folder)).toEqual(['ballast']);
      const elsewhere = join(temporaryFolder(), 'kept.trotwell');
      expect(await desk.service.writeOut(token, elsewhere)).toEqual({ ok: true, value: null });
    } finally {
      place.remove();
    }
  });

  test('cannot be written refuses in words, changes nothing, and works again afterwards', async () => {
    const folder = await closedFolder();
    const NOBODY = 65_534;
    // As another user, whom the file modes bind; root they do not.
    chmodSync(folder, 0o755);
    for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
      const path = join(folder, name);
      chmodSync(path, name.includes('.') ? 0o444 : 0o555);
      chownSync(path, 0, 0);
    }
    const before = sha256(readFileSync(join(folder, 'trotwell.sqlite')));
    const worker = start('tryAll', folder, '', [], { uid: NOBODY, gid: NOBODY });
    await worker.ended();
    const said = worker.lines.join('\n');
    expect(said).toContain('closed');
    expect(said).not.toContain('internal');
    expect(said).toMatch(/cannot be written to/);
    expect(sha256(readFileSync(join(folder, 'trotwell.sqlite')))).toBe(before);
    expect(existsSync(join(folder, 'restore'))).toBe(false);
    expect(await owners(folder)).toBe(4);
  }, 60_000);

  test('may not be looked into is no first start', async () => {
    const folder = await closedFolder();
    chmodSync(folder, 0o700);
    const worker = start('tryAll', folder, '', [], { uid: 65_534, gid: 65_534 });
    await worker.ended();
    const said = worker.lines.join('\n');
    expect(said).toContain('closed');
    expect(said).toMatch(
      /app\/status .*"kind":"unreadable","message":"The folder of records cannot/,
    );
  });

  // A folder that cannot be renamed: on Windows any program that looks into it does the same.
  test.each([
    ['is a disk of its own', 'mount -t tmpfs tmpfs', 'umount'],
    ['may not be changed', 'chattr +i', 'chattr -i'],
  ])(
    'with attachments that %s: a restore is done or leaves no trace',
    async (_what, hold, free) => {
      const folder = await closedFolder();
      const files = join(folder, 'files');
      mkdirSync(files, { recursive: true });
      try {
        execFileSync('sh', ['-c', `${hold} "$0"`, files], { stdio: 'ignore' });
      } catch {
        console.log(`Restore: not tried here (${hold})`);
        return;
      }
      try {
        const desk = testService(folder, '2026-03-05');
        const { name } = (await desk.ok('backup/status', {})).kept[0]!;
        const input = { source: { name }, passphrase: null, workId: randomUUID() };
        const answer = await desk.service.call('backup/restore', input);
        expect(answer.ok ? '' : answer.error.kind).toBe('storage');
        await desk.ok('clients/save', { id: null, client: { ...blankClient(), name: 'Eve' } });
        await desk.service.close();
      } finally {
        execFileSync('sh', ['-c', `${free} "$0"`, files]);
      }
      expect(existsSync(join(folder, 'restore'))).toBe(false);
      expect(await owners(folder)).toBe(5);
    },
  );
});
