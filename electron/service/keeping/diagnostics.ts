import { existsSync, statSync } from 'node:fs';
import { release } from 'node:os';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { listBackups } from '../backup/folder.ts';
import type { Handlers } from '../database/context.ts';
import { DATABASE_FILES } from '../database/open.ts';
import { schemaVersion } from '../database/migrate.ts';

/** Rows of each table, by the name of the table. */
function counts(raw: Database): string[] {
  const tables = raw
    .prepare(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' ORDER BY name",
    )
    .pluck()
    .all() as string[];
  return tables.map((table) => {
    const rows = raw.prepare(`SELECT count(*) FROM "${table}"`).pluck().get() as number;
    return `${table}: ${rows}`;
  });
}

/** Size of a file in bytes; zero where there is none. */
const bytes = (file: string): number => (existsSync(file) ? statSync(file).size : 0);

/** How many backups made by themselves there are, and when the newest was made. */
function backups(folder: string): string {
  const [newest, ...others] = listBackups(folder);
  if (newest === undefined) return 'Backups: none';
  return `Backups: ${others.length + 1}, the newest of ${newest.madeAt}`;
}

export const diagnosticsHandlers: Handlers<'app/diagnostics'> = {
  'app/diagnostics': async ({ raw, which, folder, instant }) => {
    const file = join(folder, DATABASE_FILES[which]);
    const whole = raw.pragma('quick_check(1)', { simple: true }) === 'ok';
    return [
      `Taken: ${instant()}`,
      `Node ${process.versions.node}, SQLite ${raw.prepare('SELECT sqlite_version()').pluck().get()}`,
      // The folder is left out: its path often holds the name of a person.
      `System: ${process.platform} ${process.arch} ${release()}`,
      `Records: ${which}, schema ${schemaVersion(raw)}`,
      `File: ${bytes(file)} bytes, log ${bytes(`${file}-wal`)} bytes`,
      `Quick check: ${whole ? 'ok' : 'damaged'}`,
      backups(folder),
      'Rows:',
      ...counts(raw).map((line) => `  ${line}`),
    ].join('\n');
  },
};
