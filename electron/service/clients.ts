import type { Kysely } from 'kysely';
import type { Client, ClientInput } from '../contract/records.ts';
import type { Desk, Handlers } from './context.ts';
import { notFound } from './refuse.ts';
import type { ClientRow, Schema } from './schema.ts';
import { likeWords, matches, searchText } from './searchText.ts';

const MOST_LISTED = 100;

function fromRow({ searchText: _searchText, binnedAt: _binnedAt, ...client }: ClientRow): Client {
  return client;
}

function searchable(client: ClientInput): string {
  return searchText(client.name, client.phone, client.email);
}

/** Reads one owner. @throws Refusal (not-found). */
export async function readClient(db: Kysely<Schema>, id: string): Promise<Client> {
  const row = await db
    .selectFrom('client')
    .selectAll()
    .where('id', '=', id)
    .where('binnedAt', 'is', null)
    .executeTakeFirst();
  if (row === undefined) throw notFound('The owner');
  return fromRow(row);
}

/** Keeps a new owner. */
export async function insertClient(
  desk: Desk,
  db: Kysely<Schema>,
  client: ClientInput,
): Promise<Client> {
  const at = desk.instant();
  const row: ClientRow = {
    ...client,
    id: desk.newId(),
    searchText: searchable(client),
    createdAt: at,
    updatedAt: at,
    revision: 1,
    binnedAt: null,
  };
  await db.insertInto('client').values(row).execute();
  return fromRow(row);
}

export const clientHandlers: Handlers<'clients/list' | 'clients/save'> = {
  'clients/list': async (desk, { query }) => {
    let select = desk.db.selectFrom('client').selectAll().where('binnedAt', 'is', null);
    for (const word of likeWords(query)) {
      select = select.where(matches('client.searchText', word));
    }
    const rows = await select.orderBy('searchText').limit(MOST_LISTED).execute();
    return rows.map(fromRow);
  },
  'clients/save': async (desk, { id, client }) => {
    if (id === null) return insertClient(desk, desk.db, client);
    const row = await desk.db
      .updateTable('client')
      .set({ ...client, searchText: searchable(client), updatedAt: desk.instant() })
      .where('id', '=', id)
      .returningAll()
      .executeTakeFirst();
    if (row === undefined) throw notFound('The owner');
    return fromRow(row);
  },
};
