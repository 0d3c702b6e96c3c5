import type { BundleRecords } from '../../contract/exchange/bundle.ts';
import type { BundleRecordKind, BundleRecordName } from '../../contract/exchange/bundleImport.ts';

/** A record of any kind but history, which is named by the record it is of. */
export type NamedKind = BundleRecordKind;
export const NAMED_KINDS = [
  'owners',
  'dogs',
  'visits',
  'plans',
  'sessions',
  'foodDecisions',
  'weighings',
  'attachments',
] as const satisfies readonly NamedKind[];
export type Named<K extends NamedKind = NamedKind> = BundleRecords[K][number];

/** The id of the record around one: the owner of a dog, the visit of a file, else the dog. */
export function aroundOf(kind: NamedKind, record: Named): string | null {
  if (kind === 'owners') return null;
  if (kind === 'dogs') return (record as Named<'dogs'>).clientId;
  if (kind === 'attachments') return (record as Named<'attachments'>).visitId;
  return (record as Named<'visits'>).dogId;
}

/** Names records of a bundle so that the practitioner knows which one is meant. */
export function namer({ owners, dogs, visits }: BundleRecords) {
  const ownerOf = new Map(owners.map((owner) => [owner.id, owner.name]));
  const dogOf = new Map(dogs.map((dog) => [dog.id, dog]));
  const visitOf = new Map(visits.map((visit) => [visit.id, visit]));

  return function nameOf(kind: NamedKind, record: Named): BundleRecordName {
    const { id } = record;
    if (kind === 'owners') {
      const { name } = record as Named<'owners'>;
      return { kind, id, name, day: null, dogName: null, clientName: name };
    }
    const around = aroundOf(kind, record)!;
    const visit = kind === 'attachments' ? visitOf.get(around) : undefined;
    const dogId = kind === 'dogs' ? id : kind === 'attachments' ? (visit?.dogId ?? '') : around;
    const dog = dogOf.get(dogId);
    return {
      kind,
      id,
      name: 'name' in record ? record.name : '',
      day: visit?.day ?? dayOf(kind, record),
      dogName: dog?.name ?? '',
      clientName: ownerOf.get(dog?.clientId ?? '') ?? '',
    };
  };
}
export type NameOf = ReturnType<typeof namer>;

function dayOf(kind: NamedKind, record: Named): string | null {
  if (kind === 'plans') return (record as Named<'plans'>).madeOn;
  if (kind === 'foodDecisions') return (record as Named<'foodDecisions'>).decidedOn;
  return 'day' in record ? record.day : null;
}

const WORDS: Readonly<Record<NamedKind, string>> = {
  owners: 'The owner',
  dogs: 'The dog',
  visits: 'The visit',
  plans: 'The running plan',
  sessions: 'The session result',
  foodDecisions: 'The decision on the food',
  weighings: 'The weighing',
  attachments: 'The attached file',
};

/** A record in the middle of a sentence: The visit of 2026-03-02 of “Bess”. */
export function spoken({ kind, name, day, dogName }: BundleRecordName): string {
  const own = name === '' ? '' : ` “${name}”`;
  const when = day === null ? '' : ` of ${day}`;
  const dog = kind === 'owners' || kind === 'dogs' || dogName === '' ? '' : ` of “${dogName}”`;
  return `${WORDS[kind as NamedKind]}${own}${when}${dog}`;
}
