import type { BundleRecords } from '../../contract/exchange/bundle.ts';
import type { BundleRecordName } from '../../contract/exchange/bundleImport.ts';
import { aroundOf, KINDS, type Named, type NamedKind } from './bundleKinds.ts';

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

/** A record in the middle of a sentence: The visit of 2026-03-02 of “Bess”. */
export function spoken({ kind, name, day, dogName }: BundleRecordName): string {
  const own = name === '' ? '' : ` “${name}”`;
  const when = day === null ? '' : ` of ${day}`;
  const dog = kind === 'owners' || kind === 'dogs' || dogName === '' ? '' : ` of “${dogName}”`;
  return `The ${KINDS[kind].word}${own}${when}${dog}`;
}
