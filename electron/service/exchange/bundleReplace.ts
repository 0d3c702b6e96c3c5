import { factsOf as factsOfKind } from '../../contract/records/facts.ts';
import type { Context } from '../database/context.ts';
import { keepHistory, type Deed } from '../history/history.ts';
import type { AttachmentRow, Db } from '../database/schema.ts';
import { writeVisitParts } from '../visits/parts.ts';
import type { Work } from '../work.ts';
import type { Pair } from './bundleCompare.ts';
import { KINDS, rowOf, type Named, type NamedKind } from './bundleKinds.ts';

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

export const isReplaceable = (kind: NamedKind): kind is ReplaceableKind =>
  KINDS[kind].history !== null;

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
    kind: KINDS[kind].history,
    recordId,
    of: kind === 'owners' ? { clientId: recordId } : { dogId },
    revision: 'revision' in record ? record.revision : null,
    reason,
  };
}

/** What a record was, as its own history keeps it. */
function factsOf(kind: ReplaceableKind, record: Named): object {
  if (kind === 'weighings') return rowOf(kind, record as Named<'weighings'>);
  if (kind === 'attachments') {
    const { visitId, hash, kind: what, name } = record as Named<'attachments'>;
    return { visitId, hash, kind: what, name };
  }
  const facts = factsOfKind(KINDS[kind].history, record as never);
  return kind === 'sessions' ? { ...facts, author: (record as Named<'sessions'>).author } : facts;
}

/** Brings back a session or weighing that was taken out here. */
async function putBack({ db }: Replacing, kind: ReplaceableKind, theirs: Named): Promise<void> {
  if (kind !== 'sessions' && kind !== 'weighings') return;
  await db
    .insertInto(KINDS[kind].table)
    .values(rowOf(kind, theirs as never))
    .execute();
}

/** Writes the bundle's state under the number and the first day the record has here. */
async function write(
  { context, db }: Replacing,
  kind: ReplaceableKind,
  ours: Named,
  theirs: Named,
): Promise<void> {
  const { id } = ours;
  await db
    .updateTable(KINDS[kind].table)
    .set(changedRow(context, kind, ours, theirs) as never)
    .where('id', '=', id)
    .execute();
  if (kind === 'visits') await writeVisitParts(db, id, theirs as Named<'visits'>);
}

function changedRow(context: Context, kind: ReplaceableKind, ours: Named, theirs: Named): object {
  const row = rowOf(kind, theirs as never);
  if (kind === 'attachments') {
    const { name, kind: what, binnedAt } = row as AttachmentRow;
    return { name, kind: what, binnedAt };
  }
  const stored = { id: ours.id, createdAt: ours.createdAt, updatedAt: context.instant() };
  if (kind === 'sessions') return { ...row, ...stored };
  // A form opened before the import must not overwrite what came with it.
  const { revision } = ours as Named<'owners' | 'dogs' | 'visits' | 'weighings'>;
  return { ...row, ...stored, revision: revision + 1 };
}
