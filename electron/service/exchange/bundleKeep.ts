import type { BundleRecords } from '../../contract/exchange/bundle.ts';
import {
  BUNDLE_SHOWN,
  type BundleDone,
  type DifferentChoice,
} from '../../contract/exchange/bundleImport.ts';
import type { Context } from '../database/context.ts';
import { dropMarks } from '../erasure/record.ts';
import { hasContent } from '../files/store.ts';
import { keepHistory } from '../history/history.ts';
import type { Db } from '../database/schema.ts';
import type { Work } from '../work.ts';
import type { Comparison } from './bundleCompare.ts';
import type { Here } from './bundleHere.ts';
import { historyToKeep, unknownHistory, type Choices } from './bundleHistory.ts';
import { insertFresh, insertRows } from './bundleInsert.ts';
import { byKind, NAMED_KINDS, type Named, type NamedKind } from './bundleKinds.ts';
import type { BundleIn } from './bundleRead.ts';
import { deedBase, isReplaceable, replaceRecords, type Replacing } from './bundleReplace.ts';

/** A bundle, the records beside it, and what each record of it is. */
export interface Understood {
  readonly bundle: BundleIn;
  readonly here: Here;
  readonly found: Comparison;
  readonly problems: readonly string[];
  readonly digest: string;
}

/** What the import is carried out with. */
export interface KeepRoom {
  readonly context: Context;
  /** The transaction of the import. */
  readonly db: Db;
  readonly work: Work;
  /** Name of the archive, for the history of what it replaces. */
  readonly name: string;
}

/** Carries out an import, inside its transaction. Everything comes, or the work throws. */
export async function keepBundle(
  { context, db, work, name }: KeepRoom,
  { bundle, here, found }: Understood,
  choices: Choices,
): Promise<BundleDone> {
  const { records, manifest } = bundle;
  const fresh = choices.erased === 'bring back' ? together(found) : found.fresh;
  await insertFresh(db, work, fresh, context.instant());
  const history = await unknownHistory(db, historyToKeep(records, here, found, choices));
  const told = history.map((entry) => ({ ...entry, before: JSON.stringify(entry.before) }));
  await insertRows(db, 'history', told);

  const reason = `Import of the bundle “${name}”, made on ${manifest.madeOn.slice(0, 10)}.`;
  const dogOfVisit = new Map(records.visits.map(({ id, dogId }) => [id, dogId]));
  const replacing: Replacing = { context, db, reason, dogOfVisit };
  if (choices.erased === 'bring back') await tellReturn(replacing, found);
  const follows = choices.different === 'theirs';
  const followed = follows ? found.different.filter(({ stays }) => !stays) : [];
  await replaceRecords(replacing, work, followed);
  const brought = new Set([...fresh.plans, ...found.equal.plans, ...pairedPlans(found)].map(idOf));
  await settleInForce(db, records.plans, here.records.plans, brought, choices.different);
  await work.step({ done: 8, total: 8, step: 'Writing it through to the disk' });

  return {
    added: countsOf(fresh),
    replaced: followed.length,
    kept: found.different.length - followed.length,
    leftOut: choices.erased === 'leave out' ? sum(countsOf(found.erased)) : 0,
    filesMissing: missingOf(context, fresh),
    dogs: dogsOf(bundle.records.dogs, fresh, followed, dogOfVisit),
  };
}

const idOf = ({ id }: { readonly id: string }): string => id;
const pairedPlans = ({ different }: Comparison): readonly Named[] =>
  different.flatMap(({ kind, ours }) => (kind === 'plans' && ours !== null ? [ours] : []));

/** New records and those that come back, in one. */
const together = ({ fresh, erased }: Comparison): Comparison['fresh'] =>
  byKind((kind) => [...fresh[kind], ...erased[kind]]) as unknown as Comparison['fresh'];

/** Says in the history of what came back that it did, and forgets that its owner was erased. */
async function tellReturn(replacing: Replacing, found: Comparison): Promise<void> {
  await dropMarks(replacing.db, found.erased.owners.map(idOf));
  for (const { kind, record } of found.erasedTops) {
    if (!isReplaceable(kind)) continue;
    const base = deedBase(replacing, kind, record);
    await keepHistory(replacing.context, replacing.db, {
      ...base,
      action: 'restored',
      before: null,
    });
  }
}

const countsOf = (lists: Comparison['fresh']): BundleDone['added'] =>
  byKind((kind) => lists[kind].length);
const sum = (counts: BundleDone['added']): number =>
  Object.values(counts).reduce((total, count) => total + count, 0);

const missingOf = (context: Context, { attachments }: Comparison['fresh']): number =>
  attachments.filter(({ hash }) => !hasContent(context.folder, hash)).length;

/** The dogs that came, or of whom something did. */
function dogsOf(
  dogs: readonly Named<'dogs'>[],
  fresh: Comparison['fresh'],
  followed: readonly { readonly kind: NamedKind; readonly theirs: Named }[],
  dogOfVisit: ReadonlyMap<string, string>,
): BundleDone['dogs'] {
  const came = NAMED_KINDS.flatMap((kind) => fresh[kind].map((theirs) => ({ kind, theirs })));
  const touched = new Set(
    [...came, ...followed].map(({ kind, theirs }) => {
      if (kind === 'dogs') return theirs.id;
      if (kind === 'attachments') return dogOfVisit.get((theirs as Named<'attachments'>).visitId);
      return 'dogId' in theirs ? theirs.dogId : undefined;
    }),
  );
  const all = dogs.filter(({ id, binnedAt }) => touched.has(id) && binnedAt === null);
  const first = all.slice(0, BUNDLE_SHOWN.records).map(({ id, name }) => ({ id, name }));
  return { count: all.length, first };
}

/**
 * Which plan of a dog is in force after an import: one here stays, unless the bundle is to be
 * followed and has one in force. Runs inside the transaction, after the plans are kept.
 * @param brought ids of the bundle's plans that are here now
 */
async function settleInForce(
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
