import type { HistoryKind } from '../../contract/calls/history.ts';
import {
  clientFactsOf,
  dogFactsOf,
  sessionFactsOf,
  visitFactsOf,
} from '../../contract/records/facts.ts';
import type { Context } from '../database/context.ts';
import { keepHistory, type Deed } from '../history/history.ts';
import type { Db } from '../database/schema.ts';
import { writeVisitParts } from '../visits/parts.ts';
import type { Work } from '../work.ts';
import type { Pair } from './bundleCompare.ts';
import type { Named, NamedKind } from './bundleNames.ts';
import {
  attachmentRow,
  dogRow,
  ownerRow,
  sessionRow,
  visitRow,
  weighingRow,
} from './bundleRows.ts';

/** Everything that is written in place of what was here. */
export interface Replacing {
  readonly context: Context;
  readonly db: Db;
  /** Names the import, for the history of every record it replaces. */
  readonly reason: string;
  readonly dogOfVisit: ReadonlyMap<string, string>;
}

/** The kinds that have a history and so can be replaced; plans and decisions never are. */
export type ReplaceableKind = Exclude<NamedKind, 'plans' | 'foodDecisions'>;

const HISTORY_KINDS: Readonly<Record<ReplaceableKind, HistoryKind>> = {
  owners: 'client',
  dogs: 'dog',
  visits: 'visit',
  sessions: 'session',
  weighings: 'weighing',
  attachments: 'attachment',
};

export const isReplaceable = (kind: NamedKind): kind is ReplaceableKind =>
  Object.hasOwn(HISTORY_KINDS, kind);

/** Takes the bundle's state of records that differ, and keeps what each was in its history. */
export async function replaceRecords(
  replacing: Replacing,
  work: Work,
  pairs: readonly Pair[],
): Promise<number> {
  let done = 0;
  for (const pair of pairs) {
    if (!isReplaceable(pair.kind)) continue;
    if (done % 100 === 0) {
      await work.step({ done, total: pairs.length, step: 'Taking what the bundle says' });
    }
    await replaceOne(replacing, pair as Pair<ReplaceableKind>);
    done += 1;
  }
  return done;
}

async function replaceOne(replacing: Replacing, pair: Pair<ReplaceableKind>): Promise<void> {
  const { kind, ours, theirs, changes } = pair;
  const base = deedBase(replacing, kind, ours ?? theirs);
  if (ours === null) {
    await keepHistory(replacing.context, replacing.db, {
      ...base,
      action: 'restored',
      before: null,
    });
    await putBack(replacing, kind, theirs);
    return;
  }
  const before = factsOf(kind, ours);
  // Bin and archive are deeds of their own in a history; they leave the facts as they are.
  for (const { path, after } of changes) {
    const action = MOVES[path]?.[after === true ? 'there' : 'back'];
    if (action === undefined) continue;
    await keepHistory(replacing.context, replacing.db, { ...base, action, before });
  }
  if (changes.some(({ path }) => MOVES[path] === undefined)) {
    await keepHistory(replacing.context, replacing.db, { ...base, action: 'amended', before });
  }
  await write(replacing, kind, ours, theirs);
}

const MOVES: Readonly<Record<string, { readonly there: Deed['action']; back: Deed['action'] }>> = {
  binnedAt: { there: 'binned', back: 'restored' },
  archivedAt: { there: 'archived', back: 'unarchived' },
};

export function deedBase(
  { reason, dogOfVisit }: Replacing,
  kind: ReplaceableKind,
  record: Named,
): Omit<Deed, 'action' | 'before'> {
  const { id: recordId } = record;
  const dogId =
    kind === 'dogs'
      ? recordId
      : kind === 'attachments'
        ? dogOfVisit.get((record as Named<'attachments'>).visitId)!
        : (record as Named<'visits'>).dogId;
  return {
    kind: HISTORY_KINDS[kind],
    recordId,
    of: kind === 'owners' ? { clientId: recordId } : { dogId },
    revision: 'revision' in record ? record.revision : null,
    reason,
  };
}

/** What a record was, as its own history keeps it. */
function factsOf(kind: ReplaceableKind, record: Named): object {
  switch (kind) {
    case 'owners':
      return clientFactsOf(record as Named<'owners'>);
    case 'dogs':
      return dogFactsOf(record as Named<'dogs'>);
    case 'visits':
      return visitFactsOf(record as Named<'visits'>);
    case 'sessions': {
      const session = record as Named<'sessions'>;
      return { ...sessionFactsOf(session), author: session.author };
    }
    case 'weighings':
      return weighingRow(record as Named<'weighings'>);
    case 'attachments': {
      const { visitId, hash, kind: what, name } = record as Named<'attachments'>;
      return { visitId, hash, kind: what, name };
    }
  }
}

/** Brings back a session or weighing that was taken out here. */
async function putBack({ db }: Replacing, kind: ReplaceableKind, theirs: Named): Promise<void> {
  if (kind === 'sessions') {
    await db
      .insertInto('sessionResult')
      .values(sessionRow(theirs as Named<'sessions'>))
      .execute();
  }
  if (kind === 'weighings') {
    await db
      .insertInto('weighing')
      .values(weighingRow(theirs as Named<'weighings'>))
      .execute();
  }
}

/** Writes the bundle's state under the number and the first day the record has here. */
async function write(
  { context, db }: Replacing,
  kind: ReplaceableKind,
  ours: Named,
  theirs: Named,
): Promise<void> {
  const { id } = ours;
  const stored = { id, createdAt: ours.createdAt, updatedAt: context.instant() };
  // A form opened before the import must not overwrite what came with it.
  const revision = 'revision' in ours ? ours.revision + 1 : 1;
  switch (kind) {
    case 'owners': {
      const row = { ...ownerRow(theirs as Named<'owners'>), ...stored, revision };
      await db.updateTable('client').set(row).where('id', '=', id).execute();
      return;
    }
    case 'dogs': {
      const row = { ...dogRow(theirs as Named<'dogs'>), ...stored, revision };
      await db.updateTable('dog').set(row).where('id', '=', id).execute();
      return;
    }
    case 'visits': {
      const visit = theirs as Named<'visits'>;
      const row = { ...visitRow(visit), ...stored, revision };
      await db.updateTable('visit').set(row).where('id', '=', id).execute();
      await writeVisitParts(db, id, visit);
      return;
    }
    case 'sessions': {
      const row = { ...sessionRow(theirs as Named<'sessions'>), ...stored };
      await db.updateTable('sessionResult').set(row).where('id', '=', id).execute();
      return;
    }
    case 'weighings': {
      const row = { ...weighingRow(theirs as Named<'weighings'>), ...stored };
      await db.updateTable('weighing').set(row).where('id', '=', id).execute();
      return;
    }
    case 'attachments': {
      const { name, kind: what, binnedAt } = attachmentRow(theirs as Named<'attachments'>);
      await db
        .updateTable('attachment')
        .set({ name, kind: what, binnedAt })
        .where('id', '=', id)
        .execute();
    }
  }
}
