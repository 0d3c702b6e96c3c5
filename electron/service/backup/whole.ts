import { closeSync, existsSync, openSync, readSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import BetterSqlite3, { type Database } from 'better-sqlite3';
import { troubled } from '../database/trouble.ts';

/** Looks into a database file of ours without changing it. */
export function lookInto<T>(file: string, look: (db: Database) => T): T {
  const db = new BetterSqlite3(file, { readonly: true });
  try {
    return look(db);
  } finally {
    db.close();
  }
}

/** True when the database was not closed: its log still holds something. */
export function hasLog(file: string): boolean {
  const log = `${file}-wal`;
  return existsSync(log) && statSync(log).size > 0;
}

/**
 * Has SQLite read the database through.
 * @throws Refusal when it finds something wrong
 */
export function assertWhole(db: Database, how: 'quick_check' | 'integrity_check'): void {
  if (db.pragma(how, { simple: true }) === 'ok') return;
  throw troubled('damaged', 'The file of records is damaged; it was not touched.');
}

const SQLITE = Buffer.from('SQLite format 3\0', 'latin1');

/**
 * SQLite opens a file whose end is missing without a word, and finds out when it gets there. This
 * compares the length with what the file's header says (sqlite.org/fileformat2.html, section 1.3).
 * @throws Refusal when the file is empty though there are backups of it, is no database, or is cut
 *   off
 */
export function assertNotCutOff(file: string): void {
  const { size } = statSync(file);
  if (hasLog(file)) return; // the log may hold what the file lacks; SQLite puts them together
  if (size === 0) {
    // A first start that was killed leaves an empty file too; but then nothing was ever backed up.
    const backups = join(dirname(file), 'backups');
    if (!existsSync(backups) || readdirSync(backups).length === 0) return;
    throw troubled('damaged', 'The file of records is empty; it was not touched.');
  }
  const header = Buffer.alloc(100);
  const handle = openSync(file, 'r');
  readSync(handle, header, 0, header.length, 0);
  closeSync(handle);
  if (!header.subarray(0, SQLITE.length).equals(SQLITE)) {
    throw troubled('damaged', 'The file of records is not a database; it was not touched.');
  }
  const pageSize = header.readUInt16BE(16) === 1 ? 65_536 : header.readUInt16BE(16);
  const pages = header.readUInt32BE(28);
  // The number of pages holds only where the two counters agree.
  const countHolds = header.readUInt32BE(24) === header.readUInt32BE(92);
  if (countHolds && size < pages * pageSize) {
    throw troubled('damaged', 'The end of the file of records is missing; it was not touched.');
  }
}
