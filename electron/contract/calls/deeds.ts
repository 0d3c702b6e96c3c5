import { z } from 'zod';
import { id } from '../fields.ts';
import { call } from './call.ts';
import type { HistoryAction, HistoryKind } from './history.ts';

/** What was done to a record of a dog after it was first kept, without what it was before. */
export interface DogDeed {
  readonly id: number;
  readonly kind: HistoryKind;
  readonly recordId: string;
  readonly action: HistoryAction;
  /** UTC instant, ISO text. */
  readonly at: string;
  /** Initials; empty where nobody was chosen. */
  readonly author: string;
  readonly reason: string;
  /** Day of the visit, session or weighing as it was before; null where it has none. */
  readonly day: string | null;
  /** Name of a file; empty for others. */
  readonly name: string;
  /** The visit, or the one a file stands at; null for others. */
  readonly visitId: string | null;
  /** True where the record is out of the dog's file now. */
  readonly gone: boolean;
}

export const deedCalls = {
  /** What was done to the dog and its records, latest first, `MOST_DEEDS` at most. */
  'dogs/deeds': call<readonly DogDeed[]>()(z.strictObject({ dogId: id('The dog') })),
} as const;
