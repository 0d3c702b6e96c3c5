import type { ParsedOf } from '../../contract/contract.ts';
import { changesBetween } from '../../contract/history/historyDiff.ts';
import {
  weighingProblem,
  type WeighingInput,
  type WeighingKnown,
  type WeighingRecord,
} from '../../contract/weighings/weighing.ts';
import { fromRow, toRow } from '../../contract/records/columns.ts';
import { KEPT } from '../../contract/records/stored.ts';
import { WEIGHING } from '../../contract/records/weighing.ts';
import { assertLatest, assertReasonGiven } from '../history/amend.ts';
import { authorNow } from '../practice/practitioners.ts';
import type { Context, Handlers } from '../database/context.ts';
import { firstRevision } from '../database/rows.ts';
import { readDog } from '../dogs/dogs.ts';
import { keepHistory, type Deed } from '../history/history.ts';
import { badField, notFound } from '../refuse.ts';
import type { Db, WeighingRow } from '../database/schema.ts';

const weighingFromRow = (row: WeighingRow): WeighingRecord => fromRow(KEPT.weighing, row);

/** The weighings of a dog between visits, oldest first. */
export async function readWeighings(db: Db, dogId: string): Promise<WeighingRecord[]> {
  const rows = await db
    .selectFrom('weighing')
    .selectAll()
    .where('dogId', '=', dogId)
    .orderBy('day')
    .orderBy('createdAt')
    .execute();
  return rows.map(weighingFromRow);
}

/** Every weight in the record of a dog but one, of visits and between them, in no order. */
async function readWeights(
  db: Db,
  dogId: string,
  but: string | null,
): Promise<WeighingKnown['weights']> {
  const between = db.selectFrom('weighing').select(['day', 'weightKg']).where('dogId', '=', dogId);
  const [others, visits] = await Promise.all([
    (but === null ? between : between.where('id', '<>', but)).execute(),
    db
      .selectFrom('visit')
      .select(['day', 'weightKg'])
      .where('dogId', '=', dogId)
      .where('weightKg', 'is not', null)
      .where('binnedAt', 'is', null)
      .execute(),
  ]);
  return [...others, ...visits.map(({ day, weightKg }) => ({ day, weightKg: weightKg! }))];
}

/**
 * `but` is the weighing itself where it is in the record already.
 * @throws Refusal (not-found, input) for a weighing that cannot be kept.
 */
async function assertKeepable(
  context: Context,
  db: Db,
  dogId: string,
  weighing: Pick<WeighingInput, 'day' | 'weightKg'>,
  but: string | null = null,
): Promise<void> {
  const { birthDay } = await readDog(db, dogId);
  const weights = await readWeights(db, dogId, but);
  const problem = weighingProblem(weighing, { today: context.today(), birthDay, weights });
  if (problem !== null) throw badField(`weighing.${problem.field}`, problem.message);
}

/** Takes a weighing out, its history keeping it. @returns null where it is not there. */
export async function dropWeighing(
  context: Context,
  db: Db,
  id: string,
  reason: string,
): Promise<WeighingRow | null> {
  const row = await db
    .deleteFrom('weighing')
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirst();
  if (row === undefined) return null;
  await keepDeed(context, db, row, { action: 'removed', before: row, reason });
  return row;
}

/** Keeps what the weighing was, then writes what it is. Nothing is written when nothing changed. */
async function amendWeighing(
  context: Context,
  db: Db,
  { id, basedOn, reason, weighing }: ParsedOf<'weighings/amend'>,
): Promise<WeighingRecord> {
  const row = await db
    .selectFrom('weighing')
    .selectAll()
    .where('id', '=', id)
    .executeTakeFirstOrThrow(() => notFound('The weighing'));
  await readDog(db, row.dogId);
  await assertLatest(db, 'The weighing', row, basedOn);
  const stored = weighingFromRow(row);
  if (changesBetween('weighing', stored, weighing).length === 0) return stored;
  assertReasonGiven('the weighing', reason);
  await assertKeepable(context, db, row.dogId, weighing, id);
  await keepDeed(context, db, row, { action: 'amended', before: row, reason: reason ?? '' });
  const amended = await db
    .updateTable('weighing')
    .set({ ...toRow(WEIGHING, weighing), updatedAt: context.instant(), revision: row.revision + 1 })
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirstOrThrow();
  return weighingFromRow(amended);
}

type WeighingCall = 'weighings/save' | 'weighings/amend' | 'weighings/drop' | 'weighings/restore';

export const weighingHandlers: Handlers<WeighingCall> = {
  'weighings/save': (context, { dogId, weighing }) =>
    context.db.transaction().execute(async (db) => {
      await assertKeepable(context, db, dogId, weighing);
      const row: WeighingRow = {
        ...toRow(WEIGHING, weighing),
        ...firstRevision(context),
        dogId,
        origin: 'typed',
        author: await authorNow(db),
      };
      await db.insertInto('weighing').values(row).execute();
      return weighingFromRow(row);
    }),
  'weighings/amend': (context, amendment) =>
    context.db.transaction().execute((db) => amendWeighing(context, db, amendment)),
  'weighings/drop': (context, { id }) =>
    context.db.transaction().execute(async (db) => {
      const row = await dropWeighing(context, db, id, '');
      if (row === null) throw notFound('The weighing');
      await readDog(db, row.dogId);
      return null;
    }),
  'weighings/restore': (context, { id }) =>
    context.db.transaction().execute(async (db) => {
      const row = await lastDropped(db, id);
      await assertKeepable(context, db, row.dogId, row);
      await db.insertInto('weighing').values(row).execute();
      await keepDeed(context, db, row, { action: 'restored', before: null, reason: '' });
      return weighingFromRow(row);
    }),
};

/** `before` is the whole row, so that it can be brought back as it was. */
async function keepDeed(
  context: Context,
  db: Db,
  { id, dogId, revision }: WeighingRow,
  deed: Pick<Deed, 'action' | 'before' | 'reason'>,
): Promise<void> {
  await keepHistory(context, db, {
    kind: 'weighing',
    recordId: id,
    of: { dogId },
    revision,
    ...deed,
  });
}

/** The row as it was last dropped. @throws Refusal (not-found) when it is there or never was. */
async function lastDropped(db: Db, id: string): Promise<WeighingRow> {
  const last = await db
    .selectFrom('history')
    .select(['action', 'before'])
    .where('kind', '=', 'weighing')
    .where('recordId', '=', id)
    .orderBy('id', 'desc')
    .executeTakeFirst();
  if (last === undefined || last.action !== 'removed') throw notFound('The dropped weighing');
  return JSON.parse(last.before) as WeighingRow;
}
