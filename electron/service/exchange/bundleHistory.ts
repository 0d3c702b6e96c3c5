import type { BundleRecords } from '../../contract/exchange/bundle.ts';
import type { DifferentChoice, ErasedChoice } from '../../contract/exchange/bundleImport.ts';
import { oneOf } from '../database/rows.ts';
import type { Db } from '../database/schema.ts';
import type { Comparison } from './bundleCompare.ts';
import { fixed } from './bundleFields.ts';
import type { Here } from './bundleHere.ts';
import { NAMED_KINDS } from './bundleKinds.ts';
import { isReplaceable } from './bundleReplace.ts';

type Entry = BundleRecords['history'][number];

export interface Choices {
  readonly different: DifferentChoice;
  readonly erased: ErasedChoice;
}

/**
 * The history entries that are true here once the choices are carried out: of records that are then
 * as in the bundle, and of records that are gone both here and there. A record that stays as it is
 * here keeps its own history only.
 */
export function historyToKeep(
  bundle: BundleRecords,
  here: Here,
  found: Comparison,
  choices: Choices,
): Entry[] {
  const leftOut = new Set<string>();
  if (choices.erased === 'leave out') {
    for (const kind of NAMED_KINDS) for (const { id } of found.erased[kind]) leftOut.add(id);
  }
  const ids = (lists: Comparison['fresh'] | BundleRecords): string[] =>
    NAMED_KINDS.flatMap((kind) => lists[kind].map(({ id }) => id));
  const present = new Set(ids(here.records));
  const named = new Set(ids(bundle));
  const asInBundle = new Set([
    ...ids(found.fresh),
    ...ids(found.equal).filter((id) => present.has(id)),
    ...(choices.erased === 'bring back' ? ids(found.erased) : []),
    ...(choices.different === 'theirs'
      ? found.different.flatMap(({ kind, theirs, ours }) =>
          isReplaceable(kind) && (ours === null || ours.id === theirs.id) ? [theirs.id] : [],
        )
      : []),
  ]);
  return bundle.history.filter(({ recordId, clientId, dogId }) => {
    if (leftOut.has(recordId) || leftOut.has(clientId ?? dogId ?? '')) return false;
    return asInBundle.has(recordId) || (!named.has(recordId) && !present.has(recordId));
  });
}

/** Those of the entries that are not kept here yet. */
export async function unknownHistory(db: Db, entries: readonly Entry[]): Promise<Entry[]> {
  const recordIds = [...new Set(entries.map(({ recordId }) => recordId))];
  const here = await db
    .selectFrom('history')
    .selectAll()
    .where('recordId', 'in', oneOf(recordIds))
    .execute();
  const known = new Map<string, number>();
  for (const { id: _id, before, ...row } of here) {
    const key = fixed({ ...row, before: JSON.parse(before) as unknown });
    known.set(key, (known.get(key) ?? 0) + 1);
  }
  return entries.filter((entry) => {
    const key = fixed(entry);
    const left = known.get(key) ?? 0;
    known.set(key, left - 1);
    return left <= 0;
  });
}
