import { sql, type Kysely, type RawBuilder } from 'kysely';
import {
  DOGS,
  OWNERS,
  SESSIONS,
  VISITS,
  WEIGHINGS,
  type BundleRecords,
} from '../../contract/bundle.ts';
import { fromRow } from '../../contract/records/columns.ts';
import { oneOf } from '../bin/scope.ts';
import type { Schema } from '../schema.ts';
import { readVisitParts } from '../visitParts.ts';

type Db = Kysely<Schema>;
type Where = RawBuilder<boolean>;

/** Visits whose parts are read at once. */
const VISITS_AT_ONCE = 500;

/**
 * Everything kept of some owners, or of all where `clientIds` is null, the bin included. Lists are
 * in an order that does not depend on the file, so that two reads can be compared.
 */
export async function readBundleRecords(
  db: Db,
  clientIds: readonly string[] | null,
): Promise<BundleRecords> {
  const among = (column: string) =>
    clientIds === null ? sql<boolean>`1` : sql<boolean>`${sql.ref(column)} in ${oneOf(clientIds)}`;
  const owned = among('client_id');
  const ofDog = sql<boolean>`dog_id in (select id from dog where ${owned})`;
  const clients = await db
    .selectFrom('client')
    .selectAll()
    .where(among('id'))
    .orderBy('createdAt')
    .orderBy('id')
    .execute();
  const dogs = await db
    .selectFrom('dog')
    .selectAll()
    .where(owned)
    .orderBy('createdAt')
    .orderBy('id')
    .execute();
  const of = <T extends 'plan' | 'sessionResult' | 'foodDecision' | 'weighing'>(table: T) =>
    sql<Schema[T]>`select * from ${sql.table(table)} where ${ofDog} order by created_at, id`
      .execute(db)
      .then(({ rows }) => rows);
  return {
    owners: clients.map((row) => fromRow(OWNERS, row)),
    dogs: dogs.map((row) => fromRow(DOGS, row)),
    visits: await readVisitRecords(db, ofDog),
    plans: (await of('plan')).map(
      (row) =>
        ({
          ...row,
          current: row.current === 1,
          request: JSON.parse(row.request),
          ramp: JSON.parse(row.ramp),
          review: parsed(row.review),
          keptBreaches: JSON.parse(row.keptBreaches),
        }) as BundleRecords['plans'][number],
    ),
    sessions: (await of('sessionResult')).map((row) => fromRow(SESSIONS, row)),
    foodDecisions: (await of('foodDecision')).map(
      (row) =>
        ({
          ...row,
          ration: parsed(row.ration),
          foodSwitch: parsed(row.foodSwitch),
          changeover: parsed(row.changeover),
          proposal: JSON.parse(row.proposal),
          known: JSON.parse(row.known),
        }) as BundleRecords['foodDecisions'][number],
    ),
    weighings: (await of('weighing')).map((row) => fromRow(WEIGHINGS, row)),
    attachments: await readAttachments(db, ofDog),
    history: await readHistory(db, owned, ofDog),
  };
}

async function readHistory(db: Db, owned: Where, ofDog: Where): Promise<BundleRecords['history']> {
  const { rows } = await sql<Schema['history']>`select * from history
    where (client_id is not null and (${owned})) or (dog_id is not null and ${ofDog})
    order by at, record_id, id`.execute(db);
  return rows.map(({ id: _id, before, ...row }) => ({
    ...row,
    before: JSON.parse(before),
  })) as unknown as BundleRecords['history'];
}

const parsed = (json: string | null): unknown => (json === null ? null : JSON.parse(json));

async function readVisitRecords(db: Db, ofDog: Where): Promise<BundleRecords['visits']> {
  const rows = await db
    .selectFrom('visit')
    .selectAll()
    .where(ofDog)
    .orderBy('createdAt')
    .orderBy('id')
    .execute();
  const visits: BundleRecords['visits'] = [];
  for (let from = 0; from < rows.length; from += VISITS_AT_ONCE) {
    const some = rows.slice(from, from + VISITS_AT_ONCE);
    const partsOf = await readVisitParts(
      db,
      some.map(({ id }) => id),
    );
    for (const row of some) {
      visits.push({ ...fromRow(VISITS, row), ...partsOf(row.id) });
    }
  }
  return visits;
}

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
