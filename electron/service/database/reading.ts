import { copyFileSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import BetterSqlite3, { type Database } from 'better-sqlite3';
import type { Trouble } from '../../contract/errors.ts';
import { hasLog } from '../backup/whole.ts';
import { assertOursAndNotNewer } from './database.ts';
import { pending, schemaVersion } from './migrate.ts';
import { MIGRATIONS } from '../migrations/index.ts';
import { troubled } from './trouble.ts';

// Records on a disk that is full or cannot be written. SQLite wants to write beside the file even to
// read it, so they are read into memory, and nothing on their disk is touched.

/**
 * Opens records for reading only.
 * @param because what the disk has against writing
 * @throws Refusal or SqliteError when they cannot be read either, or are of an older schema
 */
export function openForReading(file: string, because: Trouble): Database {
  const db = hasLog(file) ? openWithLog(file) : inMemory(file);
  try {
    db.pragma('query_only = ON');
    db.pragma('trusted_schema = OFF');
    assertOursAndNotNewer(db, MIGRATIONS);
    if (pending(schemaVersion(db), MIGRATIONS).length === 0) return db;
    throw troubled(
      because,
      'The records are of an older version of Trotwell and have to be brought to this one first, but their disk is full or cannot be written.',
    );
  } catch (error) {
    db.close();
    throw error;
  }
}

/** A closed database; its bytes are marked as one without a log (sqlite.org/fileformat2.html, 1.3). */
function inMemory(file: string): Database {
  return new BetterSqlite3(readFileSync(file).fill(1, 18, 20));
}

/** A killed program left a log: the two are put together where there is room, or in this process. */
function openWithLog(file: string): Database {
  const elsewhere = mkdtempSync(join(tmpdir(), 'trotwell-reading-'));
  try {
    const copy = join(elsewhere, 'records.sqlite');
    for (const end of ['', '-wal']) copyFileSync(`${file}${end}`, `${copy}${end}`);
    const db = new BetterSqlite3(copy);
    db.pragma('journal_mode = DELETE');
    db.close();
    return inMemory(copy);
  } catch {
    return withOwnIndex(file);
  } finally {
    rmSync(elsewhere, { recursive: true, force: true });
  }
}

/** Held for itself, SQLite keeps the index of the log in memory instead of beside it. */
function withOwnIndex(file: string): Database {
  const db = new BetterSqlite3(file);
  db.pragma('locking_mode = EXCLUSIVE');
  return db;
}
