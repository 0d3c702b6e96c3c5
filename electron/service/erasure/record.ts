import type { Erasure } from '../../contract/keeping/bin.ts';
import type { Context } from '../database/context.ts';
import { badField } from '../refuse.ts';
import type { Db } from '../database/schema.ts';
import { keepMarks } from './marks.ts';

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
  await keepMarks(db, id, clientIds);
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
