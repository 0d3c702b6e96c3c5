import type { Kysely } from 'kysely';
import { assess, type Assessment } from '../../core/index.ts';
import type { FoodDecision, Visit } from '../contract/contract.ts';
import type { Dog } from '../contract/records.ts';
import { readDog } from './dogs.ts';
import { readFoodDecisions } from './foodDecisions.ts';
import type { Schema } from './schema.ts';
import { readVisits } from './visitRows.ts';

/** What core makes of a dog's record on `day`; null before the first weighing. */
export function assessRecord(
  dog: Dog,
  visits: readonly Visit[],
  foodDecisions: readonly FoodDecision[],
  day: string,
): Assessment | null {
  return assess({ dog, visits, foodDecisions, day });
}

/** The assessment at a visit, from what is stored up to it. */
export async function assessAsOf(
  db: Kysely<Schema>,
  dogId: string,
  visit: Visit,
): Promise<Assessment | null> {
  const [dog, visits, decisions] = await Promise.all([
    readDog(db, dogId),
    readVisits(db, dogId),
    readFoodDecisions(db, dogId),
  ]);
  return assessRecord(dog, visits, decisions, visit.day);
}
