import type { Database } from 'better-sqlite3';
import { Refusal } from '../../contract/errors.ts';
import type { Migration } from '../migrations/migration.ts';
import { storageRefusal } from './trouble.ts';

/** The version of the schema in the file, 0 for an empty one. */
export function schemaVersion(db: Database): number {
  return db.pragma('user_version', { simple: true }) as number;
}

/** The migrations a file at `version` still needs, in order. */
export function pending(version: number, migrations: readonly Migration[]): Migration[] {
  return migrations.filter((migration) => migration.version > version);
}

/**
 * Brings the file to the newest schema. Each migration is one transaction that also moves
 * `user_version`, so a failing step leaves the file at the version before it.
 * @throws Refusal when a step fails or leaves dangling references.
 */
export function migrate(db: Database, migrations: readonly Migration[]): void {
  for (const migration of pending(schemaVersion(db), migrations)) {
    if (migration.version !== schemaVersion(db) + 1) {
      throw new Error(`Migration ${migration.version} is out of order.`);
    }
    applyOne(db, migration);
  }
}

function applyOne(db: Database, migration: Migration): void {
  // Foreign keys cannot be switched inside a transaction, and a table rebuild needs them off.
  db.pragma('foreign_keys = OFF');
  try {
    db.transaction(() => {
      db.exec(migration.sql);
      const dangling = db.pragma('foreign_key_check') as unknown[];
      if (dangling.length > 0) throw new Error(`${dangling.length} dangling references`);
      db.pragma(`user_version = ${migration.version}`);
    }).immediate();
  } catch (error) {
    throw notMigrated(migration, error);
  } finally {
    db.pragma('foreign_keys = ON');
  }
}

/** A disk that takes nothing is named as for every call; anything else is a fault of the step. */
function notMigrated({ version, name }: Migration, error: unknown): Refusal {
  const known = storageRefusal(error);
  const trouble = known instanceof Refusal ? known.error.trouble : undefined;
  const { message: words } = (trouble === undefined ? error : known) as Error;
  return new Refusal({
    kind: 'storage',
    message:
      `The records could not be brought to schema ${version} (${name}); they are unchanged. ${words}`.trim(),
    ...(trouble === undefined ? {} : { trouble }),
  });
}
