import { grouped } from '../../../core/quantityText.ts';
import type { BundleManifest, BundleRecords } from '../../contract/exchange/bundle.ts';
import { BUNDLE_KINDS } from '../../contract/exchange/bundle.ts';
import { NAMED_KINDS, type Named, type NamedKind } from './bundleKinds.ts';
import { namer, spoken, type NameOf } from './bundleNames.ts';
import { wordFor } from './bundleRead.ts';

/** What contradicts itself inside a bundle, a whole sentence each. */
export function contradictionsIn(
  records: BundleRecords,
  { counts, missing }: BundleManifest,
  contents: ReadonlySet<string>,
  today: string,
): string[] {
  const nameOf = namer(records);
  const known = { records, nameOf };
  return [
    ...BUNDLE_KINDS.flatMap((kind) =>
      counts[kind] === records[kind].length
        ? []
        : [
            `The bundle lists ${grouped(counts[kind] ?? 0)} records of the kind “${wordFor(kind)}” and holds ${grouped(records[kind].length)}.`,
          ],
    ),
    ...NAMED_KINDS.flatMap((kind) => twice(kind, records[kind], nameOf)),
    ...strays(known),
    ...visitsOfOtherDogs(known),
    ...plansAgainstEachOther(known),
    ...sessionsOfOneDay(known),
    ...historyStrays(records),
    ...lostContents(known, new Set(missing), contents),
    ...daysToCome(known, today),
  ];
}

interface Known {
  readonly records: BundleRecords;
  readonly nameOf: NameOf;
}

/** Each entry whose key was seen before. */
function repeated<T>(entries: readonly T[], keyOf: (entry: T) => string): T[] {
  const seen = new Set<string>();
  return entries.filter((entry) => {
    const key = keyOf(entry);
    if (seen.has(key)) return true;
    seen.add(key);
    return false;
  });
}

function twice(kind: NamedKind, entries: readonly Named[], nameOf: NameOf): string[] {
  return repeated(entries, ({ id }) => id).map(
    (entry) => `${spoken(nameOf(kind, entry))} is in the bundle twice under one number.`,
  );
}

/** Records without the record around them. */
function strays({ records, nameOf }: Known): string[] {
  const ids = (entries: readonly { readonly id: string }[]) => new Set(entries.map(({ id }) => id));
  const owners = ids(records.owners);
  const dogs = ids(records.dogs);
  const visits = ids(records.visits);
  const stray = (kind: NamedKind, entry: Named, what: string): string =>
    `${spoken(nameOf(kind, entry))} names ${what} that is not in the bundle.`;
  const ofDog = (['visits', 'plans', 'sessions', 'foodDecisions', 'weighings'] as const).flatMap(
    (kind) =>
      (records[kind] as readonly Named<'visits'>[])
        .filter(({ dogId }) => !dogs.has(dogId))
        .map((entry) => stray(kind, entry, 'a dog')),
  );
  const ofVisit = (['plans', 'foodDecisions', 'attachments'] as const).flatMap((kind) =>
    (records[kind] as readonly Named<'plans'>[])
      .filter(({ visitId }) => visitId !== null && !visits.has(visitId))
      .map((entry) => stray(kind, entry, 'a visit')),
  );
  const ofOwner = records.dogs
    .filter(({ clientId }) => !owners.has(clientId))
    .map((entry) => stray('dogs', entry, 'an owner'));
  return [...ofOwner, ...ofDog, ...ofVisit];
}

function visitsOfOtherDogs({ records, nameOf }: Known): string[] {
  const dogOfVisit = new Map(records.visits.map(({ id, dogId }) => [id, dogId]));
  return (['plans', 'foodDecisions'] as const).flatMap((kind) =>
    (records[kind] as readonly Named<'plans'>[])
      .filter(({ visitId, dogId }) => (dogOfVisit.get(visitId ?? '') ?? dogId) !== dogId)
      .map((entry) => `${spoken(nameOf(kind, entry))} names a visit of another dog.`),
  );
}

function plansAgainstEachOther({ records, nameOf }: Known): string[] {
  const said = (what: string) => (entry: Named<'plans'>) =>
    `${spoken(nameOf('plans', entry))} ${what}.`;
  return [
    ...repeated(records.plans, ({ dogId, version }) => `${dogId} ${version}`).map(
      said('has the same version number as another one'),
    ),
    ...repeated(
      records.plans.filter(({ current }) => current),
      ({ dogId }) => dogId,
    ).map(said('is in force beside another one')),
  ];
}

function sessionsOfOneDay({ records, nameOf }: Known): string[] {
  return repeated(records.sessions, ({ dogId, day }) => `${dogId} ${day}`).map(
    (entry) => `${spoken(nameOf('sessions', entry))} is told twice for one day.`,
  );
}

/** History of records the bundle does not hold, or that speaks of another record. */
function historyStrays({ history, owners, dogs }: BundleRecords): string[] {
  const known = new Set([...owners, ...dogs].map(({ id }) => id));
  return history.flatMap((entry, index) => {
    const around = entry.clientId ?? entry.dogId;
    const both = entry.clientId !== null && entry.dogId !== null;
    const said = `History entry ${index + 1} of the bundle`;
    if (around === null || both || !known.has(around)) {
      return [`${said} names an owner or a dog that is not in the bundle.`];
    }
    const { kind, before, recordId, dogId } = entry;
    if (kind !== 'weighing' || before === null) return [];
    const fits = before['id'] === recordId && before['dogId'] === dogId;
    return fits ? [] : [`${said} tells of another weighing than it names.`];
  });
}

/** Attached files that are neither in the bundle nor said to be missing, or told in two ways. */
function lostContents(
  { records, nameOf }: Known,
  missing: ReadonlySet<string>,
  contents: ReadonlySet<string>,
): string[] {
  const told = new Map<string, string>();
  return records.attachments.flatMap((entry) => {
    const { hash, mediaType, bytes } = entry;
    const said = spoken(nameOf('attachments', entry));
    if (!contents.has(hash) && !missing.has(hash)) {
      return [`${said} is neither in the bundle nor on its list of missing files.`];
    }
    const is = `${mediaType} ${bytes}`;
    if ((told.get(hash) ?? is) !== is) return [`${said} is told in two ways.`];
    told.set(hash, is);
    return [];
  });
}

/** Days the records would refuse as they are typed. */
function daysToCome({ records, nameOf }: Known, today: string): string[] {
  const past = (kind: NamedKind, entries: readonly Named[], dayOf: (entry: never) => string) =>
    entries
      .filter((entry) => dayOf(entry as never) > today)
      .map(
        (entry) =>
          `${spoken(nameOf(kind, entry))} has a day that is still to come (today is ${today}).`,
      );
  return [
    ...past('dogs', records.dogs, ({ birthDay }: Named<'dogs'>) => birthDay),
    ...past('visits', records.visits, ({ day }: Named<'visits'>) => day),
    ...past('sessions', records.sessions, ({ day }: Named<'sessions'>) => day),
    ...past('weighings', records.weighings, ({ day }: Named<'weighings'>) => day),
  ];
}
