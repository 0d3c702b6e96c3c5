import type { Visit } from '../../contract/contract.ts';
import { fromRow } from '../../contract/records/columns.ts';
import { KEPT } from '../../contract/records/stored.ts';
import type { Db, VisitRow } from '../database/schema.ts';
import { readVisitParts, type VisitParts } from './parts.ts';

/** The visits of a dog, oldest first, each with all that belongs to it. */
export async function readVisits(db: Db, dogId: string): Promise<Visit[]> {
  const rows = await db
    .selectFrom('visit')
    .selectAll()
    .where('dogId', '=', dogId)
    .where('binnedAt', 'is', null)
    .orderBy('day')
    .orderBy('createdAt')
    .execute();
  if (rows.length === 0) return [];
  const partsOf = await readVisitParts(
    db,
    rows.map(({ id }) => id),
  );
  return rows.map((row) => ({ ...visitFromRow(row), ...partsOf(row.id) }));
}

/** One visit, in the bin or not; null when there is none. */
export async function readVisit(db: Db, id: string): Promise<Visit | null> {
  const row = await db.selectFrom('visit').selectAll().where('id', '=', id).executeTakeFirst();
  if (row === undefined) return null;
  const partsOf = await readVisitParts(db, [id]);
  return { ...visitFromRow(row), ...partsOf(id) };
}

const visitFromRow = (row: VisitRow): Omit<Visit, keyof VisitParts> => fromRow(KEPT.visit, row);
