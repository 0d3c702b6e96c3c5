import { sql } from 'kysely';
import type { BundleRecords } from '../../contract/exchange/bundle.ts';
import { oneOf } from '../database/rows.ts';
import { erasedAmong } from '../erasure/record.ts';
import type { Db } from '../database/schema.ts';
import { readBundleRecords } from './bundleRecords.ts';
import { byKind, KINDS, NAMED_KINDS } from './bundleKinds.ts';

/** What the records hold of what a bundle names. */
export interface Here {
  /** Everything kept of the bundle's owners. */
  readonly records: BundleRecords;
  /** Ids of the bundle that are here, but of an owner who is not in the bundle. */
  readonly elsewhere: ReadonlySet<string>;
  /** Ids of the bundle whose record was taken out here; its owner or dog stayed. */
  readonly removed: ReadonlySet<string>;
  /** Owners of the bundle who were erased here. */
  readonly erasedOwners: ReadonlySet<string>;
}

/** Reads what is here of what a bundle names. */
export async function readHere(db: Db, bundle: BundleRecords): Promise<Here> {
  const clientIds = bundle.owners.map(({ id }) => id);
  const records = await readBundleRecords(db, clientIds);
  const found = new Set(NAMED_KINDS.flatMap((kind) => records[kind].map(({ id }) => id)));
  const absent = byKind((kind) => bundle[kind].map(({ id }) => id).filter((id) => !found.has(id)));
  const elsewhere = new Set<string>();
  for (const kind of NAMED_KINDS) {
    const rows = await db
      .selectFrom(KINDS[kind].table)
      .select('id')
      .where('id', 'in', oneOf(absent[kind]))
      .execute();
    for (const { id } of rows) elsewhere.add(id);
  }
  return {
    records,
    elsewhere,
    removed: await removedAmong(db, Object.values(absent).flat()),
    erasedOwners: await erasedAmong(db, absent.owners),
  };
}

/** Those of the ids whose latest deed here took the record out. */
async function removedAmong(db: Db, ids: readonly string[]): Promise<Set<string>> {
  const { rows } = await sql<{ recordId: string; action: string }>`
    select record_id, action from history
    where id in (
      select max(id) from history where record_id in ${oneOf(ids)} group by record_id
    )`.execute(db);
  return new Set(rows.flatMap(({ recordId, action }) => (action === 'removed' ? [recordId] : [])));
}
