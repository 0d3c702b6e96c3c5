import { sql, type Kysely } from 'kysely';
import type { DogLine } from '../contract/contract.ts';
import type { Dog, DogInput } from '../contract/records.ts';
import { insertClient, readClient } from './clients.ts';
import type { Desk, Handlers } from './context.ts';
import { badField, notFound } from './refuse.ts';
import type { DogRow, Schema } from './schema.ts';
import { likeWords, matches, searchText } from './searchText.ts';

const MOST_LISTED = 100;

const bit = (yes: boolean): 0 | 1 => (yes ? 1 : 0);

function fromRow(row: DogRow): Dog {
  const { searchText: _searchText, binnedAt: _binnedAt, ...dog } = row;
  return {
    ...dog,
    sex: dog.sex as Dog['sex'],
    neuter: dog.neuter as Dog['neuter'],
    coat: dog.coat as Dog['coat'],
    shortNosed: dog.shortNosed === 1,
    sighthound: dog.sighthound === 1,
  };
}

function toRow(dog: DogInput) {
  return {
    ...dog,
    shortNosed: bit(dog.shortNosed),
    sighthound: bit(dog.sighthound),
    searchText: searchText(dog.name, dog.breed),
  };
}

/** Reads one dog. @throws Refusal (not-found). */
export async function readDog(db: Kysely<Schema>, id: string): Promise<Dog> {
  const row = await db
    .selectFrom('dog')
    .selectAll()
    .where('id', '=', id)
    .where('binnedAt', 'is', null)
    .executeTakeFirst();
  if (row === undefined) throw notFound('The dog');
  return fromRow(row);
}

async function insertDog(desk: Desk, db: Kysely<Schema>, dog: DogInput): Promise<Dog> {
  const at = desk.instant();
  const row: DogRow = {
    ...toRow(dog),
    id: desk.newId(),
    createdAt: at,
    updatedAt: at,
    revision: 1,
    archivedAt: null,
    binnedAt: null,
  };
  await db.insertInto('dog').values(row).execute();
  return fromRow(row);
}

function assertBornBy(desk: Desk, birthDay: string): void {
  if (birthDay <= desk.today()) return;
  throw badField('dog.birthDay', 'Day of birth must not lie in the future.');
}

/** The ids of the dogs that match, latest seen first. */
function foundDogs(desk: Desk, query: string) {
  let select = desk.db
    .selectFrom('dog')
    .innerJoin('client', 'client.id', 'dog.clientId')
    .select((eb) => [
      'dog.id',
      'dog.searchText',
      // The latest day alone is in the index; the visits of all dogs need not be read.
      eb
        .selectFrom('visit')
        .select((of) => of.fn.max('visit.day').as('day'))
        .whereRef('visit.dogId', '=', 'dog.id')
        .where('visit.binnedAt', 'is', null)
        .as('lastDay'),
    ])
    .where('dog.binnedAt', 'is', null)
    .where('dog.archivedAt', 'is', null)
    .where('client.binnedAt', 'is', null);
  for (const word of likeWords(query)) {
    select = select.where((eb) =>
      eb.or([matches('dog.searchText', word), matches('client.searchText', word)]),
    );
  }
  return select
    .orderBy(sql`last_day is null`)
    .orderBy('lastDay', 'desc')
    .orderBy('dog.searchText')
    .limit(MOST_LISTED);
}

async function listDogs(desk: Desk, query: string): Promise<DogLine[]> {
  return desk.db
    .selectFrom(foundDogs(desk, query).as('found'))
    .innerJoin('dog', 'dog.id', 'found.id')
    .innerJoin('client', 'client.id', 'dog.clientId')
    .leftJoin('visit', (join) =>
      join.on('visit.id', '=', (eb) =>
        eb
          .selectFrom('visit as latest')
          .select('latest.id')
          .whereRef('latest.dogId', '=', 'found.id')
          .where('latest.binnedAt', 'is', null)
          .orderBy('latest.day', 'desc')
          .orderBy('latest.createdAt', 'desc')
          .limit(1),
      ),
    )
    .select([
      'dog.id',
      'dog.name',
      'dog.breed',
      'dog.clientId',
      'client.name as clientName',
      'client.phone',
      'visit.day as lastVisitDay',
      'visit.weightKg as lastWeightKg',
      'visit.bcs as lastBcs',
    ])
    .orderBy(sql`found.last_day is null`)
    .orderBy('found.lastDay', 'desc')
    .orderBy('found.searchText')
    .execute();
}

export const dogHandlers: Handlers<'dogs/list' | 'dogs/save' | 'dogs/saveWithOwner'> = {
  'dogs/list': (desk, { query }) => listDogs(desk, query),
  'dogs/save': async (desk, { id, dog }) => {
    assertBornBy(desk, dog.birthDay);
    await readClient(desk.db, dog.clientId);
    if (id === null) return insertDog(desk, desk.db, dog);
    const row = await desk.db
      .updateTable('dog')
      .set({ ...toRow(dog), updatedAt: desk.instant() })
      .where('id', '=', id)
      .returningAll()
      .executeTakeFirst();
    if (row === undefined) throw notFound('The dog');
    return fromRow(row);
  },
  'dogs/saveWithOwner': async (desk, { client, dog }) => {
    assertBornBy(desk, dog.birthDay);
    return desk.db.transaction().execute(async (transaction) => {
      const owner = await insertClient(desk, transaction, client);
      return insertDog(desk, transaction, { ...dog, clientId: owner.id });
    });
  },
};
