import { changesBetween } from '../../contract/history/historyDiff.ts';
import type { ClientInput, DogInput } from '../../contract/records.ts';
import { fromRow, toRow } from '../../contract/records/columns.ts';
import { factsOf, RECORDS, type KeptFacts } from '../../contract/records/facts.ts';
import type { Fields, ValuesOf } from '../../contract/records/fieldKinds.ts';
import { KEPT } from '../../contract/records/stored.ts';
import type { Context } from '../database/context.ts';
import { firstRevision } from '../database/rows.ts';
import type { Db } from '../database/schema.ts';
import { assertLatest } from '../history/amend.ts';
import { keepHistory } from '../history/history.ts';
import { searchText } from './searchText.ts';

// Owners and dogs: counted, found by their text, and kept in the same way.

type Kind = 'client' | 'dog';
type Facts<K extends Kind> = KeptFacts[K];
type Kept<K extends Kind> = ValuesOf<(typeof KEPT)[K]>;

const NAMES: Readonly<Record<Kind, string>> = { client: 'The owner', dog: 'The dog' };
const IN_USE = { client: { binnedAt: null }, dog: { binnedAt: null, archivedAt: null } } as const;

/** The text an owner is found by. */
export const searchableClient = ({ name, phone, email }: ClientInput): string =>
  searchText(name, phone, email);

/** The text a dog is found by. */
export const searchableDog = ({ name, breed, chip }: DogInput): string =>
  searchText(name, breed, chip);

/** The row of what was entered, and the text it is found by. */
const columnsOf = <K extends Kind>(kind: K, facts: Facts<K>) => ({
  ...toRow<Fields>(RECORDS[kind], facts),
  searchText:
    kind === 'dog' ? searchableDog(facts as DogInput) : searchableClient(facts as ClientInput),
});

export const recordFrom = <K extends Kind>(kind: K, row: object): Kept<K> =>
  fromRow<Fields>(KEPT[kind], row as never) as Kept<K>;

/** Keeps a new owner or dog. */
export async function insertRecord<K extends Kind>(
  context: Context,
  db: Db,
  kind: K,
  facts: Facts<K>,
): Promise<Kept<K>> {
  const row = { ...columnsOf(kind, facts), ...firstRevision(context), ...IN_USE[kind] };
  await db
    .insertInto(kind)
    .values(row as never)
    .execute();
  return recordFrom(kind, row);
}

/** What is sent of a record that is there. */
export interface Sent<K extends Kind> {
  readonly facts: Facts<K>;
  readonly basedOn: number | null | undefined;
  readonly reason: string | undefined;
  /** Names the field of the revision. */
  readonly path?: string;
}

/**
 * Keeps what a record was, then writes what is sent; nothing when nothing changed. Runs inside a
 * transaction. @throws Refusal (conflict)
 */
export async function amendRecord<K extends Kind>(
  context: Context,
  db: Db,
  kind: K,
  stored: Kept<K>,
  { facts, basedOn, reason, path }: Sent<K>,
): Promise<Kept<K>> {
  const { id, revision } = stored;
  await assertLatest(db, NAMES[kind], stored, basedOn, path);
  const before = factsOf(kind, stored as Facts<K>);
  if (changesBetween(kind, before, facts).length === 0) return stored;
  await keepHistory(context, db, {
    kind,
    recordId: id,
    of: kind === 'dog' ? { dogId: id } : { clientId: id },
    action: 'amended',
    revision,
    reason: reason ?? '',
    before,
  });
  const changed = { updatedAt: context.instant(), revision: revision + 1 };
  const row = await db
    .updateTable(kind as Kind)
    .set({ ...columnsOf(kind, facts), ...changed } as never)
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirstOrThrow();
  return recordFrom(kind, row);
}
