import type { Database } from 'better-sqlite3';
import type { RecordsSummary } from '../../contract/calls/backup.ts';

/** Counts what is in a database of any released schema; what lies in the bin is left out. */
export function summaryOf(db: Database): RecordsSummary {
  return {
    practiceName:
      (db.prepare('SELECT name FROM practice').pluck().get() as string | undefined) ?? '',
    schemaVersion: db.pragma('user_version', { simple: true }) as number,
    owners: countOf(db, 'client'),
    dogs: countOf(db, 'dog'),
    visits: countOf(db, 'visit'),
    plans: countOf(db, 'plan'),
    attachments: countOf(db, 'attachment'),
    newestEntry: newestEntry(db),
  };
}

function columnsOf(db: Database, table: string): ReadonlySet<string> {
  const names = db.prepare('SELECT name FROM pragma_table_info(?)').pluck().all(table);
  return new Set(names as string[]);
}

/** 0 where an older schema has no such table. */
function countOf(db: Database, table: string): number {
  const columns = columnsOf(db, table);
  if (columns.size === 0) return 0;
  const where = columns.has('binned_at') ? 'WHERE binned_at IS NULL' : '';
  return db.prepare(`SELECT count(*) FROM ${table} ${where}`).pluck().get() as number;
}

const DATED = ['client', 'dog', 'visit', 'plan', 'session_result', 'weighing', 'attachment'];

function newestEntry(db: Database): string | null {
  const instants = DATED.flatMap((table) => {
    const columns = columnsOf(db, table);
    const column = ['updated_at', 'created_at'].find((name) => columns.has(name));
    if (column === undefined) return [];
    return [db.prepare(`SELECT max(${column}) FROM ${table}`).pluck().get() as string | null];
  });
  return instants.reduce(
    (newest, at) => (at !== null && (newest === null || at > newest) ? at : newest),
    null,
  );
}
