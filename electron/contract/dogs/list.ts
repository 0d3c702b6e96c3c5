import type { Reason } from '../../../core/index.ts';

/** The most dogs one answer of the list holds: each key of a search draws them anew. Ours (D). */
export const MOST_LISTED = 40;

/** Entries a dog's story holds at most of what was done to its records, the latest ones (D). */
export const MOST_DEEDS = 500;

export const DOG_ORDERS = ['last visit', 'name', 'owner', 'weight', 'condition'] as const;
export type DogOrder = (typeof DOG_ORDERS)[number];

/** `archived too` widens the list; the others narrow it. */
export const DOG_FILTERS = [
  'due for follow-up',
  'off course',
  'plan ended',
  'stopped',
  'gaining',
  'consent missing',
  'archived too',
] as const;
export type DogFilter = (typeof DOG_FILTERS)[number];

/** One of the dogs of an owner. */
export interface OwnersDog {
  readonly id: string;
  readonly name: string;
  readonly archivedAt: string | null;
}

/** A dog whose weight has left its course. */
export interface OffCourseLine {
  readonly dogId: string;
  readonly name: string;
  readonly clientName: string;
  /** The latest weighing. */
  readonly day: string;
  readonly weightKg: number;
  readonly reason: Reason;
}
