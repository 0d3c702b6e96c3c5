import BetterSqlite3, { type Database } from 'better-sqlite3';
import { Refusal } from '../../contract/errors.ts';
import { assertOursAndNotNewer } from '../database/database.ts';
import { migrate } from '../database/migrate.ts';
import { MIGRATIONS } from '../migrations/index.ts';
import { contentsOf } from './contents.ts';
import { damaged, madeByNewer } from './refusals.ts';
import { syncFile } from './durable.ts';
import { assertWhole } from './whole.ts';

/** The row of the app lock as it stands in a database; undefined without a lock. */
export type LockRow = Record<string, unknown> | undefined;

/** The lock of this computer's records. */
export const readLockRow = (db: Database): LockRow =>
  db.prepare('SELECT * FROM app_lock').get() as LockRow;

/** Opens a database that may come from anyone: nothing in it runs, and every page is checked. */
export function openStrange(file: string, options: { readonly: boolean }): Database {
  const db = new BetterSqlite3(file, options);
  db.pragma('trusted_schema = OFF');
  db.pragma('cell_size_check = ON');
  return db;
}

/**
 * Checks an unpacked database and brings it to this version's schema. It ends as one file without a
 * log, on the disk.
 * @param lock the lock to take over from the present records; null to leave what is in the file
 * @returns the contents of attachments that it names
 * @throws Refusal when it is not whole, not ours, or from a newer version
 */
export function prepareRecords(
  file: string,
  lock: { readonly row: LockRow } | null,
): readonly string[] {
  const db = openStrange(file, { readonly: false });
  try {
    assertOursAndNotNewer(db, MIGRATIONS);
    assertWhole(db, 'integrity_check');
    if ((db.pragma('foreign_key_check') as unknown[]).length > 0) {
      throw damaged('its records refer to others that are not there');
    }
    db.pragma('journal_mode = DELETE');
    db.pragma('synchronous = FULL');
    migrate(db, MIGRATIONS);
    assertOurSchema(db);
    if (lock !== null) putLock(db, lock.row);
    return contentsOf(db);
  } catch (error) {
    throw asBackupTrouble(error);
  } finally {
    db.close();
    syncFile(file);
  }
}

/** A schema that is not to the letter ours was changed by hand: a trigger could do anything. */
function assertOurSchema(db: Database): void {
  const ours = new BetterSqlite3(':memory:');
  try {
    migrate(ours, MIGRATIONS);
    if (schemaText(db) !== schemaText(ours)) throw damaged('its tables are not those of Trotwell');
  } finally {
    ours.close();
  }
}

function schemaText(db: Database): string {
  const parts = db
    .prepare(
      "SELECT type, name, tbl_name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' ORDER BY type, name",
    )
    .raw()
    .all();
  return JSON.stringify(parts);
}

/** A passphrase of another day or computer must not lock this one's owner out. */
function putLock(db: Database, row: LockRow): void {
  db.exec('DELETE FROM app_lock');
  if (row === undefined) return;
  const names = Object.keys(row);
  db.prepare(
    `INSERT INTO app_lock (${names.join(', ')}) VALUES (${names.map((name) => `@${name}`).join(', ')})`,
  ).run(row);
}

/** What is wrong with the file of a backup is not wrong with the present records. */
export function asBackupTrouble(error: unknown): unknown {
  const corrupt =
    error instanceof BetterSqlite3.SqliteError && /^SQLITE_(CORRUPT|NOTADB)/.test(error.code);
  if (corrupt) return damaged('its database is not whole');
  if (!(error instanceof Refusal)) return error;
  if (error.error.trouble === 'damaged') return damaged('its database is not whole');
  if (error.error.trouble === 'newer') return madeByNewer();
  return error.error.trouble === 'foreign'
    ? new Refusal({
        kind: 'storage',
        message: 'The database in this backup is not one of Trotwell.',
      })
    : error;
}
