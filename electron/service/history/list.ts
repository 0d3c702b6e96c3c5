import { sql, type Selectable } from 'kysely';
import type {
  DOG_RECORD_KINDS,
  DogHistoryEntry,
  DogDeed,
  HistoryEntry,
  HistoryKind,
} from '../../contract/calls/history.ts';
import { MOST_DEEDS } from '../../contract/dogs/list.ts';
import { fromRow } from '../../contract/records/columns.ts';
import { factsOf, RECORDS } from '../../contract/records/facts.ts';
import {
  changesBetween,
  type ChangingKind,
  type FieldChange,
  type KeptFacts,
} from '../../contract/history/historyDiff.ts';
import type { Handlers } from '../database/context.ts';
import { readDog } from '../dogs/dogs.ts';
import type { Db, HistoryRow } from '../database/schema.ts';
import { readVisit } from '../visits/rows.ts';

type Row = Selectable<HistoryRow>;

const TABLES = {
  client: 'client',
  dog: 'dog',
  session: 'sessionResult',
  weighing: 'weighing',
} as const;

/** The facts of a record as it stands, in the bin or not; null when it is not there any more. */
export async function presentFacts<K extends ChangingKind>(
  db: Db,
  kind: K,
  id: string,
): Promise<KeptFacts[K] | null>;
export async function presentFacts(
  db: Db,
  kind: ChangingKind,
  id: string,
): Promise<KeptFacts[ChangingKind] | null> {
  if (kind === 'visit') {
    const visit = await readVisit(db, id);
    return visit === null ? null : factsOf('visit', visit);
  }
  const { rows } = await sql`select * from ${sql.table(TABLES[kind])} where id = ${id}`.execute(db);
  return rows[0] === undefined ? null : (fromRow(RECORDS[kind], rows[0] as never) as never);
}

const isChanging = (kind: HistoryKind): kind is ChangingKind => Object.hasOwn(RECORDS, kind);

/** True where the facts themselves changed; bin and archive leave them as they are. */
const changesFacts = ({ action, before }: Row): boolean =>
  action === 'amended' || action === 'removed' || before === 'null';

/** The changes of each entry, by its id: from what it kept to what the next one kept. */
async function changesOf<K extends ChangingKind>(
  db: Db,
  kind: K,
  rows: readonly Row[],
  recordId: string,
): Promise<Map<number, readonly FieldChange[]>> {
  const states = rows
    .filter(changesFacts)
    .map(({ id, before }) => ({ id, facts: JSON.parse(before) as KeptFacts[K] | null }));
  const present = await presentFacts(db, kind, recordId);
  return new Map(
    states.map(({ id, facts }, index) => {
      const next = index + 1 < states.length ? states[index + 1]!.facts : present;
      return [id, changesBetween(kind, facts, next)];
    }),
  );
}

function entryFrom(row: Row, changes: readonly FieldChange[] = []): HistoryEntry {
  const { id, recordId, at, author, reason, revision, action } = row;
  return { id, recordId, at, author, reason, revision, changes, action };
}

/** What an entry kept of the record; an entry that brought one back kept nothing. */
interface Kept {
  readonly day?: string;
  readonly name?: string;
  readonly visitId?: string;
}

const takesOut = ({ action }: Row): boolean => action === 'removed' || action === 'binned';

/** The entries of one record of a dog, `rows` in order. */
async function ofRecord(
  db: Db,
  kind: (typeof DOG_RECORD_KINDS)[number],
  recordId: string,
  rows: readonly Row[],
): Promise<DogHistoryEntry[]> {
  const changes = kind === 'attachment' ? new Map() : await changesOf(db, kind, rows, recordId);
  return rows.map((row, index) => {
    const known = [...rows.slice(index), ...rows.slice(0, index).reverse()]
      .map(({ before }) => JSON.parse(before) as Kept | null)
      .find((before) => before !== null);
    return {
      ...entryFrom(row, changes.get(row.id)),
      day: known?.day ?? null,
      name: known?.name ?? '',
      visitId: known?.visitId ?? null,
      gone: takesOut(row) && index === rows.length - 1,
    };
  });
}

function deedFrom(row: Row, kept: Kept, gone: boolean): DogDeed {
  const { id, kind, recordId, action, at, author, reason } = row;
  const of = { day: kept.day ?? null, name: kind === 'attachment' ? (kept.name ?? '') : '' };
  const visitId = kind === 'visit' ? recordId : (kept.visitId ?? null);
  return { id, kind, recordId, action, at, author, reason, ...of, visitId, gone };
}

/** The deeds on one record, latest first. */
function deedsOn(rows: readonly Row[]): DogDeed[] {
  const kept = rows.map(({ before }) => JSON.parse(before) as Kept | null);
  const gone = takesOut(rows[0]!);
  return rows.map((row, index) => {
    // Where an entry kept nothing, the one nearest to it tells day and name.
    const near = kept[index] ?? kept.slice(index + 1).find(Boolean) ?? kept.find(Boolean) ?? {};
    return deedFrom(row, near, gone);
  });
}

type HistoryCall = 'history/list' | 'history/ofDog' | 'dogs/deeds';

export const historyHandlers: Handlers<HistoryCall> = {
  'history/ofDog': async ({ db }, { dogId, kind }) => {
    await readDog(db, dogId);
    const rows = await db
      .selectFrom('history')
      .selectAll()
      .where('dogId', '=', dogId)
      .where('kind', '=', kind)
      .orderBy('id')
      .execute();
    const entries: DogHistoryEntry[] = [];
    for (const [recordId, own] of Map.groupBy(rows, (row) => row.recordId)) {
      entries.push(...(await ofRecord(db, kind, recordId, own)));
    }
    return entries.sort((a, b) => b.id - a.id);
  },
  'history/list': async ({ db }, { kind, recordId }) => {
    const rows = await db
      .selectFrom('history')
      .selectAll()
      .where('kind', '=', kind)
      .where('recordId', '=', recordId)
      .where('action', '<>', 'made')
      .orderBy('id')
      .execute();
    const changes = isChanging(kind) ? await changesOf(db, kind, rows, recordId) : new Map();
    return rows.map((row) => entryFrom(row, changes.get(row.id)));
  },
  'dogs/deeds': async ({ db }, { dogId }) => {
    await readDog(db, dogId);
    const rows = await db
      .selectFrom('history')
      .selectAll()
      .where('dogId', '=', dogId)
      .orderBy('id', 'desc')
      .limit(MOST_DEEDS)
      .execute();
    const records = Map.groupBy(rows, ({ kind, recordId }) => `${kind} ${recordId}`);
    return [...records.values()].flatMap(deedsOn).sort((a, b) => b.id - a.id);
  },
};
