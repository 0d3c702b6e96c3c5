import { mkdirSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { FILE_PURPOSES } from '../../electron/contract/files/purposes.ts';
import { boot } from './support/boot.ts';

let folder: string;
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- a report in JSON, asserted below
let seen: any;

const RESTORE = /^trotwell:\/\/app\/index\.html#\/restore\?file=[\w-]{32}&name=(.+)$/;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'trotwell-open-'));
  writeFileSync(join(folder, 'first.trotwell'), 'not a backup at all');
  writeFileSync(join(folder, 'empty.trotwell'), '');
  writeFileSync(join(folder, 'notes.txt'), 'notes');
  mkdirSync(join(folder, 'folder.trotwell'));
  writeFileSync(join(folder, 'huge.trotwell'), '');
  truncateSync(join(folder, 'huge.trotwell'), FILE_PURPOSES.backup.maxBytes + 1);
  seen = boot({ TROTWELL_DATA: join(folder, 'data'), STAND_IN_FILES: folder }, 'openFiles.mjs', [
    join(folder, 'first.trotwell'),
  ]);
}, 90_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The name of the file in the one address the window was led to. */
function nameIn({ addresses }: { addresses: string[] }): string {
  expect(addresses).toHaveLength(1);
  const found = RESTORE.exec(addresses[0]!);
  return found === null ? expect.fail(addresses[0]!) : decodeURIComponent(found[1]!);
}

// The built main bundle on the stand-in of the `electron` module, as in shell.test.ts.
describe('a backup file opened from outside', () => {
  test('by the words of the start command leads the new window to it', () => {
    expect(nameIn(seen.first)).toBe('first.trotwell');
    expect(seen.firstLook).toMatchObject({
      ok: false,
      error: { message: 'This file is not a backup of Trotwell.' },
    });
  });

  test('by the system’s event leads the window to it, and the page can look into it', () => {
    expect(nameIn(seen.event)).toBe('Löwe & Sohn.trotwell');
    expect(seen.eventLook).toMatchObject({ ok: true, value: { protectedByPassphrase: false } });
    expect(seen.prevented).toBeGreaterThan(0);
  });

  test('by a second start leads the first window to it, as a path or as an address', () => {
    expect(nameIn(seen.second)).toBe('Löwe & Sohn.trotwell');
    expect(nameIn(seen.asAddress)).toBe('Löwe & Sohn.trotwell');
    expect(seen.windows).toBe(1);
  });

  test('by a start of the browser window on the same records leads the first window to it', () => {
    expect(nameIn(seen.byHost)).toBe('Löwe & Sohn.trotwell');
    expect(seen.byHost.stdout).toContain('already running');
    expect(seen.byHost.stdout).not.toContain('start=');
  });

  test('reaches the page as a token of its own, never as a path', () => {
    const tokens = seen.all.flatMap((address: string) => /file=([\w-]+)/.exec(address)?.[1] ?? []);
    expect(tokens).toHaveLength(5);
    expect(new Set(tokens).size).toBe(5);
    for (const part of [folder, encodeURIComponent(folder)]) {
      expect(JSON.stringify([seen.all, seen.firstLook, seen.eventLook])).not.toContain(part);
    }
  });

  test.each([
    ['missing.trotwell', /is not there/],
    ['folder.trotwell', /is not a file/],
    ['huge.trotwell', /at most/],
    ['empty.trotwell', /is empty/],
    ['notes.txt', /opens its own backups only.*\.trotwell/],
    ['locked', /locked/],
  ])('is refused with its reason, and the window stays where it is: %s', (name, reason) => {
    expect(seen.refused[name].addresses).toEqual([]);
    expect(seen.refused[name].details).toEqual([expect.stringMatching(reason)]);
  });

  test('is left alone once the records are closing', () => {
    expect(seen.afterQuit).toBe(1);
  });

  test('before the start is done waits for it', () => {
    const early = boot(
      {
        TROTWELL_DATA: join(folder, 'early'),
        STAND_IN_FILES: folder,
        STAND_IN_EARLY: join(folder, 'first.trotwell'),
      },
      'openFiles.mjs',
    );
    expect(nameIn(early.first)).toBe('first.trotwell');
    expect(early.windows).toBe(1);
  });
});
