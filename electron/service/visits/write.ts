import { toRow } from '../../contract/records/columns.ts';
import { visitFactsOf } from '../../contract/records/facts.ts';
import { changesBetween } from '../../contract/history/historyDiff.ts';
import type { ParsedOf } from '../../contract/contract.ts';
import { visitFacts, type VisitFacts } from '../../contract/records.ts';
import { assertLatest, assertReasonGiven } from '../history/amend.ts';
import { authorNow } from '../practice/practitioners.ts';
import type { Context } from '../database/context.ts';
import { VISIT } from '../../contract/records/visit.ts';
import { firstRevision } from '../database/rows.ts';
import { keepHistory } from '../history/history.ts';
import { badField, notFound } from '../refuse.ts';
import type { Db, VisitRow } from '../database/schema.ts';
import { writeVisitParts } from './parts.ts';
import { readVisits } from './rows.ts';

type SentVisit = Omit<ParsedOf<'visits/save'>, 'plan' | 'food' | 'review' | 'sessions'>;

/** Keeps a new visit or amends one that is there. Runs inside a transaction. @returns its id. */
export async function writeVisit(context: Context, db: Db, sent: SentVisit): Promise<string> {
  if (sent.id === null) return insertVisit(context, db, sent.visit);
  await amendVisit(context, db, { ...sent, id: sent.id });
  return sent.id;
}

async function insertVisit(context: Context, db: Db, facts: VisitFacts): Promise<string> {
  const row: VisitRow = {
    ...toRow(VISIT, facts),
    ...firstRevision(context),
    author: await authorNow(db),
    binnedAt: null,
  };
  await db.insertInto('visit').values(row).execute();
  await writeVisitParts(db, row.id, facts);
  return row.id;
}

/** Keeps what the visit was, then writes what it is. Nothing is written when nothing changed. */
async function amendVisit(
  context: Context,
  db: Db,
  sent: SentVisit & { id: string },
): Promise<void> {
  const { id, visit: facts } = sent;
  const visits = await readVisits(db, facts.dogId);
  const stored = visits.find((visit) => visit.id === id);
  if (stored === undefined) throw await noSuchVisit(db, id);
  await assertLatest(db, 'The visit', stored, sent.basedOn);
  const before = visitFactsOf(stored);
  // What is sent has been cleaned of what no text may hold; what an earlier release stored may not.
  const cleaned = visitFacts().safeParse(before).data ?? before;
  if (changesBetween('visit', cleaned, facts).length === 0) return;
  assertReasonGiven('the visit', sent.reason);
  await keepHistory(context, db, {
    kind: 'visit',
    recordId: id,
    of: { dogId: facts.dogId },
    action: 'amended',
    revision: stored.revision,
    reason: sent.reason ?? '',
    before,
  });
  await db
    .updateTable('visit')
    .set({ ...toRow(VISIT, facts), updatedAt: context.instant(), revision: stored.revision + 1 })
    .where('id', '=', id)
    .execute();
  await writeVisitParts(db, id, facts);
}

async function noSuchVisit(db: Db, id: string): Promise<Error> {
  const elsewhere = await db
    .selectFrom('visit')
    .select('dogId')
    .where('id', '=', id)
    .where('binnedAt', 'is', null)
    .executeTakeFirst();
  if (elsewhere === undefined) return notFound('The visit');
  return badField('visit.dogId', 'A visit stays with its dog.');
}
