import { copyFileSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import BetterSqlite3, { type Database } from 'better-sqlite3';
import { DATABASE_FILES } from '../../../electron/service/database/open.ts';
import { createService, type Service } from '../../../electron/service/service.ts';
import { FONTS, PRINTER } from '../../service/support/desk.ts';

export const TODAY = '2026-03-02';
const NOON = new Date(`${TODAY}T12:00:00Z`);

export interface FuzzedDesk {
  readonly service: Service;
  readonly folder: string;
  readonly log: readonly string[];
  /** Changes whenever another connection commits anything. */
  version(): number;
  /** The files beside the database, by name; a refused passphrase is counted in one of its own. */
  files(): string;
  /** What SQLite finds wrong; empty when all is well. */
  faults(): unknown[];
  close(): Promise<void>;
}

const newFolder = (): string => mkdtempSync(join(tmpdir(), 'trotwell-fuzz-'));

function serviceOn(folder: string, log: string[] = []): Service {
  return createService({
    folder,
    fontsFolder: FONTS,
    printer: PRINTER,
    version: '0.0.0-test',
    clock: () => NOON,
    log: (line) => log.push(line),
  });
}

/** The demonstration's records as a file of their own, to start every call's fuzz from. */
export async function templateFile(): Promise<string> {
  const folder = newFolder();
  const service = serviceOn(folder);
  await service.call('app/open', { which: 'demo' });
  await service.close();
  return join(folder, DATABASE_FILES.demo);
}

/** A desk on a copy of the template, with the own practice open. */
export async function deskOn(template: string): Promise<FuzzedDesk> {
  const folder = newFolder();
  const file = join(folder, DATABASE_FILES.own);
  copyFileSync(template, file);
  const log: string[] = [];
  const service = serviceOn(folder, log);
  await service.call('app/open', { which: 'own' });
  // A later restore may put another file in this one's place: the watcher follows the name.
  const watcher: Database = new BetterSqlite3(file, { readonly: true });
  const version = watcher.prepare('PRAGMA data_version').pluck();
  return {
    service,
    folder,
    log,
    version: () => version.get() as number,
    files: () =>
      readdirSync(folder, { recursive: true, encoding: 'utf8' })
        .filter((name) => !/-(wal|shm)$/.test(name) && name !== 'lock-tries.json')
        .sort()
        .join('\n'),
    faults: () => [
      ...(watcher.pragma('integrity_check') as { integrity_check: string }[]).filter(
        ({ integrity_check }) => integrity_check !== 'ok',
      ),
      ...(watcher.pragma('foreign_key_check') as unknown[]),
    ],
    async close() {
      watcher.close();
      await service.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** A few ids and short texts of every table, so that samples name records that are there. */
export function wordsOf(template: string): string[] {
  const db = new BetterSqlite3(template, { readonly: true });
  const tables = db
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'")
    .pluck()
    .all() as string[];
  const words = tables.flatMap((table) => {
    const columns = db.prepare(`SELECT name FROM pragma_table_info(?)`).pluck().all(table);
    return (columns as string[]).flatMap((column) =>
      db
        .prepare(
          `SELECT DISTINCT "${column}" FROM "${table}"
           WHERE typeof("${column}") = 'text' AND length("${column}") BETWEEN 1 AND 40 LIMIT 4`,
        )
        .pluck()
        .all(),
    );
  });
  db.close();
  return [...new Set(words as string[])];
}

export function idsOfDogs(template: string): string[] {
  const db = new BetterSqlite3(template, { readonly: true });
  const ids = db.prepare('SELECT id FROM dog').pluck().all() as string[];
  db.close();
  return ids;
}

export function removeTemplate(template: string): void {
  if (existsSync(template)) rmSync(join(template, '..'), { recursive: true, force: true });
}
