import { randomUUID } from 'node:crypto';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { CamelCasePlugin, Kysely, SqliteDialect } from 'kysely';
import type { Desk } from './context.ts';
import { localDay } from './day.ts';
import { foldIn, openDatabase } from './database.ts';
import type { Schema } from './schema.ts';

/** The name of each practice's file inside the data folder. */
export const DATABASE_FILES = { own: 'trotwell.sqlite', demo: 'demonstration.sqlite' } as const;

export interface OpenDesk extends Desk {
  close(): Promise<void>;
}

/** Opens one practice. @throws Refusal when its file cannot be used. */
export function openDesk(folder: string, which: 'own' | 'demo', clock: () => Date): OpenDesk {
  const raw = openDatabase(join(folder, DATABASE_FILES[which]), clock().toISOString());
  const db = new Kysely<Schema>({
    dialect: new SqliteDialect({ database: raw }),
    plugins: [new CamelCasePlugin({ underscoreBeforeDigits: true })],
  });
  return {
    db,
    raw,
    which,
    folder,
    today: () => localDay(clock()),
    instant: () => clock().toISOString(),
    newId: randomUUID,
    close: async () => {
      try {
        foldIn(raw);
      } catch {
        // A full disk or a damaged file: the log keeps what could not be folded in until next time.
      }
      await db.destroy();
      // Kysely closes only what it has been asked something of.
      raw.close();
    },
  };
}

/** Removes the demonstration's file, so that it opens as new. */
export function removeDemo(folder: string): void {
  const file = join(folder, DATABASE_FILES.demo);
  for (const suffix of ['', '-wal', '-shm']) rmSync(`${file}${suffix}`, { force: true });
}
