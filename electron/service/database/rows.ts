import { sql, type Insertable } from 'kysely';
import type { Context } from './context.ts';
import type { Db, Schema } from './schema.ts';

/** One parameter, however many ids. */
export const oneOf = (ids: readonly (string | number)[]) =>
  sql<string>`(select value from json_each(${JSON.stringify(ids)}))`;

/** The dogs that can be seen, with their owners: neither of the two lies in the bin. */
export const seenDogs = (db: Db) =>
  db
    .selectFrom('dog')
    .innerJoin('client', 'client.id', 'dog.clientId')
    .where('dog.binnedAt', 'is', null)
    .where('client.binnedAt', 'is', null);

/** What the service gives a new record whose changes are counted. */
export function firstRevision(context: Context) {
  const at = context.instant();
  return { id: context.newId(), createdAt: at, updatedAt: at, revision: 1 };
}

/** Writes a row, in place of the one with the same key where there is one. */
export async function putRow<T extends keyof Schema & string>(
  db: Db,
  table: T,
  key: keyof Schema[T] & string,
  row: Insertable<Schema[T]>,
): Promise<void> {
  await db
    .insertInto(table)
    .values(row as never)
    .onConflict((conflict) => conflict.column(key as never).doUpdateSet(row as never))
    .execute();
}

/** What is picked of rows, by dog. */
export function byDog<R extends { readonly dogId: string }, T>(
  rows: readonly R[],
  pick: (row: R) => T,
): Map<string, T[]> {
  const found = new Map<string, T[]>();
  for (const row of rows) {
    const list = found.get(row.dogId) ?? [];
    list.push(pick(row));
    found.set(row.dogId, list);
  }
  return found;
}
