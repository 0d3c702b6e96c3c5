import { rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import BetterSqlite3, { type Database } from 'better-sqlite3';
import { makeFolder, putInPlace } from './durable.ts';
import { assertWhole, lookInto } from './whole.ts';

/**
 * Writes a checked copy of an open database: one file without a log, without the remains of what
 * was deleted. A temporary file first; it gets its name once it is whole and on the disk.
 * @throws Refusal when the copy fails its check; SqliteError when the disk or the source refuses.
 *   Nothing is left behind either way.
 */
export function snapshot(db: Database, target: string): void {
  makeFolder(dirname(target));
  const temporary = `${target}.part`;
  rmSync(temporary, { force: true });
  try {
    // SQLite writes into an empty file that is there, and leaves its mode as it is.
    writeFileSync(temporary, '', { mode: 0o600 });
    db.prepare('VACUUM INTO ?').run(temporary);
    lookInto(temporary, (copy) => assertWhole(copy, 'quick_check'));
    putInPlace(temporary, target);
  } catch (error) {
    rmSync(temporary, { force: true });
    // A broken page can look like a full disk: SQLite follows it to a place that does not exist.
    if (isFull(error)) assertWhole(db, 'quick_check');
    throw error;
  }
}

const isFull = (error: unknown): boolean =>
  error instanceof BetterSqlite3.SqliteError && error.code.startsWith('SQLITE_FULL');
