import type { Client } from '../../contract/records.ts';
import type { Handlers } from '../database/context.ts';
import { notFound } from '../refuse.ts';
import type { Db } from '../database/schema.ts';
import { amendRecord, insertRecord, recordFrom } from './records.ts';
import { likeWords, matches } from './searchText.ts';

const MOST_LISTED = 100;

/** Reads one owner. @throws Refusal (not-found). */
export async function readClient(db: Db, id: string): Promise<Client> {
  const row = await db
    .selectFrom('client')
    .selectAll()
    .where('id', '=', id)
    .where('binnedAt', 'is', null)
    .executeTakeFirstOrThrow(() => notFound('The owner'));
  return recordFrom('client', row);
}

export const clientHandlers: Handlers<'clients/list' | 'clients/save'> = {
  'clients/list': async (context, { query }) => {
    let select = context.db.selectFrom('client').selectAll().where('binnedAt', 'is', null);
    for (const word of likeWords(query)) {
      select = select.where(matches('client.searchText', word));
    }
    const rows = await select.orderBy('searchText').limit(MOST_LISTED).execute();
    return rows.map((row) => recordFrom('client', row));
  },
  'clients/save': async (context, { id, basedOn, reason, client }) => {
    if (id === null) return insertRecord(context, context.db, 'client', client);
    return context.db.transaction().execute(async (db) => {
      const sent = { facts: client, basedOn, reason };
      return amendRecord(context, db, 'client', await readClient(db, id), sent);
    });
  },
};
