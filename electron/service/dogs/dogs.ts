import type { Dog, DogInput } from '../../contract/records.ts';
import { dogFactsOf } from '../../contract/records/facts.ts';
import { fromRow, toRow } from '../../contract/records/columns.ts';
import { DOG } from '../../contract/records/dog.ts';
import { KEPT } from '../../contract/records/stored.ts';
import { changesBetween } from '../../contract/history/historyDiff.ts';
import { assertLatest } from '../visits/amend.ts';
import { amendClient, insertClient, readClient } from './clients.ts';
import type { Context, Handlers } from '../database/context.ts';
import { keepHistory } from '../history/history.ts';
import { badField, notFound } from '../refuse.ts';
import type { Db, DogRow } from '../database/schema.ts';
import { searchText } from './searchText.ts';

export const dogFromRow = (row: DogRow): Dog => fromRow(KEPT.dog, row);

/** The text a dog is found by. */
export const searchableDog = (dog: DogInput): string => searchText(dog.name, dog.breed, dog.chip);

/** The row of a dog, without what the service adds. */
const dogToRow = (dog: DogInput) => ({ ...toRow(DOG, dog), searchText: searchableDog(dog) });

/** Reads one dog. @throws Refusal (not-found); also while its owner lies in the bin. */
export async function readDog(db: Db, id: string): Promise<Dog> {
  const row = await db
    .selectFrom('dog')
    .innerJoin('client', 'client.id', 'dog.clientId')
    .selectAll('dog')
    .where('dog.id', '=', id)
    .where('dog.binnedAt', 'is', null)
    .where('client.binnedAt', 'is', null)
    .executeTakeFirstOrThrow(() => notFound('The dog'));
  return dogFromRow(row);
}

async function insertDog(context: Context, db: Db, dog: DogInput): Promise<Dog> {
  const at = context.instant();
  const row: DogRow = {
    ...dogToRow(dog),
    id: context.newId(),
    createdAt: at,
    updatedAt: at,
    revision: 1,
    archivedAt: null,
    binnedAt: null,
  };
  await db.insertInto('dog').values(row).execute();
  return dogFromRow(row);
}

function assertBornBy(context: Context, birthDay: string): void {
  if (birthDay <= context.today()) return;
  throw badField('dog.birthDay', 'Day of birth must not lie in the future.');
}

interface SentDog {
  readonly id: string;
  readonly basedOn: number | null | undefined;
  readonly reason: string | undefined;
  readonly dog: DogInput;
}

/** As `amendClient`, for a dog. */
async function amendDog(
  context: Context,
  db: Db,
  { id, basedOn, reason, dog }: SentDog,
  path?: string,
): Promise<Dog> {
  const stored = await readDog(db, id);
  await assertLatest(db, 'The dog', stored, basedOn, path);
  const before = dogFactsOf(stored);
  if (changesBetween('dog', before, dog).length === 0) return stored;
  const { revision } = stored;
  await keepHistory(context, db, {
    kind: 'dog',
    recordId: id,
    of: { dogId: id },
    action: 'amended',
    revision,
    reason: reason ?? '',
    before,
  });
  const row = await db
    .updateTable('dog')
    .set({ ...dogToRow(dog), updatedAt: context.instant(), revision: revision + 1 })
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirstOrThrow();
  return dogFromRow(row);
}

type DogCall = 'dogs/save' | 'dogs/saveWithOwner' | 'dogs/amendWithOwner';

export const dogHandlers: Handlers<DogCall> = {
  'dogs/save': async (context, { id, basedOn, reason, dog }) => {
    assertBornBy(context, dog.birthDay);
    await readClient(context.db, dog.clientId);
    if (id === null) return insertDog(context, context.db, dog);
    return context.db
      .transaction()
      .execute((db) => amendDog(context, db, { id, basedOn, reason, dog }));
  },
  'dogs/amendWithOwner': async (
    context,
    { id, reason, dog, dogBasedOn, client, clientBasedOn },
  ) => {
    assertBornBy(context, dog.birthDay);
    return context.db.transaction().execute(async (db) => {
      const { clientId } = await readDog(db, id);
      const owner = { id: clientId, basedOn: clientBasedOn, reason, client };
      await amendClient(context, db, owner, 'clientBasedOn');
      const sent = { id, basedOn: dogBasedOn, reason, dog: { ...dog, clientId } };
      return amendDog(context, db, sent, 'dogBasedOn');
    });
  },
  'dogs/saveWithOwner': async (context, { client, dog }) => {
    assertBornBy(context, dog.birthDay);
    return context.db.transaction().execute(async (transaction) => {
      const owner = await insertClient(context, transaction, client);
      return insertDog(context, transaction, { ...dog, clientId: owner.id });
    });
  },
};
