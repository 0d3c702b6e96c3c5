import type { HistoryAction } from '../../electron/contract/calls/history.ts';

/** What was done to a record, as its history says it. */
export const DEED_WORDS: Readonly<Record<HistoryAction, string>> = {
  amended: 'Amended',
  binned: 'Put into the bin',
  restored: 'Brought back',
  removed: 'Removed',
  archived: 'Put into the archive',
  unarchived: 'Taken out of the archive',
  made: 'Made',
};
