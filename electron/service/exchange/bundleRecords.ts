import { sql, type RawBuilder } from 'kysely';
import {
  DOGS,
  OWNERS,
  SESSIONS,
  VISITS,
  WEIGHINGS,
  type BundleRecords,
} from '../../contract/exchange/bundle.ts';
import { fromRow } from '../../contract/records/columns.ts';
import { FOOD_DECISIONS, PLANS } from '../../contract/records/decided.ts';
import { oneOf } from '../database/rows.ts';
import type { Db, Schema } from '../database/schema.ts';
import { readVisitParts } from '../visits/parts.ts';

type Where = RawBuilder<boolean>;

/** Records read, or written, before other questions get their turn. */
export const AT_ONCE = 250;

type Table = 'client' | 'dog' | 'visit' | 'plan' | 'sessionResult' | 'foodDecision' | 'weighing';

/**
 * Everything kept of some owners, or of all where `clientIds` is null, the bin included. Lists are
 * in an order that does not depend on the file, so that two reads can be compared.
 * @param pause awaited between slices; by itself the reading goes on without one
 */
export async function readBundleRecords(
  db: Db,
  clientIds: readonly string[] | null,
  pause: () => Promise<void> = () => Promise.resolve(),
): Promise<BundleRecords> {
  const among = (column: string) =>
    clientIds === null ? sql<boolean>`1` : sql<boolean>`${sql.ref(column)} in ${oneOf(clientIds)}`;
  const owned = among('client_id');
  const ofDog = sql<boolean>`dog_id in (select id from dog where ${owned})`;
  const read = <T extends Table, R>(table: T, where: Where, make: (row: Schema[T]) => R) =>
    inSlices<Schema[T], R>(db, {
      ...{ table, where, order: sql`created_at, id`, pause },
      make: (rows) => rows.map(make),
    });
  return {
    owners: await read('client', among('id'), (row) => fromRow(OWNERS, row)),
    dogs: await read('dog', owned, (row) => fromRow(DOGS, row)),
    visits: await readVisitRecords(db, ofDog, pause),
    plans: await read('plan', ofDog, (row) => fromRow(PLANS, row)),
    sessions: await read('sessionResult', ofDog, (row) => fromRow(SESSIONS, row)),
    foodDecisions: await read('foodDecision', ofDog, (row) => fromRow(FOOD_DECISIONS, row)),
    weighings: await read('weighing', ofDog, (row) => fromRow(WEIGHINGS, row)),
    attachments: await readAttachments(db, ofDog),
    history: await readHistory(db, owned, ofDog, pause),
  };
}

interface Sliced<Row, R> {
  readonly table: keyof Schema;
  readonly where: Where;
  readonly order: RawBuilder<unknown>;
  readonly pause: () => Promise<void>;
  make(rows: readonly Row[]): readonly R[] | Promise<readonly R[]>;
}

/** Finds the ids first, which is quick, and then reads so many rows at a time. */
async function inSlices<Row, R>(db: Db, sliced: Sliced<Row, R>): Promise<R[]> {
  const { table, where, order, pause, make } = sliced;
  const from = sql.table(table);
  const found = await sql<{ id: string | number }>`
    select id from ${from} where ${where} order by ${order}`.execute(db);
  const all: R[] = [];
  for (let at = 0; at < found.rows.length; at += AT_ONCE) {
    await pause();
    const ids = found.rows.slice(at, at + AT_ONCE).map(({ id }) => id);
    const { rows } = await sql<Row>`
      select * from ${from} where id in ${oneOf(ids)} order by ${order}`.execute(db);
    for (const record of await make(rows)) all.push(record);
  }
  return all;
}

const readHistory = (
  db: Db,
  owned: Where,
  ofDog: Where,
  pause: () => Promise<void>,
): Promise<BundleRecords['history']> =>
  inSlices<Schema['history'], BundleRecords['history'][number]>(db, {
    table: 'history',
    where: sql<boolean>`(client_id is not null and (${owned})) or (dog_id is not null and ${ofDog})`,
    order: sql`at, record_id, id`,
    pause,
    make: (rows) =>
      rows.map(
        ({ id: _id, before, ...row }) =>
          ({ ...row, before: JSON.parse(before) }) as BundleRecords['history'][number],
      ),
  });

const readVisitRecords = (
  db: Db,
  ofDog: Where,
  pause: () => Promise<void>,
): Promise<BundleRecords['visits']> =>
  inSlices<Schema['visit'], BundleRecords['visits'][number]>(db, {
    table: 'visit',
    where: ofDog,
    order: sql`created_at, id`,
    pause,
    async make(rows) {
      const partsOf = await readVisitParts(
        db,
        rows.map(({ id }) => id),
      );
      return rows.map((row) => ({ ...fromRow(VISITS, row), ...partsOf(row.id) }));
    },
  });

async function readAttachments(db: Db, ofDog: Where): Promise<BundleRecords['attachments']> {
  const rows = await db
    .selectFrom('attachment')
    .innerJoin('storedFile', 'storedFile.hash', 'attachment.hash')
    .selectAll('attachment')
    .select(['storedFile.mediaType', 'storedFile.bytes'])
    .where(sql<boolean>`attachment.visit_id in (select id from visit where ${ofDog})`)
    .orderBy('attachment.createdAt')
    .orderBy('attachment.id')
    .execute();
  return rows.map(({ thumbnail, ...row }) => ({
    ...row,
    thumbnail: thumbnail === null ? null : thumbnail.toString('base64'),
  })) as BundleRecords['attachments'];
}
