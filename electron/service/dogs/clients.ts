import type { Client, ClientInput } from '../../contract/records.ts';
import { clientFactsOf } from '../../contract/records/facts.ts';
import { CLIENT } from '../../contract/records/client.ts';
import { fromRow, toRow } from '../../contract/records/columns.ts';
import { KEPT } from '../../contract/records/stored.ts';
import { changesBetween } from '../../contract/history/historyDiff.ts';
import { assertLatest } from '../visits/amend.ts';
import type { Context, Handlers } from '../database/context.ts';
import { keepHistory } from '../history/history.ts';
import { notFound } from '../refuse.ts';
import type { Db, ClientRow } from '../database/schema.ts';
import { likeWords, matches, searchText } from './searchText.ts';

const MOST_LISTED = 100;

export const clientFromRow = (row: ClientRow): Client => fromRow(KEPT.client, row);

/** The text an owner is found by. */
export function searchable(client: ClientInput): string {
  return searchText(client.name, client.phone, client.email);
}

/** Reads one owner. @throws Refusal (not-found). */
export async function readClient(db: Db, id: string): Promise<Client> {
  const row = await db
    .selectFrom('client')
    .selectAll()
    .where('id', '=', id)
    .where('binnedAt', 'is', null)
    .executeTakeFirstOrThrow(() => notFound('The owner'));
  return clientFromRow(row);
}

/** Keeps a new owner. */
export async function insertClient(context: Context, db: Db, client: ClientInput): Promise<Client> {
  const at = context.instant();
  const row: ClientRow = {
    ...toRow(CLIENT, client),
    id: context.newId(),
    searchText: searchable(client),
    createdAt: at,
    updatedAt: at,
    revision: 1,
    binnedAt: null,
  };
  await db.insertInto('client').values(row).execute();
  return clientFromRow(row);
}

interface SentClient {
  readonly id: string;
  readonly basedOn: number | null | undefined;
  readonly reason: string | undefined;
  readonly client: ClientInput;
}

/**
 * Keeps what an owner was, then writes what is sent; nothing when nothing changed. Runs inside a
 * transaction. @throws Refusal (not-found, conflict); `path` names the field of the revision.
 */
export async function amendClient(
  context: Context,
  db: Db,
  { id, basedOn, reason, client }: SentClient,
  path?: string,
): Promise<Client> {
  const stored = await readClient(db, id);
  await assertLatest(db, 'The owner', stored, basedOn, path);
  const before = clientFactsOf(stored);
  if (changesBetween('client', before, client).length === 0) return stored;
  const { revision } = stored;
  await keepHistory(context, db, {
    kind: 'client',
    recordId: id,
    of: { clientId: id },
    action: 'amended',
    revision,
    reason: reason ?? '',
    before,
  });
  const row = await db
    .updateTable('client')
    .set({
      ...toRow(CLIENT, client),
      searchText: searchable(client),
      updatedAt: context.instant(),
      revision: revision + 1,
    })
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirstOrThrow();
  return clientFromRow(row);
}

export const clientHandlers: Handlers<'clients/list' | 'clients/save'> = {
  'clients/list': async (context, { query }) => {
    let select = context.db.selectFrom('client').selectAll().where('binnedAt', 'is', null);
    for (const word of likeWords(query)) {
      select = select.where(matches('client.searchText', word));
    }
    const rows = await select.orderBy('searchText').limit(MOST_LISTED).execute();
    return rows.map(clientFromRow);
  },
  'clients/save': async (context, { id, basedOn, reason, client }) => {
    if (id === null) return insertClient(context, context.db, client);
    return context.db
      .transaction()
      .execute((db) => amendClient(context, db, { id, basedOn, reason, client }));
  },
};
