import type { Scope } from '../bin/scope.ts';
import { oneOf } from '../database/rows.ts';
import type { Db } from '../database/schema.ts';

/**
 * Removes records with all that belongs to them and all that was kept of them before. Runs inside
 * a transaction. The contents of attachments are removed afterwards (`removeUnusedFiles`).
 */
export async function removeRecords(db: Db, scope: Scope): Promise<void> {
  const { clientIds, dogIds, visitIds, attachmentIds } = scope;
  const ids = [...clientIds, ...dogIds, ...visitIds];
  const recordIds = [...ids, ...attachmentIds];
  await db.deleteFrom('history').where('recordId', 'in', oneOf(recordIds)).execute();
  const drafts = await draftsNaming(db, ids);
  await db.deleteFrom('draft').where('key', 'in', oneOf(drafts)).execute();
  await db.deleteFrom('attachment').where('id', 'in', oneOf(attachmentIds)).execute();
  for (const table of ['foodDecision', 'plan'] as const) {
    await db
      .deleteFrom(table)
      .where((eb) =>
        eb.or([eb('dogId', 'in', oneOf(dogIds)), eb('visitId', 'in', oneOf(visitIds))]),
      )
      .execute();
  }
  for (const table of ['sessionResult', 'weighing'] as const) {
    await db.deleteFrom(table).where('dogId', 'in', oneOf(dogIds)).execute();
  }
  // The parts of a visit, and what is left of the history of a dog and an owner, go with them.
  await db.deleteFrom('visit').where('id', 'in', oneOf(visitIds)).execute();
  await db.deleteFrom('dog').where('id', 'in', oneOf(dogIds)).execute();
  await db.deleteFrom('client').where('id', 'in', oneOf(clientIds)).execute();
}

/** The drafts that name one of the records, in their key or in what was typed. */
export async function draftsNaming(db: Db, ids: readonly string[]): Promise<string[]> {
  const drafts = await db.selectFrom('draft').select(['key', 'json']).execute();
  return drafts
    .filter(({ key, json }) => ids.some((id) => key.includes(id) || json.includes(id)))
    .map(({ key }) => key);
}
