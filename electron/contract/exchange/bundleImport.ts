import type { BundleKind } from './bundle.ts';
import type { FieldChange } from '../history/change.ts';

// An open bundle that is read back in: what is in it beside what is here, and what came of it.

/** Records shown at once of each list; the counts are of all. Our own choice (D). */
export const BUNDLE_SHOWN = { records: 100, changes: 30, problems: 30 } as const;

/** What becomes of a record that is here and differs in the bundle. */
export const DIFFERENT_CHOICES = ['ours', 'theirs'] as const;
export type DifferentChoice = (typeof DIFFERENT_CHOICES)[number];

/** What becomes of records that were erased here and are in the bundle. */
export const ERASED_CHOICES = ['leave out', 'bring back'] as const;
export type ErasedChoice = (typeof ERASED_CHOICES)[number];

/** What a record of the bundle is beside the records that are here. */
export type BundleState =
  | 'new'
  /** Here already, the same. */
  | 'equal'
  | 'different'
  /** Removed here for good, itself or the record around it. */
  | 'erased';

export type StateCounts = Readonly<Record<BundleState, number>>;

/** The kinds of record; history goes with the records it is of. */
export type BundleRecordKind = Exclude<BundleKind, 'history'>;

/** A record, named so that the practitioner knows which one is meant. */
export interface BundleRecordName {
  readonly kind: BundleRecordKind;
  readonly id: string;
  /** Of the owner, the dog or the file; empty where a day tells. */
  readonly name: string;
  /** Of the visit, session, weighing, plan or decision. */
  readonly day: string | null;
  /** Null for an owner. */
  readonly dogName: string | null;
  readonly clientName: string;
}

export interface DifferentRecord extends BundleRecordName {
  /** What it is here (before) against what it is in the bundle (after); the first ones. */
  readonly changes: readonly FieldChange[];
  readonly changeCount: number;
  /** Never altered after it was made: it stays as it is here, whatever is chosen. */
  readonly stays: boolean;
}

/** A list of which the first ones are told. */
export interface Told<T> {
  readonly count: number;
  readonly first: readonly T[];
}

/** A bundle that was read and checked whole, held against the records that are here. */
export interface BundleLook {
  readonly name: string;
  readonly madeOn: string;
  readonly appVersion: string;
  /** Name of the practice it was made in; empty where it had none. */
  readonly practice: string;
  readonly states: Readonly<Record<BundleRecordKind, StateCounts>>;
  /** Earlier states and deeds of these records that are not known here. */
  readonly newHistory: number;
  /** Attached files in it, and those it says were missing when it was made. */
  readonly files: { readonly here: number; readonly missing: number };
  readonly different: Told<DifferentRecord>;
  /** Erased here; what belongs to one of them is not named again. */
  readonly erased: Told<BundleRecordName>;
  /** Whole sentences. With one of them, nothing can be imported. */
  readonly problems: Told<string>;
  /** Stands for the bundle and what would come of it. */
  readonly digest: string;
}

/** What came of an import. */
export interface BundleDone {
  readonly added: Readonly<Record<BundleRecordKind, number>>;
  /** Records that are now as in the bundle; what they were is in their history. */
  readonly replaced: number;
  /** Records that differ and stayed as they were. */
  readonly kept: number;
  /** Records left out because they were erased here. */
  readonly leftOut: number;
  /** Attached files whose content is in neither the bundle nor the folder of records. */
  readonly filesMissing: number;
  /** The dogs that came or changed; the first ones. */
  readonly dogs: Told<{ readonly id: string; readonly name: string }>;
}
