import { sql } from 'kysely';
import type { DraftLine } from '../../contract/contract.ts';
import type { Context, Handlers } from '../database/context.ts';
import { putRow, seenDogs } from '../database/rows.ts';
import { WAITING_KEYS } from '../files/waiting.ts';
import { badField } from '../refuse.ts';

type DraftCall = 'drafts/list' | 'drafts/get' | 'drafts/put' | 'drafts/drop';

const UUID = '[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}';
const VISIT_KEY = new RegExp(`^visit:(${UUID}):(new|${UUID})$`);
const SESSION_KEY = new RegExp(`^session:(${UUID}):(\\d{4}-\\d{2}-\\d{2})$`);
const FILES_KEY = new RegExp(`^${WAITING_KEYS}(${UUID})$`);
const DOG_KEY = new RegExp(`^(dog|plan):(${UUID})$`);

type Begun = Pick<DraftLine, 'dogId' | 'what' | 'visitId' | 'day'>;

/** What a key says the draft is of; null for drafts that belong to no dog. */
function begun(key: string): Begun | null {
  const none = { visitId: null, day: null };
  const [, visited, visitId] = VISIT_KEY.exec(key) ?? [];
  if (visited !== undefined && visitId !== undefined) {
    const of = { ...none, dogId: visited };
    return visitId === 'new' ? { ...of, what: 'new visit' } : { ...of, what: 'visit', visitId };
  }
  const [, ran, day] = SESSION_KEY.exec(key) ?? [];
  if (ran !== undefined && day !== undefined) return { ...none, dogId: ran, what: 'session', day };
  const [, chosenFor] = FILES_KEY.exec(key) ?? [];
  if (chosenFor !== undefined) return { ...none, dogId: chosenFor, what: 'files' };
  const [, what, dogId] = DOG_KEY.exec(key) ?? [];
  return dogId === undefined ? null : { ...none, dogId, what: what === 'plan' ? 'plan' : 'dog' };
}

async function listDrafts(context: Context): Promise<DraftLine[]> {
  const drafts = await context.db
    .selectFrom('draft')
    .select(['key', 'savedAt'])
    // Files that were all left out again are nothing to go on with.
    .where(
      sql<boolean>`key not glob ${`${WAITING_KEYS}*`} or exists (
      select 1 from json_each(draft.json, '$.files') as file
      where json_extract(file.value, '$.leftOut') = 0)`,
    )
    .orderBy('savedAt', 'desc')
    .execute();
  const all = drafts.flatMap(({ key, savedAt }) => {
    const of = begun(key);
    return of === null ? [] : [{ key, savedAt, ...of }];
  });
  // The files of a visit that was begun are found with it.
  const begunVisits = new Set(
    all.filter(({ what }) => what === 'new visit').map(({ dogId }) => dogId),
  );
  const lines = all.filter(({ what, dogId }) => what !== 'files' || !begunVisits.has(dogId));
  if (lines.length === 0) return [];
  const dogs = await seenDogs(context.db)
    .select(['dog.id', 'dog.name', 'client.name as clientName'])
    .where('dog.id', 'in', [...new Set(lines.map(({ dogId }) => dogId))])
    .execute();
  const binned = await binnedVisits(context, lines);
  const byId = new Map(dogs.map((dog) => [dog.id, dog]));
  return lines.flatMap((line) => {
    const dog = byId.get(line.dogId);
    if (line.visitId !== null && binned.has(line.visitId)) return [];
    return dog === undefined ? [] : [{ ...line, dogName: dog.name, clientName: dog.clientName }];
  });
}

async function binnedVisits(
  context: Context,
  lines: readonly Pick<DraftLine, 'visitId'>[],
): Promise<ReadonlySet<string>> {
  const ids = lines.flatMap(({ visitId }) => (visitId === null ? [] : [visitId]));
  if (ids.length === 0) return new Set();
  const rows = await context.db
    .selectFrom('visit')
    .select('id')
    .where('id', 'in', ids)
    .where('binnedAt', 'is not', null)
    .execute();
  return new Set(rows.map(({ id }) => id));
}

export const draftHandlers: Handlers<DraftCall> = {
  'drafts/list': listDrafts,
  'drafts/get': async (context, { key }) =>
    (await context.db.selectFrom('draft').selectAll().where('key', '=', key).executeTakeFirst()) ??
    null,
  'drafts/put': async (context, { key, json }) => {
    if (key.startsWith(WAITING_KEYS)) throw badField('key', 'Files are added by their own call.');
    await putRow(context.db, 'draft', 'key', { key, json, savedAt: context.instant() });
    return null;
  },
  'drafts/drop': async (context, { key }) => {
    await context.db.deleteFrom('draft').where('key', '=', key).execute();
    return null;
  },
};
