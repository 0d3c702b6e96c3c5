import { copyFileSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import BetterSqlite3, { type Database } from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openDatabase } from '../../electron/service/database/database.ts';
import { MIGRATIONS } from '../../electron/service/migrations/index.ts';

const INSTANT = '2026-11-25T12:00:00.000Z';
const GOLDEN = fileURLToPath(new URL('./golden/', import.meta.url));
const versions = readdirSync(GOLDEN).map((name) => Number(/^v(\d+)\.sqlite$/.exec(name)![1]));

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'trotwell-golden-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** What defines the schema; SQLite's own tables (statistics) come and go. */
function schemaOf(db: Database): unknown[] {
  return db
    .prepare(
      "SELECT type, name, tbl_name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' ORDER BY name",
    )
    .all();
}

/** Every row of every table of `names`, with the columns the older file has. */
function rowsOf(db: Database, columns: ReadonlyMap<string, readonly string[]>): unknown {
  return [...columns].map(([table, names]) => [
    table,
    db
      .prepare(`SELECT ${names.join(', ')} FROM ${table} ORDER BY ${names.join(', ')}`)
      .raw()
      .all(),
  ]);
}

function columnsOf(db: Database): Map<string, string[]> {
  const tables = db
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    .pluck()
    .all();
  return new Map(
    (tables as string[]).map((table) => [
      table,
      db.prepare('SELECT name FROM pragma_table_info(?)').pluck().all(table) as string[],
    ]),
  );
}

describe('files of released versions', () => {
  test('there is one for every version before the newest', () => {
    expect(versions.sort((a, b) => a - b)).toEqual(
      MIGRATIONS.slice(0, -1).map(({ version }) => version),
    );
  });

  test.each(versions)('version %i keeps every row and gets the schema of a new file', (version) => {
    const file = join(folder, 'trotwell.sqlite');
    copyFileSync(join(GOLDEN, `v${version}.sqlite`), file);
    const old = new BetterSqlite3(file, { readonly: true });
    expect(old.pragma('user_version', { simple: true })).toBe(version);
    const columns = columnsOf(old);
    const before = rowsOf(old, columns);
    old.close();

    const migrated = openDatabase(file, INSTANT);
    const fresh = openDatabase(join(folder, 'fresh.sqlite'), INSTANT);
    expect(schemaOf(migrated)).toEqual(schemaOf(fresh));
    expect(rowsOf(migrated, columns)).toEqual(before);
    expect(migrated.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(migrated.pragma('foreign_key_check')).toEqual([]);
    migrated.close();
    fresh.close();
  });
});
