import { isDeepStrictEqual } from 'node:util';
import { bundleRecords, type BundleRecords } from '../../contract/exchange/bundle.ts';
import type { DifferentRecord } from '../../contract/exchange/bundleImport.ts';
import { changedFields, type FieldChange } from '../../contract/history/change.ts';
import { SAME_WEIGHT_KG } from '../../contract/weighings/weighing.ts';
import type { Work } from '../work.ts';
import { fieldsOf, staysAsMade } from './bundleFields.ts';
import type { Here } from './bundleHere.ts';
import { aroundOf, byKind, NAMED_KINDS, type Named, type NamedKind } from './bundleKinds.ts';
import { namer, spoken, type NameOf } from './bundleNames.ts';

/** A record that is here and differs in the bundle. */
export interface Pair<K extends NamedKind = NamedKind> {
  readonly kind: K;
  /** Null where it was taken out here. */
  readonly ours: Named<K> | null;
  readonly theirs: Named<K>;
  readonly changes: readonly FieldChange[];
  /** Made once and never altered: it stays as it is here. */
  readonly stays: boolean;
}

/** What each record of a bundle is beside the records that are here. */
export interface Comparison {
  readonly fresh: { readonly [K in NamedKind]: readonly Named<K>[] };
  readonly equal: { readonly [K in NamedKind]: readonly Named<K>[] };
  readonly different: readonly Pair[];
  readonly erased: { readonly [K in NamedKind]: readonly Named<K>[] };
  /** Of the erased ones, those whose owner, dog or visit was not erased as well. */
  readonly erasedTops: readonly { readonly kind: NamedKind; readonly record: Named }[];
  readonly problems: readonly string[];
}

type Lists = Record<NamedKind, Named[]>;
const emptyLists = (): Lists => byKind(() => []);

/** Records compared between two looks at whether the work is to stop. */
const RECORDS_AT_ONCE = 500;

/** Holds the records of a bundle against those that are here. @throws Refusal (cancelled) */
export async function compare(bundle: BundleRecords, here: Here, work: Work): Promise<Comparison> {
  const nameOf = namer(bundle);
  const out = {
    fresh: emptyLists(),
    equal: emptyLists(),
    erased: emptyLists(),
    different: [] as Pair[],
    erasedTops: [] as Comparison['erasedTops'][number][],
    problems: [] as string[],
  };
  const gone = new Set<string>();
  const total = NAMED_KINDS.reduce((sum, kind) => sum + bundle[kind].length, 0);
  let done = 0;
  for (const kind of NAMED_KINDS) {
    const match = matcher(kind, here.records);
    for (const theirs of bundle[kind]) {
      if (done++ % RECORDS_AT_ONCE === 0) {
        await work.step({ done, total, step: 'Comparing with the records' });
      }
      const ours = match(theirs);
      const isErased = ours === null && erasedBy(kind, theirs, here, gone);
      if (isErased !== false) {
        gone.add(theirs.id);
        out.erased[kind].push(theirs);
        if (isErased === 'itself') out.erasedTops.push({ kind, record: theirs });
        continue;
      }
      const problem = contradiction(kind, theirs, ours, here, nameOf);
      if (problem !== null) out.problems.push(problem);
      else if (ours !== null) sort(kind, ours, theirs, out);
      else if (here.removed.has(theirs.id)) out.different.push(takenOut(kind, theirs));
      else out.fresh[kind].push(theirs);
    }
  }
  return out as unknown as Comparison;
}

/** Finds the record here that one of the bundle is. */
function matcher(kind: NamedKind, here: BundleRecords): (theirs: Named) => Named | null {
  const byId = new Map<string, Named>(here[kind].map((ours) => [ours.id, ours]));
  if (kind === 'sessions') {
    // One result a day: another one of that day is the same session, told at another desk.
    const byDay = new Map(here.sessions.map((ours) => [`${ours.dogId} ${ours.day}`, ours]));
    return (theirs) => {
      const { id, dogId, day } = theirs as Named<'sessions'>;
      return byId.get(id) ?? byDay.get(`${dogId} ${day}`) ?? null;
    };
  }
  if (kind === 'weighings') {
    const byDay = Map.groupBy(here.weighings, ({ dogId, day }) => `${dogId} ${day}`);
    return (theirs) => {
      const { id, dogId, day, weightKg } = theirs as Named<'weighings'>;
      const sameReading = byDay
        .get(`${dogId} ${day}`)
        ?.find((ours) => Math.abs(ours.weightKg - weightKg) < SAME_WEIGHT_KG);
      return byId.get(id) ?? sameReading ?? null;
    };
  }
  return (theirs) => byId.get(theirs.id) ?? null;
}

/** Kinds that are brought back with a click where they were taken out; the others went for good. */
const TAKEN_OUT_ONLY: ReadonlySet<NamedKind> = new Set(['sessions', 'weighings']);

/** Whether a record that is not here was erased: itself, with what is around it, or not at all. */
function erasedBy(
  kind: NamedKind,
  record: Named,
  here: Here,
  gone: ReadonlySet<string>,
): 'itself' | 'around' | false {
  const around = aroundOf(kind, record);
  if (around !== null && gone.has(around)) return 'around';
  if ('visitId' in record && record.visitId !== null && gone.has(record.visitId)) return 'around';
  if (kind === 'owners') return here.erasedOwners.has(record.id) ? 'itself' : false;
  return here.removed.has(record.id) && !TAKEN_OUT_ONLY.has(kind) ? 'itself' : false;
}

/** What cannot be true of one record here and in the bundle, in a sentence; null where all can. */
function contradiction(
  kind: NamedKind,
  theirs: Named,
  ours: Named | null,
  here: Here,
  nameOf: NameOf,
): string | null {
  const said = spoken(nameOf(kind, theirs));
  const around =
    kind === 'owners' || kind === 'dogs' ? 'owner' : kind === 'attachments' ? 'visit' : 'dog';
  const elsewhere = `${said} is here already, under another ${around} than in the bundle.`;
  if (ours === null) return here.elsewhere.has(theirs.id) ? elsewhere : null;
  if (aroundOf(kind, ours) !== aroundOf(kind, theirs)) return elsewhere;
  if (kind === 'sessions') {
    const day = (ours as Named<'sessions'>).day;
    if (day === (theirs as Named<'sessions'>).day) return null;
    return `${said} is of another day here (${day}); a session result stays with its day.`;
  }
  if (kind === 'attachments') {
    const same = (ours as Named<'attachments'>).hash === (theirs as Named<'attachments'>).hash;
    return same ? null : `${said} has another content here; a file stays as it was added.`;
  }
  return null;
}

type Sorted = { readonly equal: Lists; readonly different: Pair[] };

function sort(kind: NamedKind, ours: Named, theirs: Named, { equal, different }: Sorted): void {
  // Most are the same to the letter; that is seen at once.
  const changes = isDeepStrictEqual(ours, theirs) ? [] : changesOf(kind, ours, theirs);
  if (changes.length === 0) equal[kind].push(theirs);
  else {
    const stays = changes.some(({ path }) => staysAsMade(kind, path));
    different.push({ kind, ours, theirs, changes, stays } as Pair);
  }
}

function changesOf(kind: NamedKind, ours: Named, theirs: Named): readonly FieldChange[] {
  const after = fieldsOf(kind, theirs);
  const changes = changedFields(fieldsOf(kind, ours), after);
  if (changes.length === 0) return changes;
  // What is read from a bundle has been cleaned of what no text may hold; what an earlier release
  // stored may not have been.
  const { element } = bundleRecords.shape[kind];
  const cleaned = (element.safeParse(ours).data ?? ours) as Named;
  return changedFields(fieldsOf(kind, cleaned), after).map((change) =>
    staysAsMade(kind, change.path) && change.measure === 'text'
      ? { ...change, before: 'as it was made here', after: 'otherwise' }
      : change,
  );
}

function takenOut(kind: NamedKind, theirs: Named): Pair {
  const removed: FieldChange = {
    path: 'removed',
    label: 'Taken out of the record',
    measure: 'yes or no',
    before: true,
    after: false,
  };
  return { kind, ours: null, theirs, changes: [removed], stays: false } as Pair;
}

/** The differing records as they are told, the first ones. */
export function toldOf(
  { different }: Comparison,
  bundle: BundleRecords,
  most: { readonly records: number; readonly changes: number },
): DifferentRecord[] {
  const nameOf = namer(bundle);
  return different.slice(0, most.records).map(({ kind, theirs, changes, stays }) => ({
    ...nameOf(kind, theirs),
    changes: changes.slice(0, most.changes),
    changeCount: changes.length,
    stays,
  }));
}
