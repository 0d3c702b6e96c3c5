import type { Database } from 'better-sqlite3';
import { sql, type RawBuilder } from 'kysely';
import {
  lastMeasured,
  presentDue,
  presentLine,
  type LastMeasured,
  type LineInput,
  type PresentLine,
  type Weighing,
} from '../../../core/index.ts';
import type { Context } from '../database/context.ts';
import { byDog, oneOf } from '../database/rows.ts';

// Lists of many dogs. SQL reads what was recorded and narrows to the dogs that can be named at all;
// where each of them stands comes from core alone. A state stored beside the records would be of
// yesterday every morning, so none is stored; what was worked out stays in memory until a record is
// changed or the day ends, since the lists of the desk are asked for again and again.

type Visit = LineInput['visits'][number];
type Decision = LineInput['foodDecisions'][number];

type Lines = Map<string, PresentLine>;
const worked = new WeakMap<Database, { readonly asOf: string; readonly lines: Lines }>();

/** The lines that were worked out of the records as they are, today. */
function linesOf({ raw, today }: Context): Lines {
  // What is not committed yet may be taken back, and the count of changes is not.
  if (raw.inTransaction) return new Map();
  const changes = raw.prepare('SELECT total_changes()').pluck().get() as number;
  const asOf = `${today()} ${changes}`;
  const known = worked.get(raw);
  if (known?.asOf === asOf) return known.lines;
  const lines: Lines = new Map();
  worked.set(raw, { asOf, lines });
  return lines;
}

/** Some ten milliseconds of work (D). */
const DOGS_AT_ONCE = 100;

/** Where each of these dogs stands today, as far as lists say it. */
export async function presentLines(context: Context, dogIds: readonly string[]): Promise<Lines> {
  const lines = linesOf(context);
  const missing = dogIds.filter((id) => !lines.has(id));
  for (let from = 0; from < missing.length; from += DOGS_AT_ONCE) {
    // A page that is opened meanwhile gets its files between two pieces.
    if (from > 0) await new Promise((resolve) => setImmediate(resolve));
    const piece = missing.slice(from, from + DOGS_AT_ONCE);
    for (const [id, line] of await readLines(context, piece)) lines.set(id, line);
  }
  return new Map(dogIds.map((id) => [id, lines.get(id)!]));
}

/** All of them in four queries. */
async function readLines(
  context: Context,
  dogIds: readonly string[],
): Promise<(readonly [string, PresentLine])[]> {
  const [dogs, weightsOf, decisions] = await Promise.all([
    context.db
      .selectFrom('dog')
      .select(['id', 'birthDay', 'adultWeightKg'])
      .where('id', 'in', oneOf(dogIds))
      .execute(),
    readWeights(context, dogIds),
    readDecisions(context, dogIds),
  ]);
  return dogs.map(({ id, ...dog }) => {
    const foodDecisions = decisions.get(id) ?? [];
    return [id, presentLine({ dog, ...weightsOf(id), foodDecisions })];
  });
}

/** What was last measured of each of these dogs, by today. */
export async function lastMeasures(
  context: Context,
  dogIds: readonly string[],
): Promise<Map<string, LastMeasured>> {
  const weightsOf = await readWeights(context, dogIds, ['weight_kg', 'bcs']);
  return new Map(dogIds.map((id) => [id, lastMeasured(weightsOf(id))]));
}

/** When each of these dogs is asked for next. */
export async function presentDues(
  context: Context,
  dogIds: readonly string[],
): Promise<Map<string, ReturnType<typeof presentDue>>> {
  const [weightsOf, decisions] = await Promise.all([
    readWeights(context, dogIds, ['weight_kg']),
    readDecisions(context, dogIds),
  ]);
  const due = (id: string) =>
    presentDue({ ...weightsOf(id), foodDecisions: decisions.get(id) ?? [] });
  return new Map(dogIds.map((id) => [id, due(id)]));
}

/** The visits and weighings of each of these dogs; with `columns`, as `entriesOf` has it. */
async function readWeights(
  context: Context,
  dogIds: readonly string[],
  columns: readonly ('weight_kg' | 'bcs')[] = [],
) {
  const [visits, weighings] = await Promise.all([
    readVisits(context, dogIds, columns),
    readWeighings(
      context,
      dogIds,
      columns.filter((column) => column !== 'bcs'),
    ),
  ]);
  const day = context.today();
  return (id: string) => ({
    visits: visits.get(id) ?? [],
    weighings: weighings.get(id) ?? [],
    day,
  });
}

type Entries = 'visit' | 'weighing';

/**
 * The entries of each of these dogs; with `columns`, only those from the day on that last has each of
 * them, by today. That day is found in the index, and the years before it are not read.
 */
function entriesOf(
  context: Context,
  table: Entries,
  dogIds: readonly string[],
  columns: readonly string[],
): RawBuilder<string> {
  const kept = (entry: string) =>
    table === 'visit' ? sql.raw(`and ${entry}.binned_at is null`) : sql``;
  const lastDay = (column: string) => sql`coalesce((select max(latest.day)
    from ${sql.table(table)} as latest where latest.dog_id = dog.value ${kept('latest')}
      and latest.day <= ${context.today()} and latest.${sql.ref(column)} is not null), '')`;
  // With a day after all others, so that `min` has two values to choose from.
  const from =
    columns.length === 0 ? sql`''` : sql`min(${sql.join(columns.map(lastDay))}, '9999-12-31')`;
  return sql<string>`(select entry.id from json_each(${JSON.stringify(dogIds)}) as dog
    join ${sql.table(table)} as entry on entry.dog_id = dog.value
    where entry.day >= ${from} ${kept('entry')})`;
}

async function readVisits(
  context: Context,
  dogIds: readonly string[],
  columns: readonly string[],
): Promise<Map<string, Visit[]>> {
  const rows = await context.db
    .selectFrom('visit')
    .select([
      'dogId',
      'day',
      'weightKg',
      'foodGoal',
      'bcs',
      'targetWeightKg',
      'weighingMethod',
      'scaleStepKg',
      'consentGiven',
      'consentExpiryDay',
    ])
    .where('id', 'in', entriesOf(context, 'visit', dogIds, columns))
    .orderBy('day')
    .orderBy('createdAt')
    .execute();
  return byDog(rows, ({ consentGiven, consentExpiryDay, ...row }) => ({
    ...row,
    consent: { given: consentGiven === 1, expiryDay: consentExpiryDay },
  }));
}

async function readWeighings(
  context: Context,
  dogIds: readonly string[],
  columns: readonly string[],
): Promise<Map<string, Weighing[]>> {
  const rows = await context.db
    .selectFrom('weighing')
    .select(['dogId', 'day', 'weightKg', 'weighingMethod', 'scaleStepKg'])
    .where('id', 'in', entriesOf(context, 'weighing', dogIds, columns))
    .orderBy('day')
    .orderBy('createdAt')
    .execute();
  return byDog(rows, ({ day, weightKg, weighingMethod, scaleStepKg }) => ({
    day,
    weightKg,
    scaleStepKg,
    method: weighingMethod,
  }));
}

async function readDecisions(
  context: Context,
  dogIds: readonly string[],
): Promise<Map<string, Decision[]>> {
  const rows = await context.db
    .selectFrom('foodDecision')
    .innerJoin('visit', 'visit.id', 'foodDecision.visitId')
    .select([
      'foodDecision.dogId',
      'foodDecision.decidedOn',
      'foodDecision.kcalPerDay',
      // The proposal is long, and one day of it is asked for.
      sql<string>`json_extract(food_decision.proposal, '$.nextWeighInDay')`.as('nextWeighInDay'),
    ])
    .where('foodDecision.dogId', 'in', oneOf(dogIds))
    .where('visit.binnedAt', 'is', null)
    .orderBy('foodDecision.decidedOn')
    .orderBy('foodDecision.createdAt')
    .execute();
  return byDog(rows, ({ decidedOn, kcalPerDay, nextWeighInDay }) => ({
    decidedOn,
    kcalPerDay,
    proposal: { nextWeighInDay },
  }));
}
