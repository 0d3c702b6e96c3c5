import { sql } from 'kysely';
import type { BinKind, RecordCounts } from '../../contract/keeping/bin.ts';
import type { Db } from '../database/schema.ts';

/** The ids of a record and of all that belongs to it. */
export interface Scope {
  readonly clientIds: readonly string[];
  readonly dogIds: readonly string[];
  readonly visitIds: readonly string[];
  readonly attachmentIds: readonly string[];
}

/** One parameter, however many ids. */
export const oneOf = (ids: readonly string[]) =>
  sql<string>`(select value from json_each(${JSON.stringify(ids)}))`;

/** What belongs to a record; `hiddenToo` counts in what already lies in the bin. */
export async function scopeOf(
  db: Db,
  kind: BinKind,
  id: string,
  hiddenToo: boolean,
): Promise<Scope> {
  const clientIds = kind === 'client' ? [id] : [];
  const dogIds = kind === 'dog' ? [id] : await dogsOf(db, clientIds, hiddenToo);
  const visitIds = kind === 'visit' ? [id] : await visitsOf(db, dogIds, hiddenToo);
  const attachmentIds = kind === 'attachment' ? [id] : await filesAt(db, visitIds, hiddenToo);
  return { clientIds, dogIds, visitIds, attachmentIds };
}

async function dogsOf(db: Db, clientIds: readonly string[], hiddenToo: boolean): Promise<string[]> {
  let select = db.selectFrom('dog').select('id').where('clientId', 'in', oneOf(clientIds));
  if (!hiddenToo) select = select.where('binnedAt', 'is', null);
  return (await select.execute()).map(({ id }) => id);
}

async function visitsOf(db: Db, dogIds: readonly string[], hiddenToo: boolean): Promise<string[]> {
  let select = db.selectFrom('visit').select('id').where('dogId', 'in', oneOf(dogIds));
  if (!hiddenToo) select = select.where('binnedAt', 'is', null);
  return (await select.execute()).map(({ id }) => id);
}

async function filesAt(db: Db, visitIds: readonly string[], hiddenToo: boolean): Promise<string[]> {
  let select = db.selectFrom('attachment').select('id').where('visitId', 'in', oneOf(visitIds));
  if (!hiddenToo) select = select.where('binnedAt', 'is', null);
  return (await select.execute()).map(({ id }) => id);
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
