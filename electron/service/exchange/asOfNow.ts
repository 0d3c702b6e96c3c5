import BetterSqlite3 from 'better-sqlite3';
import type { Context } from '../database/context.ts';
import { queriesOn } from '../database/open.ts';

/**
 * Runs `read` on the records as they stand when this is called, however long it takes and whatever
 * is saved meanwhile: a connection of its own, whose transaction begins at once.
 */
export async function asOfNow<T>(
  context: Context,
  read: (db: Context['db']) => Promise<T>,
): Promise<T> {
  // Records opened for reading only lie in memory, or are held, and do not change.
  if (context.raw.pragma('query_only', { simple: true }) === 1) return read(context.db);
  const raw = new BetterSqlite3(context.raw.name, { readonly: true });
  try {
    raw.pragma('trusted_schema = OFF');
    raw.exec('BEGIN');
    // What a transaction sees is settled when it first reads.
    raw.prepare('SELECT count(*) FROM sqlite_schema').get();
    return await read(queriesOn(raw));
  } finally {
    raw.close();
  }
}
