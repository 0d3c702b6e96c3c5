import type { Plan } from '../../contract/contract.ts';
import { fromRow, toRow } from '../../contract/records/columns.ts';
import { PLANS } from '../../contract/records/decided.ts';
import { authorNow } from '../practice/practitioners.ts';
import type { Context } from '../database/context.ts';
import { notFound } from '../refuse.ts';
import type { Db } from '../database/schema.ts';

/**
 * All versions of a dog's plan, oldest first. Those made at a visit that lies in the bin are left
 * out: when the one in force was made there, none is in force until the visit is restored.
 */
export async function readPlans(db: Db, dogId: string): Promise<Plan[]> {
  const rows = await db
    .selectFrom('plan')
    .leftJoin('visit', 'visit.id', 'plan.visitId')
    .selectAll('plan')
    .where('plan.dogId', '=', dogId)
    .where('visit.binnedAt', 'is', null)
    .orderBy('plan.version')
    .execute();
  return rows.map((row) => fromRow(PLANS, row));
}

/** The plan in force. @throws Refusal (not-found) without one. */
export function currentPlan({ plans }: { readonly plans: readonly Plan[] }): Plan {
  const plan = plans.find(({ current }) => current);
  if (plan === undefined) throw notFound('A running plan of this dog');
  return plan;
}

/**
 * Keeps a plan as the next version and the current one, in place of any other, one hidden in the bin
 * as well: restoring its visit must not bring an older plan back in force. Runs inside a transaction.
 */
export async function keepPlan(
  context: Context,
  db: Db,
  plan: Omit<Plan, 'id' | 'version' | 'current' | 'createdAt' | 'author'>,
): Promise<Plan> {
  const last = await db
    .selectFrom('plan')
    .select((eb) => eb.fn.max('version').as('version'))
    .where('dogId', '=', plan.dogId)
    .executeTakeFirst();
  await db.updateTable('plan').set({ current: 0 }).where('dogId', '=', plan.dogId).execute();
  const row = await db
    .insertInto('plan')
    .values(
      toRow(PLANS, {
        ...plan,
        id: context.newId(),
        version: (last?.version ?? 0) + 1,
        current: true,
        author: await authorNow(db),
        createdAt: context.instant(),
      }),
    )
    .returningAll()
    .executeTakeFirstOrThrow();
  return fromRow(PLANS, row);
}
