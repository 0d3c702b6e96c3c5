import type { SessionRecord } from '../../contract/contract.ts';
import { sessionFactsOf } from '../../contract/records/facts.ts';
import { changesBetween } from '../../contract/history/historyDiff.ts';
import type { SessionInput } from '../../contract/records.ts';
import { fromRow, toRow } from '../../contract/records/columns.ts';
import { SESSION } from '../../contract/records/session.ts';
import { KEPT } from '../../contract/records/stored.ts';
import { authorNow } from '../practice/practitioners.ts';
import type { Context, Handlers } from '../database/context.ts';
import { readDog } from '../dogs/dogs.ts';
import { keepHistory } from '../history/history.ts';
import { badField } from '../refuse.ts';
import type { Db, SessionResultRow } from '../database/schema.ts';

const sessionFromRow = (row: SessionResultRow): SessionRecord => fromRow(KEPT.session, row);

/** The session results of a dog, oldest first. */
export async function readSessions(db: Db, dogId: string): Promise<SessionRecord[]> {
  const rows = await db
    .selectFrom('sessionResult')
    .selectAll()
    .where('dogId', '=', dogId)
    .orderBy('day')
    .execute();
  return rows.map(sessionFromRow);
}

async function readSession(db: Db, dogId: string, day: string): Promise<SessionRecord | null> {
  const row = await db
    .selectFrom('sessionResult')
    .selectAll()
    .where('dogId', '=', dogId)
    .where('day', '=', day)
    .executeTakeFirst();
  return row === undefined ? null : sessionFromRow(row);
}

/** What is kept of a result that is replaced or removed; its author would go with it. */
const keptOf = (stored: SessionRecord) => ({ ...sessionFactsOf(stored), author: stored.author });

/** What is the same of every deed on a result; results are not counted. */
const deedOn = ({ id, dogId }: Pick<SessionRecord, 'id' | 'dogId'>) =>
  ({ kind: 'session', recordId: id, of: { dogId }, revision: null, reason: '' }) as const;

/** A first result for a day. One that was removed before comes back under its own id. */
async function insertSession(
  context: Context,
  db: Db,
  dogId: string,
  session: SessionInput,
): Promise<SessionRecord> {
  const removed = await db
    .selectFrom('history')
    .select(['recordId', 'before'])
    .where('dogId', '=', dogId)
    .where('kind', '=', 'session')
    .where('action', '=', 'removed')
    .execute();
  const earlier = removed.find(
    ({ before }) => (JSON.parse(before) as SessionInput).day === session.day,
  );
  if (earlier !== undefined) {
    const deed = deedOn({ id: earlier.recordId, dogId });
    await keepHistory(context, db, { ...deed, action: 'restored', before: null });
  }
  const at = context.instant();
  const row = await db
    .insertInto('sessionResult')
    .values({
      ...toRow(SESSION, session),
      id: earlier?.recordId ?? context.newId(),
      dogId,
      author: await authorNow(db),
      createdAt: at,
      updatedAt: at,
    })
    .returningAll()
    .executeTakeFirstOrThrow();
  return sessionFromRow(row);
}

/** Replaces a result and keeps the earlier one. Nothing is written when nothing changed. */
async function amendSession(
  context: Context,
  db: Db,
  stored: SessionRecord,
  session: SessionInput,
  reason: string,
): Promise<SessionRecord> {
  if (changesBetween('session', stored, session).length === 0) return stored;
  const before = keptOf(stored);
  await keepHistory(context, db, { ...deedOn(stored), action: 'amended', reason, before });
  const row = await db
    .updateTable('sessionResult')
    .set({
      ...toRow(SESSION, session),
      author: await authorNow(db),
      updatedAt: context.instant(),
    })
    .where('id', '=', stored.id)
    .returningAll()
    .executeTakeFirstOrThrow();
  return sessionFromRow(row);
}

/**
 * Keeps the result of a session; a second one for the same day replaces the first. Runs inside a
 * transaction. `path` names the input it came with, where it is refused.
 */
export async function keepSession(
  context: Context,
  db: Db,
  sent: { dogId: string; session: SessionInput; reason?: string | undefined; path: string },
): Promise<SessionRecord> {
  const { dogId, session, reason = '', path } = sent;
  if (session.day > context.today()) {
    throw badField(`${path}.day`, 'Day of the session must not lie in the future.');
  }
  const stored = await readSession(db, dogId, session.day);
  return stored === null
    ? insertSession(context, db, dogId, session)
    : amendSession(context, db, stored, session, reason);
}

export const sessionHandlers: Handlers<'sessions/save' | 'sessions/drop'> = {
  'sessions/save': (context, { dogId, session, reason }) =>
    context.db.transaction().execute(async (db) => {
      await readDog(db, dogId);
      return keepSession(context, db, { dogId, session, reason, path: 'session' });
    }),
  'sessions/drop': (context, { dogId, day }) =>
    context.db.transaction().execute(async (db) => {
      const stored = await readSession(db, dogId, day);
      if (stored === null) return null;
      const before = keptOf(stored);
      await keepHistory(context, db, { ...deedOn(stored), action: 'removed', before });
      await db.deleteFrom('sessionResult').where('id', '=', stored.id).execute();
      return null;
    }),
};
