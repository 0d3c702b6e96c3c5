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

export type HistoryAction =
  'amended' | 'binned' | 'restored' | 'removed' | 'archived' | 'unarchived';

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

export const historyCalls = {
  /** Oldest first. Answers for records in the bin too, and for removed ones. */
  'history/list': call<readonly HistoryEntry[]>()(
    z.strictObject({
      kind: choice('Kind of record', HISTORY_KINDS),
      recordId: id('The record'),
    }),
  ),
} as const;
