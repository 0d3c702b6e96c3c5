import type { Kysely, Selectable } from 'kysely';
import type { HistoryAction, HistoryEntry, HistoryKind } from '../contract/calls/history.ts';
import {
  clientFactsOf,
  dogFactsOf,
  sessionFactsOf,
  visitFactsOf,
  weighingFactsOf,
} from '../contract/facts.ts';
import {
  changesBetween,
  type ChangingKind,
  type FieldChange,
  type KeptFacts,
} from '../contract/history/historyDiff.ts';
import { clientFromRow } from './clients.ts';
import type { Handlers } from './context.ts';
import { dogFromRow } from './dogs.ts';
import type { HistoryRow, Schema } from './schema.ts';
import { sessionFromRow } from './sessions.ts';
import { readVisit } from './visitRows.ts';
import { weighingFromRow } from './weighings.ts';

type Db = Kysely<Schema>;
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

export const historyHandlers: Handlers<'history/list'> = {
  'history/list': async ({ db }, { kind, recordId }) => {
    const rows = await db
      .selectFrom('history')
      .selectAll()
      .where('kind', '=', kind)
      .where('recordId', '=', recordId)
      .orderBy('id')
      .execute();
    const changes = isChanging(kind) ? await changesOf(db, kind, rows, recordId) : new Map();
    return rows.map(({ id, at, author, action, reason, revision }): HistoryEntry => ({
      id,
      recordId,
      at,
      author,
      action: action as HistoryAction,
      reason,
      revision,
      changes: changes.get(id) ?? [],
    }));
  },
};
