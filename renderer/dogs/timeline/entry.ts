import type { Attachment } from '../../../electron/contract/files/attachment.ts';

/** What may stand on a timeline, in the order in which one day tells it. */
export const ENTRY_KINDS = ['visit', 'weighing', 'food', 'plan', 'file', 'change'] as const;
export type EntryKind = (typeof ENTRY_KINDS)[number];

/** What each kind is called on the buttons that narrow the timeline. */
export const ENTRY_WORDS: Readonly<Record<EntryKind, string>> = {
  visit: 'Visits',
  weighing: 'Weighings',
  food: 'Food',
  plan: 'Running plan',
  file: 'Files',
  change: 'Changes',
};

/** One thing that happened to a dog or its record. */
export interface TimelineEntry {
  readonly key: string;
  readonly kind: EntryKind;
  /** The day it belongs to, `YYYY-MM-DD`. */
  readonly day: string;
  /** Initials; empty where nobody is known. */
  readonly author: string;
  /** What happened, in a few words; leads to where it stands in full. */
  readonly title: string;
  /** Said after the title for a screen reader only. */
  readonly which?: string;
  readonly to: string;
  /** What is worth reading on the spot, a line each. */
  readonly lines: readonly string[];
  readonly files?: readonly Attachment[];
}

/** The calendar day of a UTC instant on this machine. */
export function localDay(instant: string): string {
  const at = new Date(instant);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}
