import { CLIENT } from './client.ts';
import { DOG } from './dog.ts';
import type { Fields } from './fieldKinds.ts';
import { SESSION } from './session.ts';
import { VISIT } from './visit.ts';
import { ORIGIN, WEIGHING } from './weighing.ts';

// What the service adds to the records it keeps.

/** Times are UTC instants in ISO text. */
export const STORED = {
  id: { kind: 'id', label: 'The record', since: 1 },
  createdAt: { kind: 'instant', label: 'A time', since: 1 },
  updatedAt: { kind: 'instant', label: 'A time', since: 1 },
} as const satisfies Fields;

/** A record whose changes are counted: a save names the revision it was read at. */
export const REVISED = {
  ...STORED,
  revision: {
    kind: 'number',
    label: 'Revision of the record',
    unit: 'changes',
    min: 1,
    max: 1_000_000_000,
    whole: true,
    since: 2,
  },
} as const satisfies Fields;

/** Initials of who wrote it; empty where the practice has one practitioner. */
export const AUTHORED = {
  author: { kind: 'text', label: 'Initials', as: 'line', since: 2 },
} as const satisfies Fields;

/** When it was put into the bin; null while it is in use. */
export const BINNED = {
  binnedAt: { kind: 'instant', label: 'A time', nullable: true, since: 2 },
} as const satisfies Fields;

/** When the dog was put away, its record kept; null while it is seen. */
export const ARCHIVED = {
  archivedAt: { kind: 'instant', label: 'A time', nullable: true, since: 2 },
} as const satisfies Fields;

export const OF_DOG = {
  dogId: { kind: 'id', label: 'The dog', since: 1 },
} as const satisfies Fields;

/** The records as they are read back. */
export const KEPT = {
  client: { ...CLIENT, ...REVISED },
  dog: { ...DOG, ...REVISED, ...ARCHIVED },
  visit: { ...VISIT, ...REVISED, ...AUTHORED },
  session: { ...SESSION, ...STORED, ...OF_DOG, ...AUTHORED },
  weighing: { ...WEIGHING, ...REVISED, ...OF_DOG, ...AUTHORED, ...ORIGIN },
} as const satisfies Readonly<Record<string, Fields>>;
