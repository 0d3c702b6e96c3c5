import { sql, type RawBuilder } from 'kysely';
import type { BinKind, BinLine } from '../../contract/keeping/bin.ts';
import { notFound } from '../refuse.ts';
import type { Db } from '../database/schema.ts';

/** Where a record that can lie in the bin stands; not what it says. */
export interface Place extends Pick<
  BinLine,
  'kind' | 'id' | 'title' | 'clientName' | 'dogName' | 'inside'
> {
  readonly clientId: string;
  /** Null for an owner. */
  readonly dogId: string | null;
  readonly binnedAt: string | null;
  /** Null for records that are not counted. */
  readonly revision: number | null;
}

export const RECORD_NAMES: Readonly<Record<BinKind, string>> = {
  client: 'The owner',
  dog: 'The dog',
  visit: 'The visit',
  attachment: 'The file',
};

const PLACES: Readonly<Record<BinKind, RawBuilder<Place>>> = {
  client: sql`select 'client' as kind, client.id, client.name as title,
      client.id as client_id, client.name as client_name,
      null as dog_id, null as dog_name,
      client.binned_at, client.revision, null as inside
    from client`,
  dog: sql`select 'dog' as kind, dog.id, dog.name as title,
      client.id as client_id, client.name as client_name,
      dog.id as dog_id, dog.name as dog_name, dog.binned_at, dog.revision,
      case when client.binned_at is not null then 'client' end as inside
    from dog join client on client.id = dog.client_id`,
  visit: sql`select 'visit' as kind, visit.id, visit.day as title,
      client.id as client_id, client.name as client_name,
      dog.id as dog_id, dog.name as dog_name, visit.binned_at, visit.revision,
      case when client.binned_at is not null then 'client'
        when dog.binned_at is not null then 'dog' end as inside
    from visit join dog on dog.id = visit.dog_id join client on client.id = dog.client_id`,
  attachment: sql`select 'attachment' as kind, attachment.id, attachment.name as title,
      client.id as client_id, client.name as client_name,
      dog.id as dog_id, dog.name as dog_name, attachment.binned_at, null as revision,
      case when client.binned_at is not null then 'client'
        when dog.binned_at is not null then 'dog'
        when visit.binned_at is not null then 'visit' end as inside
    from attachment join visit on visit.id = attachment.visit_id
      join dog on dog.id = visit.dog_id join client on client.id = dog.client_id`,
};

/** Reads where a record stands, whether it lies in the bin or not. @throws Refusal (not-found). */
export async function readPlace(db: Db, kind: BinKind, id: string): Promise<Place> {
  const found = await sql<Place>`${PLACES[kind]} where ${sql.ref(`${kind}.id`)} = ${id}`.execute(
    db,
  );
  const place = found.rows[0];
  if (place === undefined) throw notFound(RECORD_NAMES[kind]);
  return place;
}

/** Everything of one kind in the bin. */
export async function binnedPlaces(db: Db, kind: BinKind): Promise<readonly Place[]> {
  const binnedAt = sql.ref(`${kind}.binned_at`);
  return (await sql<Place>`${PLACES[kind]} where ${binnedAt} is not null`.execute(db)).rows;
}
