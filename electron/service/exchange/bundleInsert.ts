import type { Insertable } from 'kysely';
import { oneOf } from '../bin/scope.ts';
import type { Db, Schema, StoredFileRow } from '../database/schema.ts';
import { PART_TABLES, partRows } from '../visits/parts.ts';
import type { Work } from '../work.ts';
import type { Comparison } from './bundleCompare.ts';
import type { Named } from './bundleNames.ts';
import {
  attachmentRow,
  dogRow,
  foodDecisionRow,
  ownerRow,
  planRow,
  sessionRow,
  visitRow,
  weighingRow,
} from './bundleRows.ts';

type Fresh = Comparison['fresh'];

/** SQLite takes so many values in one statement, and the work looks up between statements. */
const VALUES_AT_ONCE = 30_000;
const ROWS_AT_ONCE = 500;

/** Inserts rows in pieces. */
export async function insertRows<T extends keyof Schema & string>(
  db: Db,
  table: T,
  rows: readonly Insertable<Schema[T]>[],
  between: () => Promise<void> = async () => undefined,
): Promise<void> {
  const columns = Math.max(1, Object.keys(rows[0] ?? {}).length);
  const atOnce = Math.min(ROWS_AT_ONCE, Math.floor(VALUES_AT_ONCE / columns));
  for (let from = 0; from < rows.length; from += atOnce) {
    await between();
    await db
      .insertInto(table)
      .values(rows.slice(from, from + atOnce) as never)
      .execute();
  }
}

/** Inserts what is new, owners first. Runs inside the transaction of the import. */
export async function insertFresh(db: Db, work: Work, fresh: Fresh, at: string): Promise<void> {
  const step = (step: string, done: number) => () => work.step({ done, total: 8, step });
  await insertRows(db, 'client', fresh.owners.map(ownerRow), step('Keeping the owners', 0));
  await insertRows(db, 'dog', fresh.dogs.map(dogRow), step('Keeping the dogs', 1));
  await insertVisits(db, fresh.visits, step('Keeping the visits', 2));
  await insertPlans(db, fresh.plans, step('Keeping the plans', 3));
  const sessions = fresh.sessions.map(sessionRow);
  await insertRows(db, 'sessionResult', sessions, step('Keeping the session results', 4));
  const decisions = fresh.foodDecisions.map(foodDecisionRow);
  await insertRows(db, 'foodDecision', decisions, step('Keeping the decisions on food', 5));
  const weighings = fresh.weighings.map(weighingRow);
  await insertRows(db, 'weighing', weighings, step('Keeping the weighings', 6));
  await insertFiles(db, fresh.attachments, at, step('Keeping the attached files', 7));
}

async function insertVisits(
  db: Db,
  visits: readonly Named<'visits'>[],
  between: () => Promise<void>,
): Promise<void> {
  for (let from = 0; from < visits.length; from += ROWS_AT_ONCE) {
    const some = visits.slice(from, from + ROWS_AT_ONCE);
    await insertRows(db, 'visit', some.map(visitRow), between);
    const parts = some.map((visit) => partRows(visit.id, visit));
    for (const table of PART_TABLES) {
      await insertRows(
        db,
        table,
        parts.flatMap((rows) => rows[table] as never[]),
      );
    }
  }
}

/**
 * Plans of a dog that is here may bear version numbers taken here: they go behind. None is put in
 * force yet.
 */
async function insertPlans(
  db: Db,
  plans: readonly Named<'plans'>[],
  between: () => Promise<void>,
): Promise<void> {
  const dogIds = [...new Set(plans.map(({ dogId }) => dogId))];
  const here = await db
    .selectFrom('plan')
    .select(['dogId', 'version'])
    .where('dogId', 'in', oneOf(dogIds))
    .execute();
  const taken = new Set(here.map(({ dogId, version }) => `${dogId} ${version}`));
  const highest = new Map<string, number>();
  for (const { dogId, version } of [...here, ...plans]) {
    highest.set(dogId, Math.max(highest.get(dogId) ?? 0, version));
  }
  const free = (plan: Named<'plans'>): number => {
    if (!taken.has(`${plan.dogId} ${plan.version}`)) return plan.version;
    const next = highest.get(plan.dogId)! + 1;
    highest.set(plan.dogId, next);
    return next;
  };
  const rows = plans.map((plan) => ({
    ...planRow(plan),
    version: free(plan),
    current: 0 as const,
  }));
  await insertRows(db, 'plan', rows, between);
}

async function insertFiles(
  db: Db,
  files: readonly Named<'attachments'>[],
  createdAt: string,
  between: () => Promise<void>,
): Promise<void> {
  const contents: readonly StoredFileRow[] = [
    ...new Map(
      files.map(({ hash, mediaType, bytes }) => [hash, { hash, mediaType, bytes, createdAt }]),
    ).values(),
  ];
  for (const row of contents) {
    await db
      .insertInto('storedFile')
      .values(row)
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  }
  await insertRows(db, 'attachment', files.map(attachmentRow), between);
}
