import type { BundleRecords } from '../../contract/exchange/bundle.ts';
import type { DifferentChoice } from '../../contract/exchange/bundleImport.ts';
import type { Db } from '../database/schema.ts';

/**
 * Which plan of a dog is in force after an import: one here stays, unless the bundle is to be
 * followed and has one in force. Runs inside the transaction, after the plans are kept.
 * @param brought ids of the bundle's plans that are here now
 */
export async function settleInForce(
  db: Db,
  bundle: BundleRecords['plans'],
  here: BundleRecords['plans'],
  brought: ReadonlySet<string>,
  choice: DifferentChoice,
): Promise<void> {
  const ours = new Map(here.filter(({ current }) => current).map((plan) => [plan.dogId, plan.id]));
  for (const { id, dogId, current } of bundle) {
    if (!current || !brought.has(id)) continue;
    const now = ours.get(dogId);
    if (now === id || (now !== undefined && choice === 'ours')) continue;
    await db.updateTable('plan').set({ current: 0 }).where('dogId', '=', dogId).execute();
    await db.updateTable('plan').set({ current: 1 }).where('id', '=', id).execute();
  }
}
