import type { FoodDecision } from '../../contract/contract.ts';
import { fromRow } from '../../contract/records/columns.ts';
import { FOOD_DECISIONS } from '../../contract/records/decided.ts';
import type { Db } from '../database/schema.ts';

/** All decisions on a dog's food, oldest first, without those of visits in the bin. */
export async function readFoodDecisions(db: Db, dogId: string): Promise<FoodDecision[]> {
  const rows = await db
    .selectFrom('foodDecision')
    .innerJoin('visit', 'visit.id', 'foodDecision.visitId')
    .selectAll('foodDecision')
    .where('foodDecision.dogId', '=', dogId)
    .where('visit.binnedAt', 'is', null)
    .orderBy('foodDecision.decidedOn')
    .orderBy('foodDecision.createdAt')
    .execute();
  return rows.map((row) => fromRow(FOOD_DECISIONS, row));
}
