import type { FoodDecision } from '../../contract/contract.ts';
import type { Db, FoodDecisionRow } from '../database/schema.ts';

export function foodDecisionFromRow(row: FoodDecisionRow): FoodDecision {
  return {
    ...row,
    decision: row.decision as FoodDecision['decision'],
    ration: row.ration === null ? null : (JSON.parse(row.ration) as FoodDecision['ration']),
    foodSwitch:
      row.foodSwitch === null ? null : (JSON.parse(row.foodSwitch) as FoodDecision['foodSwitch']),
    changeover:
      row.changeover === null ? null : (JSON.parse(row.changeover) as FoodDecision['changeover']),
    proposal: JSON.parse(row.proposal) as FoodDecision['proposal'],
    known: JSON.parse(row.known) as FoodDecision['known'],
  };
}

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
  return rows.map(foodDecisionFromRow);
}
