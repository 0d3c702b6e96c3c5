import { z } from 'zod';
import { choice, id } from '../fields.ts';
import type { FieldChange } from '../history/change.ts';
import { call } from './call.ts';

export const HISTORY_KINDS = [
  'client',
  'dog',
  'visit',
  'session',
  'weighing',
  'attachment',
] as const;
export type HistoryKind = (typeof HISTORY_KINDS)[number];

/** `made`: a file to go home was made of it, which changed nothing; the reason says which. */
export const HISTORY_ACTIONS = [
  'amended',
  'binned',
  'restored',
  'removed',
  'archived',
  'unarchived',
  'made',
] as const;
export type HistoryAction = (typeof HISTORY_ACTIONS)[number];

/** One thing that was done to a record after it was first kept. */
export interface HistoryEntry {
  readonly id: number;
  readonly recordId: string;
  /** UTC instant, ISO text. */
  readonly at: string;
  /** Initials; empty where nobody was chosen. */
  readonly author: string;
  readonly action: HistoryAction;
  readonly reason: string;
  /** The revision before; null for records that are not counted. */
  readonly revision: number | null;
  readonly changes: readonly FieldChange[];
}

/** Records of a dog that have no page of their own on which their history could stand. */
export const DOG_RECORD_KINDS = ['session', 'weighing', 'attachment'] as const;

/** An entry with what tells its record from the others of the dog. */
export interface DogHistoryEntry extends HistoryEntry {
  /** Day of the session or weighing; of an entry that was moved, the day before. */
  readonly day: string | null;
  /** Name of the file; empty for others. */
  readonly name: string;
  /** The visit of the file; null for others. */
  readonly visitId: string | null;
  /** True where the record is out of the dog's file since this entry. */
  readonly gone: boolean;
}

/** What was done to a record of a dog after it was first kept, without what it was before. */
export interface DogDeed extends Omit<DogHistoryEntry, 'revision' | 'changes'> {
  readonly kind: HistoryKind;
  /** Day of the visit, session or weighing as it was before; null where it has none. */
  readonly day: string | null;
  /** The visit, or the one a file stands at; null for others. */
  readonly visitId: string | null;
  /** True where the record is out of the dog's file now. */
  readonly gone: boolean;
}

export const historyCalls = {
  /** What was done to records of one kind of a dog, removed ones too, latest first. */
  'history/ofDog': call<readonly DogHistoryEntry[]>()(() =>
    z.strictObject({
      dogId: id('The dog'),
      kind: choice('Kind of record', DOG_RECORD_KINDS),
    }),
  ),
  /** Oldest first. Answers for records in the bin too, and for removed ones. */
  'history/list': call<readonly HistoryEntry[]>()(() =>
    z.strictObject({
      kind: choice('Kind of record', HISTORY_KINDS),
      recordId: id('The record'),
    }),
  ),
  /** What was done to the dog and its records, latest first, `MOST_DEEDS` at most. */
  'dogs/deeds': call<readonly DogDeed[]>()(() => z.strictObject({ dogId: id('The dog') })),
} as const;
