import type { Plan } from '../../contract/contract.ts';
import { authorNow } from '../practice/author.ts';
import type { Context } from '../database/context.ts';
import { notFound } from '../refuse.ts';
import type { Db, PlanRow } from '../database/schema.ts';

function fromRow(row: PlanRow): Plan {
  return {
    ...row,
    current: row.current === 1,
    origin: row.origin as Plan['origin'],
    request: JSON.parse(row.request) as Plan['request'],
    ramp: JSON.parse(row.ramp) as Plan['ramp'],
    review: row.review === null ? null : (JSON.parse(row.review) as Plan['review']),
    keptBreaches: JSON.parse(row.keptBreaches) as Plan['keptBreaches'],
  };
}

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
  return rows.map(fromRow);
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
    .values({
      ...plan,
      id: context.newId(),
      version: (last?.version ?? 0) + 1,
      current: 1,
      request: JSON.stringify(plan.request),
      ramp: JSON.stringify(plan.ramp),
      review: plan.review === null ? null : JSON.stringify(plan.review),
      keptBreaches: JSON.stringify(plan.keptBreaches),
      author: await authorNow(db),
      createdAt: context.instant(),
    })
    .returningAll()
    .executeTakeFirstOrThrow();
  return fromRow(row);
}
