import type { Kysely } from 'kysely';
import type { Plan } from '../contract/contract.ts';
import type { PlanRow, Schema } from './schema.ts';

export function planFromRow(row: PlanRow): Plan {
  return {
    ...row,
    current: row.current === 1,
    request: JSON.parse(row.request) as Plan['request'],
    origin: row.origin as Plan['origin'],
    ramp: JSON.parse(row.ramp) as Plan['ramp'],
    review: row.review === null ? null : (JSON.parse(row.review) as Plan['review']),
    keptBreaches: JSON.parse(row.keptBreaches) as Plan['keptBreaches'],
  };
}

/** All versions of a dog's plan, oldest first. */
export async function readPlans(db: Kysely<Schema>, dogId: string): Promise<Plan[]> {
  const rows = await db
    .selectFrom('plan')
    .selectAll()
    .where('dogId', '=', dogId)
    .orderBy('version')
    .execute();
  return rows.map(planFromRow);
}
