import type { Insertable } from 'kysely';
import { oneOf } from '../database/rows.ts';
import type { Db, Schema } from '../database/schema.ts';
import { noteContent } from '../files/attachments.ts';
import { PART_TABLES, partRows } from '../visits/parts.ts';
import type { Work } from '../work.ts';
import type { Comparison } from './bundleCompare.ts';
import { KINDS, rowOf, type Named, type NamedKind } from './bundleKinds.ts';

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
  const insert = <K extends NamedKind>(kind: K, between: () => Promise<void>) => {
    const rows = fresh[kind].map((record) => rowOf(kind, record));
    return insertRows(db, KINDS[kind].table, rows as never[], between);
  };
  await insert('owners', step('Keeping the owners', 0));
  await insert('dogs', step('Keeping the dogs', 1));
  await insertVisits(db, fresh.visits, step('Keeping the visits', 2));
  await insertPlans(db, fresh.plans, step('Keeping the plans', 3));
  await insert('sessions', step('Keeping the session results', 4));
  await insert('foodDecisions', step('Keeping the decisions on food', 5));
  await insert('weighings', step('Keeping the weighings', 6));
  await keepContents(db, fresh.attachments, at);
  await insert('attachments', step('Keeping the attached files', 7));
}

async function insertVisits(
  db: Db,
  visits: readonly Named<'visits'>[],
  between: () => Promise<void>,
): Promise<void> {
  for (let from = 0; from < visits.length; from += ROWS_AT_ONCE) {
    const some = visits.slice(from, from + ROWS_AT_ONCE);
    const rows = some.map((visit) => rowOf('visits', visit));
    await insertRows(db, 'visit', rows, between);
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
    ...rowOf('plans', plan),
    version: free(plan),
    current: 0 as const,
  }));
  await insertRows(db, 'plan', rows, between);
}

async function keepContents(
  db: Db,
  files: readonly Named<'attachments'>[],
  createdAt: string,
): Promise<void> {
  const contents = new Map(
    files.map(({ hash, mediaType, bytes }) => [hash, { hash, mediaType, bytes, createdAt }]),
  );
  for (const content of contents.values()) await noteContent(db, content);
}
