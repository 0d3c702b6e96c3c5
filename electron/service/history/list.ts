import type { Selectable } from 'kysely';
import type {
  DOG_RECORD_KINDS,
  DogHistoryEntry,
  HistoryAction,
  HistoryEntry,
  HistoryKind,
} from '../../contract/calls/history.ts';
import {
  clientFactsOf,
  dogFactsOf,
  sessionFactsOf,
  visitFactsOf,
  weighingFactsOf,
} from '../../contract/records/facts.ts';
import {
  changesBetween,
  type ChangingKind,
  type FieldChange,
  type KeptFacts,
} from '../../contract/history/historyDiff.ts';
import { clientFromRow } from '../dogs/clients.ts';
import type { Handlers } from '../database/context.ts';
import { dogFromRow, readDog } from '../dogs/dogs.ts';
import type { Db, HistoryRow } from '../database/schema.ts';
import { sessionFromRow } from '../plans/sessions.ts';
import { readVisit } from '../visits/rows.ts';
import { weighingFromRow } from '../weighings/weighings.ts';

type Row = Selectable<HistoryRow>;
type Present = {
  readonly [K in ChangingKind]: (db: Db, id: string) => Promise<KeptFacts[K] | null>;
};

/** The record as it stands, in the bin or not; null when it is not there any more. */
const PRESENT: Present = {
  async client(db, id) {
    const row = await db.selectFrom('client').selectAll().where('id', '=', id).executeTakeFirst();
    return row === undefined ? null : clientFactsOf(clientFromRow(row));
  },
  async dog(db, id) {
    const row = await db.selectFrom('dog').selectAll().where('id', '=', id).executeTakeFirst();
    return row === undefined ? null : dogFactsOf(dogFromRow(row));
  },
  async visit(db, id) {
    const visit = await readVisit(db, id);
    return visit === null ? null : visitFactsOf(visit);
  },
  async session(db, id) {
    const row = await db
      .selectFrom('sessionResult')
      .selectAll()
      .where('id', '=', id)
      .executeTakeFirst();
    return row === undefined ? null : sessionFactsOf(sessionFromRow(row));
  },
  async weighing(db, id) {
    const row = await db.selectFrom('weighing').selectAll().where('id', '=', id).executeTakeFirst();
    return row === undefined ? null : weighingFactsOf(weighingFromRow(row));
  },
};

const isChanging = (kind: HistoryKind): kind is ChangingKind => Object.hasOwn(PRESENT, kind);

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
  const present = await (PRESENT as Present)[kind](db, recordId);
  return new Map(
    states.map(({ id, facts }, index) => {
      const next = index + 1 < states.length ? states[index + 1]!.facts : present;
      return [id, changesBetween(kind, facts, next)];
    }),
  );
}

function entryFrom(row: Row, changes: readonly FieldChange[] = []): HistoryEntry {
  const { id, recordId, at, author, reason, revision } = row;
  return {
    id,
    recordId,
    at,
    author,
    reason,
    revision,
    changes,
    action: row.action as HistoryAction,
  };
}

/** What an entry kept of the record; an entry that brought one back kept nothing. */
interface Kept {
  readonly day?: string;
  readonly name?: string;
  readonly visitId?: string;
}

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
    const takenOut = row.action === 'removed' || row.action === 'binned';
    return {
      ...entryFrom(row, changes.get(row.id)),
      day: known?.day ?? null,
      name: known?.name ?? '',
      visitId: known?.visitId ?? null,
      gone: takenOut && index === rows.length - 1,
    };
  });
}

export const historyHandlers: Handlers<'history/list' | 'history/ofDog'> = {
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
};
