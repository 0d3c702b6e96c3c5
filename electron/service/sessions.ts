import type { Kysely } from 'kysely';
import type { SessionRecord } from '../contract/contract.ts';
import { authorNow } from './author.ts';
import type { Handlers } from './context.ts';
import { readDog } from './dogs.ts';
import { badField } from './refuse.ts';
import type { Schema, SessionResultRow } from './schema.ts';

function fromRow(row: SessionResultRow): SessionRecord {
  return {
    ...row,
    outcome: row.outcome as SessionRecord['outcome'],
    nextDay: row.nextDay as SessionRecord['nextDay'],
    signs: JSON.parse(row.signs) as SessionRecord['signs'],
  };
}

/** The session results of a dog, oldest first. */
export async function readSessions(db: Kysely<Schema>, dogId: string): Promise<SessionRecord[]> {
  const rows = await db
    .selectFrom('sessionResult')
    .selectAll()
    .where('dogId', '=', dogId)
    .orderBy('day')
    .execute();
  return rows.map(fromRow);
}

export const sessionHandlers: Handlers<'sessions/save' | 'sessions/drop'> = {
  'sessions/save': async (desk, { dogId, session }) => {
    await readDog(desk.db, dogId);
    if (session.day > desk.today()) {
      throw badField('session.day', 'Day of the session must not lie in the future.');
    }
    const at = desk.instant();
    const facts = {
      ...session,
      signs: JSON.stringify(session.signs),
      author: await authorNow(desk.db),
      updatedAt: at,
    };
    const row = await desk.db
      .insertInto('sessionResult')
      .values({ ...facts, id: desk.newId(), dogId, createdAt: at })
      .onConflict((conflict) => conflict.columns(['dogId', 'day']).doUpdateSet(facts))
      .returningAll()
      .executeTakeFirstOrThrow();
    return fromRow(row);
  },
  'sessions/drop': async (desk, { dogId, day }) => {
    await desk.db
      .deleteFrom('sessionResult')
      .where('dogId', '=', dogId)
      .where('day', '=', day)
      .execute();
    return null;
  },
};
