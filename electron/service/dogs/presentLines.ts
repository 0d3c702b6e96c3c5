import { sql } from 'kysely';
import {
  lastMeasured,
  presentLine,
  type LastMeasured,
  type LineInput,
  type PresentLine,
  type Weighing,
} from '../../../core/index.ts';
import type { Context } from '../database/context.ts';

// Lists of many dogs. SQL reads what was recorded and narrows to the dogs that can be named at all;
// where each of them stands comes from core alone. A state stored beside the records would be of
// yesterday every morning, so none is kept.

type Visit = LineInput['visits'][number];
type Decision = LineInput['foodDecisions'][number];

/** Where each of these dogs stands today, as far as lists say it; all of them in four queries. */
export async function presentLines(
  context: Context,
  dogIds: readonly string[],
): Promise<Map<string, PresentLine>> {
  if (dogIds.length === 0) return new Map();
  const [dogs, visits, weighings, decisions] = await Promise.all([
    context.db
      .selectFrom('dog')
      .select(['id', 'sighthound'])
      .where('id', 'in', oneOf(dogIds))
      .execute(),
    readVisits(context, dogIds),
    readWeighings(context, dogIds),
    readDecisions(context, dogIds),
  ]);
  const day = context.today();
  const line = ({ id, sighthound }: (typeof dogs)[number]): PresentLine =>
    presentLine({
      dog: { sighthound: sighthound === 1 },
      visits: visits.get(id) ?? [],
      weighings: weighings.get(id) ?? [],
      foodDecisions: decisions.get(id) ?? [],
      day,
    });
  return new Map(dogs.map((dog) => [dog.id, line(dog)]));
}

/** What was last measured of each of these dogs, by today. */
export async function lastMeasures(
  context: Context,
  dogIds: readonly string[],
): Promise<Map<string, LastMeasured>> {
  const [visits, weighings] = await Promise.all([
    readVisits(context, dogIds),
    readWeighings(context, dogIds),
  ]);
  const day = context.today();
  const measured = (id: string): LastMeasured =>
    lastMeasured({ visits: visits.get(id) ?? [], weighings: weighings.get(id) ?? [], day });
  return new Map(dogIds.map((id) => [id, measured(id)]));
}

async function readVisits(
  context: Context,
  dogIds: readonly string[],
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
    .where('dogId', 'in', oneOf(dogIds))
    .where('binnedAt', 'is', null)
    .orderBy('day')
    .orderBy('createdAt')
    .execute();
  return byDog(rows, ({ consentGiven, consentExpiryDay, ...row }) => ({
    ...row,
    foodGoal: row.foodGoal as Visit['foodGoal'],
    weighingMethod: row.weighingMethod as Visit['weighingMethod'],
    consent: { given: consentGiven === 1, expiryDay: consentExpiryDay },
  }));
}

async function readWeighings(
  context: Context,
  dogIds: readonly string[],
): Promise<Map<string, Weighing[]>> {
  const rows = await context.db
    .selectFrom('weighing')
    .select(['dogId', 'day', 'weightKg', 'weighingMethod', 'scaleStepKg'])
    .where('dogId', 'in', oneOf(dogIds))
    .orderBy('day')
    .orderBy('createdAt')
    .execute();
  return byDog(rows, ({ day, weightKg, weighingMethod, scaleStepKg }) => ({
    day,
    weightKg,
    scaleStepKg,
    method: weighingMethod as Visit['weighingMethod'],
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

/** One parameter, however many dogs. */
export const oneOf = (ids: readonly string[]) =>
  sql<string>`(select value from json_each(${JSON.stringify(ids)}))`;

function byDog<R extends { readonly dogId: string }, T>(
  rows: readonly R[],
  pick: (row: R) => T,
): Map<string, T[]> {
  const found = new Map<string, T[]>();
  for (const row of rows) {
    const list = found.get(row.dogId) ?? [];
    list.push(pick(row));
    found.set(row.dogId, list);
  }
  return found;
}
