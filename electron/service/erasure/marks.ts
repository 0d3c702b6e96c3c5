import { createHash } from 'node:crypto';
import { oneOf } from '../bin/scope.ts';
import type { Db } from '../database/schema.ts';

// An erasure keeps nothing of a person. So that an import does not bring an erased owner back
// unseen, it keeps a one-way mark of the record's number: that number is random, named nobody, and
// is gone itself. Only who holds the number already, in a bundle, can find its mark.

/** The mark of an owner's record, 64 hex digits. */
export const markOf = (clientId: string): string =>
  createHash('sha256').update(`erased owner ${clientId.toLowerCase()}`).digest('hex');

/** Keeps the marks of owners that are being erased. Runs inside the transaction of it. */
export async function keepMarks(
  db: Db,
  erasureId: string,
  clientIds: readonly string[],
): Promise<void> {
  for (const clientId of clientIds) {
    await db
      .insertInto('erasedOwner')
      .values({ mark: markOf(clientId), erasureId })
      .onConflict((conflict) => conflict.column('mark').doUpdateSet({ erasureId }))
      .execute();
  }
}

/** Those of the owners that were erased here. */
export async function erasedAmong(db: Db, clientIds: readonly string[]): Promise<Set<string>> {
  const marks = new Map(clientIds.map((id) => [markOf(id), id]));
  const found = await db
    .selectFrom('erasedOwner')
    .select('mark')
    .where('mark', 'in', oneOf([...marks.keys()]))
    .execute();
  return new Set(found.map(({ mark }) => marks.get(mark)!));
}

/** Forgets that an owner was erased, who has come back on purpose. */
export async function dropMarks(db: Db, clientIds: readonly string[]): Promise<void> {
  await db
    .deleteFrom('erasedOwner')
    .where('mark', 'in', oneOf(clientIds.map(markOf)))
    .execute();
}
