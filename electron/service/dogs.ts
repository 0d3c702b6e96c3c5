import type { Kysely } from 'kysely';
import type { Dog, DogInput } from '../contract/records.ts';
import { dogFactsOf } from '../contract/facts.ts';
import { fromRow, toRow } from '../contract/records/columns.ts';
import { DOG } from '../contract/records/dog.ts';
import { ARCHIVED, REVISED } from '../contract/records/stored.ts';
import { changesBetween } from '../contract/history/historyDiff.ts';
import { assertLatest } from './amend.ts';
import { amendClient, insertClient, readClient } from './clients.ts';
import type { Desk, Handlers } from './context.ts';
import { keepHistory } from './history.ts';
import { badField, notFound } from './refuse.ts';
import type { DogRow, Schema } from './schema.ts';
import { searchText } from './searchText.ts';

const KEPT_DOG = { ...DOG, ...REVISED, ...ARCHIVED };

export const dogFromRow = (row: DogRow): Dog => fromRow(KEPT_DOG, row);

/** The row of a dog, without what the service adds. */
export const dogToRow = (dog: DogInput) => ({
  ...toRow(DOG, dog),
  searchText: searchText(dog.name, dog.breed, dog.chip),
});

/** Reads one dog. @throws Refusal (not-found); also while its owner lies in the bin. */
export async function readDog(db: Kysely<Schema>, id: string): Promise<Dog> {
  const row = await db
    .selectFrom('dog')
    .innerJoin('client', 'client.id', 'dog.clientId')
    .selectAll('dog')
    .where('dog.id', '=', id)
    .where('dog.binnedAt', 'is', null)
    .where('client.binnedAt', 'is', null)
    .executeTakeFirst();
  if (row === undefined) throw notFound('The dog');
  return dogFromRow(row);
}

async function insertDog(desk: Desk, db: Kysely<Schema>, dog: DogInput): Promise<Dog> {
  const at = desk.instant();
  const row: DogRow = {
    ...dogToRow(dog),
    id: desk.newId(),
    createdAt: at,
    updatedAt: at,
    revision: 1,
    archivedAt: null,
    binnedAt: null,
  };
  await db.insertInto('dog').values(row).execute();
  return dogFromRow(row);
}

function assertBornBy(desk: Desk, birthDay: string): void {
  if (birthDay <= desk.today()) return;
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
  desk: Desk,
  db: Kysely<Schema>,
  { id, basedOn, reason, dog }: SentDog,
  path?: string,
): Promise<Dog> {
  const stored = await readDog(db, id);
  await assertLatest(db, 'The dog', stored, basedOn, path);
  const before = dogFactsOf(stored);
  if (changesBetween('dog', before, dog).length === 0) return stored;
  const { revision } = stored;
  await keepHistory(desk, db, {
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
    .set({ ...dogToRow(dog), updatedAt: desk.instant(), revision: revision + 1 })
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirstOrThrow();
  return dogFromRow(row);
}

type DogCall = 'dogs/save' | 'dogs/saveWithOwner' | 'dogs/amendWithOwner';

export const dogHandlers: Handlers<DogCall> = {
  'dogs/save': async (desk, { id, basedOn, reason, dog }) => {
    assertBornBy(desk, dog.birthDay);
    await readClient(desk.db, dog.clientId);
    if (id === null) return insertDog(desk, desk.db, dog);
    return desk.db.transaction().execute((db) => amendDog(desk, db, { id, basedOn, reason, dog }));
  },
  'dogs/amendWithOwner': async (desk, { id, reason, dog, dogBasedOn, client, clientBasedOn }) => {
    assertBornBy(desk, dog.birthDay);
    return desk.db.transaction().execute(async (db) => {
      const { clientId } = await readDog(db, id);
      const owner = { id: clientId, basedOn: clientBasedOn, reason, client };
      await amendClient(desk, db, owner, 'clientBasedOn');
      const sent = { id, basedOn: dogBasedOn, reason, dog: { ...dog, clientId } };
      return amendDog(desk, db, sent, 'dogBasedOn');
    });
  },
  'dogs/saveWithOwner': async (desk, { client, dog }) => {
    assertBornBy(desk, dog.birthDay);
    return desk.db.transaction().execute(async (transaction) => {
      const owner = await insertClient(desk, transaction, client);
      return insertDog(desk, transaction, { ...dog, clientId: owner.id });
    });
  },
};
