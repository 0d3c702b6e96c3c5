import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import BetterSqlite3, { type Database } from 'better-sqlite3';
import { Refusal } from '../contract/errors.ts';
import { migrate, pending, schemaVersion } from './migrate.ts';
import { MIGRATIONS } from './migrations/index.ts';
import type { Migration } from './migrations/migration.ts';
import { assertRuntime } from './runtime.ts';

/** "TROT" in ASCII: marks the file as ours. */
export const APPLICATION_ID = 0x54524f54;

/**
 * Opens (creating it where needed) the database file, checks that it is ours, whole and not newer
 * than this program, backs it up before the first change of an existing file, and migrates it.
 * @throws Refusal that says what is wrong; the file is left untouched.
 */
export function openDatabase(
  file: string,
  instant: string,
  migrations: readonly Migration[] = MIGRATIONS,
): Database {
  assertRuntime();
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  const existed = existsSync(file);
  const db = connect(file);
  try {
    assertOursAndNotNewer(db, migrations);
    if (existed && schemaVersion(db) > 0 && pending(schemaVersion(db), migrations).length > 0) {
      backUpBeforeMigration(db, file, instant);
    }
    setUp(db);
    migrate(db, migrations);
    return db;
  } catch (error) {
    db.close();
    throw storageRefusal(error);
  }
}

/** Prepares the file for closing: nothing is left in its write-ahead log. */
export function foldIn(db: Database): void {
  db.pragma('optimize');
  db.pragma('wal_checkpoint(TRUNCATE)');
}

/** Turns an error of the database driver into an answer; others pass through as they are. */
export function storageRefusal(error: unknown): unknown {
  if (!(error instanceof BetterSqlite3.SqliteError)) return error;
  const message = storageMessage(error.code);
  return message === null ? error : new Refusal({ kind: 'storage', message });
}

/** Null for what is a fault of the program (a wrong statement), not of disk or file. */
function storageMessage(code: string): string | null {
  if (code === 'SQLITE_NOTADB') return 'The file of records is not a database; it was not touched.';
  if (code.startsWith('SQLITE_CORRUPT')) {
    return 'The file of records is damaged; it was not touched. Restore the latest backup.';
  }
  if (code.startsWith('SQLITE_FULL'))
    return 'The disk is full; nothing was saved. Make room and try again.';
  if (code.startsWith('SQLITE_READONLY') || code === 'SQLITE_CANTOPEN') {
    return 'The folder of records cannot be written to; nothing was saved.';
  }
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) {
    return 'Another program holds the records; nothing was saved. Close it and try again.';
  }
  if (code.startsWith('SQLITE_CONSTRAINT'))
    return 'The records refused an impossible value; nothing was saved.';
  if (code.startsWith('SQLITE_IOERR')) return 'The disk did not answer; nothing was saved.';
  return null;
}

function connect(file: string): Database {
  try {
    return new BetterSqlite3(file, { timeout: 2000 });
  } catch (error) {
    throw storageRefusal(error);
  }
}

function assertOursAndNotNewer(db: Database, migrations: readonly Migration[]): void {
  const applicationId = db.pragma('application_id', { simple: true }) as number;
  const version = schemaVersion(db);
  const tables = db.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() as number;
  const fresh = applicationId === 0 && version === 0 && tables === 0;
  if (!fresh && applicationId !== APPLICATION_ID) {
    throw new Refusal({
      kind: 'storage',
      message: 'The file of records belongs to another program; it was not touched.',
    });
  }
  if (version > migrations.length) {
    throw new Refusal({
      kind: 'storage',
      message:
        `The records were written by a newer Trotwell (schema ${version}, this one knows ${migrations.length}); ` +
        'they were not touched. Install the newer version to open them.',
    });
  }
}

function setUp(db: Database): void {
  db.pragma('journal_mode = WAL');
  // The driver drops to NORMAL in WAL; a power cut must not lose an acknowledged save.
  db.pragma('synchronous = FULL');
  db.pragma('foreign_keys = ON');
  db.pragma('trusted_schema = OFF');
  db.pragma('cell_size_check = ON');
  const applicationId = db.pragma('application_id', { simple: true }) as number;
  if (applicationId !== APPLICATION_ID) db.pragma(`application_id = ${APPLICATION_ID}`);
}

/** Writes a checked copy beside the file: temporary name, check, fsync, rename. */
function backUpBeforeMigration(db: Database, file: string, instant: string): void {
  const folder = join(dirname(file), 'backups');
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const stamp = instant.replace(/[:.]/g, '-');
  const target = join(folder, `before-schema-${schemaVersion(db) + 1}-${stamp}.sqlite`);
  const temporary = `${target}.part`;
  rmSync(temporary, { force: true });
  db.prepare('VACUUM INTO ?').run(temporary);
  assertWhole(temporary);
  const handle = openSync(temporary, 'r+');
  fsyncSync(handle);
  closeSync(handle);
  renameSync(temporary, target);
}

function assertWhole(file: string): void {
  const copy = new BetterSqlite3(file, { readonly: true });
  try {
    if (copy.pragma('quick_check', { simple: true }) !== 'ok') {
      throw new Refusal({
        kind: 'storage',
        message:
          'The backup before the change of schema failed its check; the records are unchanged.',
      });
    }
  } finally {
    copy.close();
  }
}
