import type { Client as Owner } from '../../electron/contract/records.ts';
import type { DogLine } from '../../electron/contract/contract.ts';

/** Something the find box can lead to, beside the dogs themselves. */
export interface Deed {
  readonly words: string;
  readonly to: string;
}

interface Place extends Deed {
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

interface DogDeed {
  readonly words: (name: string) => string;
  readonly to: (id: string) => string;
  readonly also: string;
}

const DOG_DEEDS: readonly DogDeed[] = [
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
/** Dogs for which a deed is offered. */
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
export function placesFor(query: string): Deed[] {
  const asked = wordsOf(query);
  if (asked.length === 0) return [];
  return PLACES.filter((place) => {
    const own = wordsOf(`${place.words} ${place.also}`);
    return asked.every((word) => begins(own, word));
  }).map(({ words, to }) => ({ words, to }));
}

/** "visit bramble": the deed that is asked for, and the name left over; null without both. */
export function splitDeed(
  query: string,
): { readonly name: string; readonly deeds: readonly DogDeed[] } | null {
  const asked = wordsOf(query);
  const isDeed = (word: string): boolean =>
    DOG_DEEDS.some(({ also }) => begins(wordsOf(also), word));
  const name = asked.filter((word) => !isDeed(word) && word !== 'for' && word !== 'of').join(' ');
  const deedWords = asked.filter(isDeed);
  if (name === '' || deedWords.length === 0) return null;
  const deeds = DOG_DEEDS.filter(({ also }) =>
    deedWords.every((word) => begins(wordsOf(also), word)),
  );
  return deeds.length === 0 ? null : { name, deeds };
}

/** The deeds for the first dogs found. */
export function deedsFor(deeds: readonly DogDeed[], dogs: readonly DogLine[]): Deed[] {
  return dogs
    .slice(0, DOGS_OFFERED)
    .flatMap(({ id, name }) => deeds.map((deed) => ({ words: deed.words(name), to: deed.to(id) })));
}

/** What can be done with an owner who has no dog in the list. */
export function ownerDeeds(owners: readonly Owner[], dogs: readonly DogLine[]): Deed[] {
  const listed = new Set(dogs.map(({ clientId }) => clientId));
  return owners
    .filter(({ id }) => !listed.has(id))
    .slice(0, DOGS_OFFERED)
    .map(({ id, name }) => ({ words: `Add a dog of ${name}`, to: `/dogs/new?owner=${id}` }));
}
