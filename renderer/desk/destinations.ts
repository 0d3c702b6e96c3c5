import type { Client as Owner } from '../../electron/contract/records.ts';
import type { DogLine } from '../../electron/contract/contract.ts';

/** Something the find box can lead to, beside the dogs themselves. */
export interface Destination {
  readonly words: string;
  readonly to: string;
}

interface Place extends Destination {
  /** Further words it answers to. */
  readonly also: string;
}

const PLACES: readonly Place[] = [
  { words: 'Add a dog', to: '/dogs/new', also: 'new owner client intake' },
  {
    words: 'Settings of the practice',
    to: '/settings',
    also: 'units paper logo language handouts',
  },
  { words: 'Rules', to: '/settings/rules', also: 'limits change screening plan heat' },
  {
    words: 'Records and backups',
    to: '/settings/records',
    also: 'make a backup restore export import folder lock bin erase weights csv',
  },
  { words: 'About the science', to: '/science', also: 'sources evidence formulas figures' },
];

interface DogDestination {
  readonly words: (name: string) => string;
  readonly to: (id: string) => string;
  readonly also: string;
}

const DOG_DESTINATIONS: readonly DogDestination[] = [
  {
    words: (name) => `New visit for ${name}`,
    to: (id) => `/dogs/${id}/visits/new`,
    also: 'new visit follow-up weigh weighing assess',
  },
  {
    words: (name) => `Running plan of ${name}`,
    to: (id) => `/dogs/${id}/plan`,
    also: 'running plan sessions review',
  },
  {
    words: (name) => `Print for ${name}`,
    to: (id) => `/dogs/${id}/handouts`,
    also: 'print handouts sheets letter pdf',
  },
  {
    words: (name) => `Heat limits of ${name}`,
    to: (id) => `/dogs/${id}/heat`,
    also: 'heat weather limits',
  },
  {
    words: (name) => `Edit ${name} or the owner`,
    to: (id) => `/dogs/${id}/edit`,
    also: 'edit change owner address phone',
  },
];

/** Shorter beginnings of a word would match by chance. */
const LEAST_LETTERS = 3;
/** Dogs for which a destination is offered. */
const DOGS_OFFERED = 3;

const wordsOf = (text: string): string[] =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .split(/[\s,]+/)
    .filter((word) => word !== '');

const begins = (words: readonly string[], word: string): boolean =>
  word.length >= LEAST_LETTERS && words.some((other) => other.startsWith(word));

/** The places of the program whose words begin with every word of the query. */
export function placesFor(query: string): Destination[] {
  const asked = wordsOf(query);
  if (asked.length === 0) return [];
  return PLACES.filter((place) => {
    const own = wordsOf(`${place.words} ${place.also}`);
    return asked.every((word) => begins(own, word));
  }).map(({ words, to }) => ({ words, to }));
}

/** "visit bramble": the destination that is asked for, and the name left over; null without both. */
export function splitDestination(
  query: string,
): { readonly name: string; readonly destinations: readonly DogDestination[] } | null {
  const asked = wordsOf(query);
  const isDestination = (word: string): boolean =>
    DOG_DESTINATIONS.some(({ also }) => begins(wordsOf(also), word));
  const name = asked
    .filter((word) => !isDestination(word) && word !== 'for' && word !== 'of')
    .join(' ');
  const destinationWords = asked.filter(isDestination);
  if (name === '' || destinationWords.length === 0) return null;
  const destinations = DOG_DESTINATIONS.filter(({ also }) =>
    destinationWords.every((word) => begins(wordsOf(also), word)),
  );
  return destinations.length === 0 ? null : { name, destinations };
}

/** The destinations for the first dogs found. */
export function destinationsFor(
  destinations: readonly DogDestination[],
  dogs: readonly DogLine[],
): Destination[] {
  return dogs.slice(0, DOGS_OFFERED).flatMap(({ id, name }) =>
    destinations.map((destination) => ({
      words: destination.words(name),
      to: destination.to(id),
    })),
  );
}

/** What can be done with an owner who has no dog in the list. */
export function ownerDestinations(
  owners: readonly Owner[],
  dogs: readonly DogLine[],
): Destination[] {
  const listed = new Set(dogs.map(({ clientId }) => clientId));
  return owners
    .filter(({ id }) => !listed.has(id))
    .slice(0, DOGS_OFFERED)
    .map(({ id, name }) => ({ words: `Add a dog of ${name}`, to: `/dogs/new?owner=${id}` }));
}
