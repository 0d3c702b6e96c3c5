import { createHash } from 'node:crypto';
import type { Erasure } from '../../contract/keeping/bin.ts';
import type { Context } from '../database/context.ts';
import { oneOf, putRow } from '../database/rows.ts';
import { badField } from '../refuse.ts';
import type { Db } from '../database/schema.ts';

/**
 * Keeps that records were removed, without personal data. Runs inside the transaction of it.
 * @param clientIds the owners who are gone with all their records
 */
export async function keepErasure(
  context: Context,
  db: Db,
  erasure: Omit<Erasure, 'id' | 'erasedAt'>,
  clientIds: readonly string[],
): Promise<void> {
  const id = context.newId();
  await db
    .insertInto('erasure')
    .values({
      ...erasure,
      id,
      erasedAt: context.instant(),
      insideRetention: erasure.insideRetention ? 1 : 0,
    })
    .execute();
  for (const clientId of clientIds) {
    await putRow(db, 'erasedOwner', 'mark', { mark: markOf(clientId), erasureId: id });
  }
}

/** The erasures, the latest first. */
export async function readErasures(db: Db): Promise<Erasure[]> {
  const rows = await db
    .selectFrom('erasure')
    .selectAll()
    .orderBy('erasedAt', 'desc')
    .orderBy('id')
    .execute();
  return rows.map((row) => ({
    ...row,
    insideRetention: row.insideRetention === 1,
  }));
}

/** Called for records inside the retention period. @throws Refusal (input) unless confirmed. */
export function assertMayRemove(insideRetentionConfirmed: boolean): void {
  if (insideRetentionConfirmed) return;
  throw badField(
    'insideRetentionConfirmed',
    'Removing inside the retention period must be confirmed: the records may have to be kept.',
  );
}

// An erasure keeps nothing of a person. So that an import does not bring an erased owner back
// unseen, it keeps a one-way mark of the record's number: that number is random, named nobody, and
// is gone itself. Only who holds the number already, in a bundle, can find its mark.

/** The mark of an owner's record, 64 hex digits. */
const markOf = (clientId: string): string =>
  createHash('sha256').update(`erased owner ${clientId.toLowerCase()}`).digest('hex');

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
