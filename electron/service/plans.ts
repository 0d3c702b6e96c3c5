import type { Kysely } from 'kysely';
import type { Plan } from '../contract/contract.ts';
import type { PlanRow, Schema } from './schema.ts';

export function planFromRow(row: PlanRow): Plan {
  return {
    ...row,
    current: row.current === 1,
    request: JSON.parse(row.request) as Plan['request'],
    ramp: JSON.parse(row.ramp) as Plan['ramp'],
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
