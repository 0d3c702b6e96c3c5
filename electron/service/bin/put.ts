import type { BinCheck, BinKind } from '../../contract/keeping/bin.ts';
import { dogFactsOf } from '../../contract/records/facts.ts';
import type { ParsedOf } from '../../contract/contract.ts';
import type { Dog } from '../../contract/records.ts';
import { Refusal } from '../../contract/errors.ts';
import type { Context } from '../database/context.ts';
import { readDog } from '../dogs/dogs.ts';
import { readFoodDecisions } from '../food/decisions.ts';
import { keepHistory } from '../history/history.ts';
import { presentFacts } from '../history/list.ts';
import { readPlans } from '../plans/plans.ts';
import { notFound } from '../refuse.ts';
import type { Db } from '../database/schema.ts';
import { readPlace, RECORD_NAMES, type Place } from './place.ts';
import { countsOf, scopeOf } from './scope.ts';

type Entry = ParsedOf<'bin/restore'>;

/** A record that can be seen now. @throws Refusal (not-found) for one in the bin. */
async function readSeen(db: Db, kind: BinKind, id: string): Promise<Place> {
  const place = await readPlace(db, kind, id);
  if (place.binnedAt !== null || place.inside !== null) throw notFound(RECORD_NAMES[kind]);
  return place;
}

/** What putting a record into the bin takes out of sight. @throws Refusal (not-found). */
export async function checkBin({ db }: Context, { kind, id }: Entry): Promise<BinCheck> {
  const place = await readSeen(db, kind, id);
  const atVisit = kind === 'visit' && place.dogId !== null;
  const plans = atVisit ? await readPlans(db, place.dogId) : [];
  const decisions = atVisit ? await readFoodDecisions(db, place.dogId) : [];
  return {
    kind,
    id,
    title: place.title,
    ...(await countsOf(db, await scopeOf(db, kind, id, false))),
    endsPlan: plans.some(({ current, visitId }) => current && visitId === id),
    endsFood: decisions.at(-1)?.visitId === id,
  };
}

/** The complete facts of a record, as its history keeps them. */
async function factsOf(db: Db, { kind, id }: Place): Promise<object> {
  if (kind !== 'attachment') return (await presentFacts(db, kind, id))!;
  return db
    .selectFrom('attachment')
    .select(['visitId', 'hash', 'kind', 'name'])
    .where('id', '=', id)
    .executeTakeFirstOrThrow();
}

interface Move {
  readonly action: 'binned' | 'restored';
  readonly binnedAt: string | null;
  readonly reason: string;
}

/** Hides or shows a record; nothing else of it changes, its revision neither. */
async function move(context: Context, db: Db, place: Place, to: Move): Promise<void> {
  const { kind, id, dogId, clientId, revision } = place;
  await keepHistory(context, db, {
    kind,
    recordId: id,
    of: dogId === null ? { clientId } : { dogId },
    action: to.action,
    revision,
    reason: to.reason,
    before: await factsOf(db, place),
  });
  await db.updateTable(kind).set({ binnedAt: to.binnedAt }).where('id', '=', id).execute();
}

/** Puts a record into the bin. @throws Refusal (not-found). */
export function putIntoBin(
  context: Context,
  { kind, id, reason = '' }: ParsedOf<'bin/put'>,
): Promise<null> {
  return context.db.transaction().execute(async (db) => {
    const place = await readSeen(db, kind, id);
    await move(context, db, place, { action: 'binned', binnedAt: context.instant(), reason });
    return null;
  });
}

const AROUND = { client: 'owner', dog: 'dog', visit: 'visit' } as const;

/** Takes a record out of the bin. @throws Refusal (not-found, conflict). */
export function restoreFromBin(context: Context, { kind, id }: Entry): Promise<null> {
  return context.db.transaction().execute(async (db) => {
    const place = await readPlace(db, kind, id);
    if (place.binnedAt === null) throw notFound(`${RECORD_NAMES[kind]} in the bin`);
    if (place.inside !== null) {
      const around = AROUND[place.inside];
      throw new Refusal({
        kind: 'conflict',
        message: `Its ${around} lies in the bin as well: restore the ${around} first. Nothing was changed.`,
      });
    }
    await move(context, db, place, { action: 'restored', binnedAt: null, reason: '' });
    return null;
  });
}

/** Puts a dog away that no longer comes, or takes it back. @throws Refusal (not-found). */
export function archiveDog(
  context: Context,
  { id, archived }: ParsedOf<'dogs/archive'>,
): Promise<Dog> {
  return context.db.transaction().execute(async (db) => {
    const dog = await readDog(db, id);
    if ((dog.archivedAt !== null) === archived) return dog;
    await keepHistory(context, db, {
      kind: 'dog',
      recordId: id,
      of: { dogId: id },
      action: archived ? 'archived' : 'unarchived',
      revision: dog.revision,
      reason: '',
      before: dogFactsOf(dog),
    });
    const archivedAt = archived ? context.instant() : null;
    await db.updateTable('dog').set({ archivedAt }).where('id', '=', id).execute();
    return { ...dog, archivedAt };
  });
}
