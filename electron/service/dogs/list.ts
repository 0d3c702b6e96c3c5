import { sql, type RawBuilder } from 'kysely';
import type { DogLine, FoundDogs, ParsedOf } from '../../contract/contract.ts';
import { MOST_LISTED, type DogOrder } from '../../contract/dogs/list.ts';
import type { Context, Handlers } from '../database/context.ts';
import { oneOf, seenDogs } from '../database/rows.ts';
import { dogsHolding } from './filters.ts';
import { lastMeasures } from './presentLines.ts';
import { likeWords, matches } from './searchText.ts';

type Page = ParsedOf<'dogs/list'>;

/** A number typed without the spaces it is written with. */
function phoneMatches(word: string): RawBuilder<boolean>[] {
  if (!/^%\d{3,}%$/.test(word)) return [];
  return [
    sql<boolean>`replace(replace(replace(client.phone, ' ', ''), '-', ''), '/', '') like ${word}`,
  ];
}

/** What a word is looked for in. */
type Place = FoundDogs['foundIn'];

/** Shorter words stand in almost every note: by themselves they look for none (D). */
const LEAST_NOTED = 3;
const isTelling = (word: string): boolean => word.length >= LEAST_NOTED + '%%'.length;

const BEYOND_ASCII = '*[^\u0001-\u007f]*';

/** Whether one of these columns holds the word, read without accents. */
function holds(word: string, ...columns: readonly string[]): RawBuilder<boolean> {
  const texts = columns.map((column) => sql.ref(column));
  const text = sql`(${sql.join(texts, sql` || ' ' || `)})`;
  const written = texts.map((column) => sql<boolean>`${column} <> ''`);
  // Most stay empty. LIKE by itself is blind to the case of plain letters; only text with others is
  // worth a call.
  return sql<boolean>`(${anyOf(written)} and (case when ${text} glob ${BEYOND_ASCII}
    then as_searched(${text}) else ${text} end) like ${word} escape '\\')`;
}

const anyOf = (conditions: readonly RawBuilder<boolean>[]): RawBuilder<boolean> =>
  sql<boolean>`(${sql.join(conditions, sql` or `)})`;

/**
 * Whether a word stands in a name or number of the dog or its owner; where notes are read, also in what
 * was written of them, of their vet, and at the visits. Owners and visits are gone through once, and
 * not for every dog anew.
 */
function matchesWord(word: string, readsNotes: boolean): RawBuilder<boolean> {
  const ofClient = [matches('client.searchText', word), ...phoneMatches(word)];
  const ofDog = [matches('dog.searchText', word)];
  if (readsNotes) {
    ofClient.push(holds(word, 'client.notes', 'client.vetName', 'client.vetPractice'));
    ofDog.push(
      holds(word, 'dog.notes'),
      sql<boolean>`dog.id in (select visit.dog_id from visit where visit.binned_at is null
        and ${holds(word, 'visit.diagnosis', 'visit.referral', 'visit.notes')})`,
    );
  }
  const owners = sql`select client.id from client where ${anyOf(ofClient)}`;
  return anyOf([...ofDog, sql<boolean>`dog.client_id in (${owners})`]);
}

/** The dogs that match a listing, with their owners. */
async function matching(context: Context, { query, filters = [] }: Page, place: Place) {
  let select = seenDogs(context.db);
  if (!filters.includes('archived too')) select = select.where('dog.archivedAt', 'is', null);
  const words = likeWords(query);
  const readsNotes = place === 'notes' && words.some(isTelling);
  for (const word of words) select = select.where(matchesWord(word, readsNotes));
  for (const filter of filters) {
    if (filter === 'archived too') continue;
    select = select.where('dog.id', 'in', oneOf(await dogsHolding(context, filter)));
  }
  return select;
}

// Only for the order of a list: what its lines show comes from core.

/** The last score that was given. */
const LAST_BCS = sql`(select latest.bcs from visit as latest
    where latest.dog_id = dog.id and latest.binned_at is null and latest.bcs is not null
    order by latest.day desc, latest.created_at desc limit 1)`;

/** The latest weight, at a visit or between; of one day that of the visit counts, as in core. */
const LAST_WEIGHT = sql<number | null>`(select weight_kg from (
    select day, 1 as at_visit, created_at, weight_kg from visit
      where dog_id = dog.id and binned_at is null and weight_kg is not null
    union all
    select day, 0, created_at, weight_kg from weighing where dog_id = dog.id)
  order by day desc, at_visit desc, created_at desc limit 1)`;

// The latest day alone is in the index; the visits of all dogs need not be read.
const LAST_DAY = sql<string | null>`(select max(visit.day) from visit
  where visit.dog_id = dog.id and visit.binned_at is null)`;

const KEYS: Readonly<Record<DogOrder, RawBuilder<unknown>>> = {
  // By its name in the list: asked for twice, it would be looked up twice for every dog.
  'last visit': sql`last_visit_day`,
  name: sql`dog.search_text`,
  owner: sql`client.search_text`,
  weight: LAST_WEIGHT,
  condition: LAST_BCS,
};

/** Which way round each column is read first: the latest visit, but names from A. */
const FIRST_DOWN: Readonly<Record<DogOrder, boolean>> = {
  'last visit': true,
  name: false,
  owner: false,
  weight: true,
  condition: true,
};

/**
 * One page of the dogs that match, with what their lines show, and how many match in all. Names lead:
 * notes, reason, diagnosis and vet are read only where no name has the words, which keeps a key quick.
 */
async function findDogs(context: Context, page: Page): Promise<FoundDogs> {
  const named = await pageOf(context, page, 'names');
  const isPastTheFirst = (page.offset ?? 0) > 0;
  if (named.count > 0 || page.query.trim() === '') return named;
  if (isPastTheFirst && (await pageOf(context, { ...page, offset: 0 }, 'names')).count > 0) {
    return named;
  }
  const noted = await pageOf(context, page, 'notes');
  return noted.count > 0 ? noted : named;
}

async function pageOf(context: Context, page: Page, place: Place): Promise<FoundDogs> {
  const { order = 'last visit', offset = 0 } = page;
  const direction = (page.descending ?? FIRST_DOWN[order]) ? 'desc' : 'asc';
  const select = await matching(context, page, place);
  const found = await select
    .select([
      'dog.id',
      LAST_DAY.as('lastVisitDay'),
      // Counted on the way: a second query would look for all of them once more.
      sql<number>`count(*) over ()`.as('count'),
    ])
    // Dogs without a value stand last, whichever way round.
    .orderBy(KEYS[order], (key) => key[direction]().nullsLast())
    .orderBy('dog.searchText')
    .orderBy('dog.id')
    .limit(MOST_LISTED)
    .offset(offset)
    .execute();
  const ids = found.map(({ id }) => id);
  const [lines, measured] = await Promise.all([
    readNames(context, ids),
    lastMeasures(context, ids),
  ]);
  const dogs = found.map(({ id, lastVisitDay }) => {
    const { kg, bcs } = measured.get(id)!;
    return { ...lines.get(id)!, lastVisitDay, lastWeightKg: kg, lastBcs: bcs };
  });
  return { dogs, count: found[0]?.count ?? 0, foundIn: place };
}

/** What the lines of these dogs say of them and their owners: sorting goes faster without it. */
async function readNames({ db }: Context, dogIds: readonly string[]) {
  const rows = await db
    .selectFrom('dog')
    .innerJoin('client', 'client.id', 'dog.clientId')
    .select([
      'dog.id',
      'dog.name',
      'dog.breed',
      'dog.clientId',
      'dog.archivedAt',
      'client.name as clientName',
      'client.phone',
    ])
    .where('dog.id', 'in', dogIds)
    .execute();
  return new Map(rows.map((row) => [row.id, row]));
}

const listDogs = async (context: Context, page: Page): Promise<readonly DogLine[]> =>
  (await findDogs(context, page)).dogs;

function dogsOfOwner(context: Context, { clientId }: { readonly clientId: string }) {
  return context.db
    .selectFrom('dog')
    .select(['id', 'name', 'archivedAt'])
    .where('clientId', '=', clientId)
    .where('binnedAt', 'is', null)
    .orderBy('searchText')
    .execute();
}

type ListCall = 'dogs/list' | 'dogs/find' | 'dogs/ofOwner';

export const dogListHandlers: Handlers<ListCall> = {
  'dogs/list': listDogs,
  'dogs/find': findDogs,
  'dogs/ofOwner': dogsOfOwner,
};
