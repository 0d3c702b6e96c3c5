import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { Refusal } from '../../electron/contract/errors.ts';
import { openDatabase } from '../../electron/service/database/database.ts';
import { MIGRATIONS } from '../../electron/service/migrations/index.ts';
import type { Migration } from '../../electron/service/migrations/migration.ts';

const INSTANT = '2026-03-02T12:00:00.000Z';
let folder: string;
let file: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'trotwell-migrate-'));
  file = join(folder, 'trotwell.sqlite');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const next = (sql: string): Migration[] => [
  ...MIGRATIONS,
  { version: MIGRATIONS.length + 1, name: 'next', sql },
];

function storageMessage(action: () => unknown): string {
  try {
    action();
  } catch (error) {
    if (error instanceof Refusal && error.error.kind === 'storage') return error.error.message;
    throw error;
  }
  return expect.fail('nothing was refused');
}

describe('migrations', () => {
  test('are numbered from 1 without gaps', () => {
    expect(MIGRATIONS.map(({ version }) => version)).toEqual(
      MIGRATIONS.map((_, index) => index + 1),
    );
  });

  test('back an existing file up before its first change, and only then', () => {
    openDatabase(file, INSTANT).close();
    expect(readdirSync(folder)).not.toContain('backups');
    openDatabase(file, INSTANT, next('ALTER TABLE dog ADD COLUMN tag TEXT')).close();
    const backups = readdirSync(join(folder, 'backups'));
    expect(backups).toHaveLength(1);
    const backup = new BetterSqlite3(join(folder, 'backups', backups[0]!), { readonly: true });
    expect(backup.pragma('user_version', { simple: true })).toBe(MIGRATIONS.length);
    expect(backup.pragma('integrity_check', { simple: true })).toBe('ok');
    backup.close();
  });

  test('leave the file as it was when a step fails half way', () => {
    openDatabase(file, INSTANT).close();
    const broken = next('ALTER TABLE dog ADD COLUMN tag TEXT; INSERT INTO nowhere VALUES (1)');
    expect(storageMessage(() => openDatabase(file, INSTANT, broken))).toContain('unchanged');
    const db = new BetterSqlite3(file, { readonly: true });
    expect(db.pragma('user_version', { simple: true })).toBe(MIGRATIONS.length);
    const columns = db.prepare("SELECT name FROM pragma_table_info('dog')").pluck().all();
    db.close();
    expect(columns).not.toContain('tag');
  });

  test('refuse a step that leaves dangling references', () => {
    openDatabase(file, INSTANT).close();
    const dangling = next(
      "INSERT INTO visit_sign VALUES ('00000000-0000-4000-8000-000000000000', 0, 'cough')",
    );
    expect(storageMessage(() => openDatabase(file, INSTANT, dangling))).toContain('dangling');
  });
});

describe('files that are not for this program', () => {
  test('from a newer version are refused and left untouched', () => {
    openDatabase(file, INSTANT, next('ALTER TABLE dog ADD COLUMN tag TEXT')).close();
    const before = readFileSync(file);
    expect(storageMessage(() => openDatabase(file, INSTANT))).toContain('newer');
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  test('of another program are refused and left untouched', () => {
    const other = new BetterSqlite3(file);
    other.exec('CREATE TABLE theirs (x)');
    other.close();
    const before = readFileSync(file);
    expect(storageMessage(() => openDatabase(file, INSTANT))).toContain('another program');
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  test('with garbage inside are refused and left untouched', () => {
    writeFileSync(file, 'not a database, '.repeat(500));
    const before = readFileSync(file);
    expect(storageMessage(() => openDatabase(file, INSTANT))).toContain('not a database');
    expect(readFileSync(file).equals(before)).toBe(true);
  });
});
