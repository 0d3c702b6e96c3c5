import { sql, type RawBuilder } from 'kysely';
import type { BinKind, RecordCounts } from '../../contract/keeping/bin.ts';
import { oneOf } from '../database/rows.ts';
import type { Db } from '../database/schema.ts';

/** The ids of a record and of all that belongs to it. */
export interface Scope {
  readonly clientIds: readonly string[];
  readonly dogIds: readonly string[];
  readonly visitIds: readonly string[];
  readonly attachmentIds: readonly string[];
}

/** What belongs to a record; `hiddenToo` counts in what already lies in the bin. */
export async function scopeOf(
  db: Db,
  kind: BinKind,
  id: string,
  hiddenToo: boolean,
): Promise<Scope> {
  const idsIn = async (table: 'dog' | 'visit' | 'attachment', within: RawBuilder<boolean>) => {
    const seen = hiddenToo ? sql`` : sql`and binned_at is null`;
    const { rows } = await sql<{ id: string }>`
      select id from ${sql.table(table)} where ${within} ${seen}`.execute(db);
    return rows.map((row) => row.id);
  };
  const clientIds = kind === 'client' ? [id] : [];
  const dogIds = kind === 'dog' ? [id] : await idsIn('dog', sql`client_id in ${oneOf(clientIds)}`);
  const visitIds = kind === 'visit' ? [id] : await idsIn('visit', sql`dog_id in ${oneOf(dogIds)}`);
  const attachmentIds =
    kind === 'attachment' ? [id] : await idsIn('attachment', sql`visit_id in ${oneOf(visitIds)}`);
  return { clientIds, dogIds, visitIds, attachmentIds };
}

/** How much a scope holds. */
export async function countsOf(db: Db, scope: Scope): Promise<RecordCounts> {
  const of = (table: 'plan' | 'foodDecision', ids: Scope) =>
    db
      .selectFrom(table)
      .select((eb) => eb.fn.countAll<number>().as('rows'))
      .where((eb) =>
        eb.or([eb('dogId', 'in', oneOf(ids.dogIds)), eb('visitId', 'in', oneOf(ids.visitIds))]),
      )
      .executeTakeFirstOrThrow();
  const ofDogs = (table: 'sessionResult' | 'weighing') =>
    db
      .selectFrom(table)
      .select((eb) => eb.fn.countAll<number>().as('rows'))
      .where('dogId', 'in', oneOf(scope.dogIds))
      .executeTakeFirstOrThrow();
  return {
    dogs: scope.dogIds.length,
    visits: scope.visitIds.length,
    plans: (await of('plan', scope)).rows,
    foodDecisions: (await of('foodDecision', scope)).rows,
    sessions: (await ofDogs('sessionResult')).rows,
    weighings: (await ofDogs('weighing')).rows,
    files: scope.attachmentIds.length,
  };
}
