import { closeSync, existsSync, openSync } from 'node:fs';
import { dirname, join } from 'node:path';
import BetterSqlite3, { type Database } from 'better-sqlite3';
import { assertNotCutOff, assertWhole, hasLog } from '../backup/whole.ts';
import { makeFolder } from '../backup/durable.ts';
import { snapshot } from '../backup/snapshot.ts';
import { backupsFolder, nextName } from '../backup/folder.ts';
import { migrate, pending, schemaVersion } from './migrate.ts';
import { MIGRATIONS } from '../migrations/index.ts';
import type { Migration } from '../migrations/migration.ts';
import { assertRuntime } from './runtime.ts';
import { whyNothingIsTaken } from './probe.ts';
import { storageRefusal, troubled } from './trouble.ts';

/** "TROT" in ASCII: marks the file as ours. */
const APPLICATION_ID = 0x54524f54;

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
  try {
    makeFolder(dirname(file));
    const existed = existsSync(file);
    // Left by a start that was killed or lost its power: looked at closely, once.
    const interrupted = hasLog(file);
    if (existed) assertNotCutOff(file);
    // SQLite would make it readable by others; what lies beside it gets its mode from it.
    else closeSync(openSync(file, 'a', 0o600));
    const db = new BetterSqlite3(file, { timeout: 2000 });
    try {
      assertOursAndNotNewer(db, migrations);
      if (interrupted) assertWhole(db, 'quick_check');
      if (existed && schemaVersion(db) > 0 && pending(schemaVersion(db), migrations).length > 0) {
        backUpBeforeMigration(db, file, instant);
      }
      setUp(db);
      migrate(db, migrations);
      // What SQLite knows of the tables' sizes may be from before a large import: joins would crawl.
      whereThereIsRoom(() => db.pragma('optimize = 0x10002'));
      return db;
    } catch (error) {
      db.close();
      throw error;
    }
  } catch (error) {
    throw whyNotOpened(error, dirname(file));
  }
}

/** SQLite does not say why it could not begin a file; whether the folder takes one at all tells. */
function whyNotOpened(error: unknown, folder: string): unknown {
  const unopened =
    error instanceof BetterSqlite3.SqliteError && error.code.startsWith('SQLITE_CANTOPEN');
  return storageRefusal((unopened ? whyNothingIsTaken(folder) : null) ?? error);
}

/** Does what is of use only, and not needed. */
function whereThereIsRoom(action: () => void): void {
  try {
    action();
  } catch (error) {
    const known = storageRefusal(error);
    if (known === error) throw error;
  }
}

/** Prepares the file for closing: nothing is left in its write-ahead log. */
export function foldIn(db: Database): void {
  db.pragma('optimize');
  db.pragma('wal_checkpoint(TRUNCATE)');
}

/** @throws Refusal for a file of another program or of a newer version of this one. */
export function assertOursAndNotNewer(db: Database, migrations: readonly Migration[]): void {
  const applicationId = db.pragma('application_id', { simple: true }) as number;
  const version = schemaVersion(db);
  const tables = db.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() as number;
  const fresh = applicationId === 0 && version === 0 && tables === 0;
  if (!fresh && applicationId !== APPLICATION_ID) {
    throw troubled(
      'foreign',
      'The file of records belongs to another program; it was not touched.',
    );
  }
  if (version > migrations.length) {
    throw troubled(
      'newer',
      `The records were written by a newer Trotwell (schema ${version}, this one knows ${migrations.length}); ` +
        'they were not touched. Install the newer version to open them.',
    );
  }
}

function setUp(db: Database): void {
  db.pragma('journal_mode = WAL');
  // The driver drops to NORMAL in WAL; a power cut must not lose an acknowledged save.
  db.pragma('synchronous = FULL');
  db.pragma('foreign_keys = ON');
  db.pragma('trusted_schema = OFF');
  // What is removed is overwritten, not only let go of.
  db.pragma('secure_delete = ON');
  db.pragma('cell_size_check = ON');
  const applicationId = db.pragma('application_id', { simple: true }) as number;
  if (applicationId !== APPLICATION_ID) db.pragma(`application_id = ${APPLICATION_ID}`);
}

function backUpBeforeMigration(db: Database, file: string, instant: string): void {
  const folder = dirname(file);
  const name = nextName(folder, `before-schema-${schemaVersion(db) + 1}`, instant);
  snapshot(db, join(backupsFolder(folder), name));
}
