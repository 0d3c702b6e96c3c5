import { randomUUID } from 'node:crypto';
import { existsSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { CamelCasePlugin, Kysely, SqliteDialect, type Driver } from 'kysely';
import type { Refusal } from '../../contract/errors.ts';
import type { Context } from './context.ts';
import { localDay } from '../day.ts';
import { searchText } from '../dogs/searchText.ts';
import { foldIn, openDatabase } from './database.ts';
import { openForReading } from './reading.ts';
import type { Schema } from './schema.ts';
import { isTrouble } from './trouble.ts';

/** The name of each practice's file inside the data folder. */
export const DATABASE_FILES = { own: 'trotwell.sqlite', demo: 'demonstration.sqlite' } as const;

export interface OpenContext extends Context {
  /** Why nothing can be saved, where the records could be opened for reading only; else null. */
  readonly limited: Refusal | null;
  close(): Promise<void>;
}

/**
 * Opens one practice; for reading only where its disk is full or cannot be written.
 * @throws Refusal when its file cannot be used
 */
export function openContext(folder: string, which: 'own' | 'demo', clock: () => Date): OpenContext {
  const file = join(folder, DATABASE_FILES[which]);
  const { raw, limited } = openFile(file, clock().toISOString());
  const db = queriesOn(raw);
  return {
    db,
    raw,
    which,
    folder,
    limited,
    today: () => localDay(clock()),
    instant: () => clock().toISOString(),
    newId: randomUUID,
    close: async () => {
      try {
        if (limited === null) foldIn(raw);
      } catch {
        // A full disk or a damaged file: the log keeps what could not be folded in until next time.
      }
      await db.destroy();
      // Kysely closes only what it has been asked something of.
      raw.close();
    },
  };
}

/** Typed queries on an open file, which may ask for text as it is searched where none is kept so. */
export function queriesOn(raw: Database): Kysely<Schema> {
  raw.function('as_searched', { deterministic: true }, (text: unknown) => searchText(String(text)));
  return new Kysely<Schema>({
    dialect: new PatientDialect(raw),
    plugins: [new CamelCasePlugin({ underscoreBeforeDigits: true })],
  });
}

function openFile(file: string, instant: string): { raw: Database; limited: Refusal | null } {
  try {
    return { raw: openDatabase(file, instant), limited: null };
  } catch (error) {
    if (!isTrouble(error, 'disk full', 'unwritable')) throw error;
    if (!existsSync(file) || statSync(file).size === 0) throw error;
    return { raw: openForReading(file, error.error.trouble!), limited: error };
  }
}

/**
 * SQLite takes a transaction back by itself when the disk is full. Asked to do it again it answers
 * with an error, and that one would hide the first.
 */
class PatientDialect extends SqliteDialect {
  readonly #raw: Database;

  constructor(raw: Database) {
    super({ database: raw });
    this.#raw = raw;
  }

  override createDriver(): Driver {
    const driver = super.createDriver();
    const rollback = driver.rollbackTransaction.bind(driver);
    driver.rollbackTransaction = async (connection) => {
      if (this.#raw.inTransaction) await rollback(connection);
    };
    return driver;
  }
}

/** Removes the demonstration's file, so that it opens as new. */
export function removeDemo(folder: string): void {
  const file = join(folder, DATABASE_FILES.demo);
  for (const suffix of ['', '-wal', '-shm']) rmSync(`${file}${suffix}`, { force: true });
}
