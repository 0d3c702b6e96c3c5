// What the calls about bin, keeping and erasure answer with.

/** What can be put into the bin and taken out again. */
export const BIN_KINDS = ['client', 'dog', 'visit', 'attachment'] as const;
export type BinKind = (typeof BIN_KINDS)[number];

/** Why records are removed for good; kept with the erasure, without personal data. */
export const ERASURE_GROUNDS = [
  'asked by the owner',
  'retention period over',
  'entered by mistake',
] as const;
export type ErasureGround = (typeof ERASURE_GROUNDS)[number];

/** How much a record holds, itself included. */
export interface RecordCounts {
  readonly dogs: number;
  readonly visits: number;
  readonly plans: number;
  readonly foodDecisions: number;
  readonly sessions: number;
  readonly weighings: number;
  /** Photos and letters at the visits. */
  readonly files: number;
}

/** How long the records of an owner are to be kept. */
export interface Keeping {
  /** Day of the latest entry in any record of the owner. */
  readonly latestEntryDay: string;
  /** The last day of the retention period. */
  readonly keepUntil: string;
  /** True while today is not past `keepUntil`. */
  readonly insideRetention: boolean;
}

/** What putting a record into the bin takes out of sight. */
export interface BinCheck extends RecordCounts {
  readonly kind: BinKind;
  readonly id: string;
  /** In words, for example "Visit of 2026-03-02". Days inside stay ISO text. */
  readonly title: string;
  /** True when the running plan in force goes with it, so that none is in force afterwards. */
  readonly endsPlan: boolean;
  /** True when the latest decision on the food goes with it. */
  readonly endsFood: boolean;
}

/** One entry of the bin. */
export interface BinLine extends RecordCounts, Keeping {
  readonly kind: BinKind;
  readonly id: string;
  /** The dog's, owner's or file's name; for a visit its day. */
  readonly title: string;
  /** Null for an owner. */
  readonly dogName: string | null;
  readonly clientName: string;
  readonly binnedAt: string;
  /** Initials of who put it there; empty where the practice has one practitioner. */
  readonly author: string;
  readonly reason: string;
  /** The record around it that lies in the bin as well; it is seen again only with that one. */
  readonly inside: 'client' | 'dog' | 'visit' | null;
}

/** What emptying removed. */
export interface Emptied {
  readonly entries: number;
  readonly visits: number;
  readonly files: number;
}

/** What erasing an owner would remove. */
export interface EraseCheck extends RecordCounts, Keeping {
  readonly clientId: string;
  readonly clientName: string;
  readonly dogNames: readonly string[];
  readonly drafts: number;
}

export interface Erased {
  /** Numbers of what is gone. */
  readonly dogs: number;
  readonly visits: number;
  readonly files: number;
  /** False when another program held the file, so that remains may be in it until it is closed. */
  readonly clean: boolean;
  /** Automatic backups made before, which held the records. */
  readonly backups: 'none there' | 'replaced' | 'kept';
}

/** What stays of an erasure. */
export interface Erasure {
  readonly id: string;
  readonly erasedAt: string;
  readonly ground: ErasureGround;
  readonly insideRetention: boolean;
  readonly dogs: number;
  readonly visits: number;
  readonly files: number;
}

export interface ErasureList {
  /** The latest first. */
  readonly erasures: readonly Erasure[];
  /** Automatic backups from before the latest erasure: they may hold what was erased. */
  readonly olderBackups: number;
}

export interface KeepingSettings {
  readonly retentionYears: number;
}
