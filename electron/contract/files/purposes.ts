import { grouped } from '../../../core/quantityText.ts';
import type { Answer } from '../errors.ts';

/** What a file is chosen or saved for. Dialogues, limits and doors know these and no others. */
export type FilePurpose = 'backup' | 'bundle' | 'csv' | 'run' | 'attachment';

/** One purpose: what the dialogue calls its files, their endings, and how large one may be. */
export interface PurposeOfFiles {
  readonly label: string;
  /** Without the dot; the first is the usual one. */
  readonly extensions: readonly string[];
  readonly maxBytes: number;
}

/** A megabyte as file managers count it: 1024 × 1024 bytes. */
export const MEGABYTE = 1024 * 1024;

const TERABYTE = 1024 * 1024 * MEGABYTE;

// Our own decisions (mark D). A backup holds a whole practice with its photos and must never be too
// large to be read again: the room on the disk is its limit, and this number only bounds what is
// plainly no backup. A table of weights in 16 MB holds some hundred thousand rows, a track in 20 MB
// two days at a point a second.
export const FILE_PURPOSES: Readonly<Record<FilePurpose, PurposeOfFiles>> = {
  backup: { label: 'Backup of Trotwell', extensions: ['trotwell'], maxBytes: TERABYTE },
  bundle: { label: 'Zip archive', extensions: ['zip'], maxBytes: 1024 * MEGABYTE },
  csv: { label: 'Table (CSV)', extensions: ['csv', 'txt'], maxBytes: 16 * MEGABYTE },
  run: { label: 'Track (GPX) or table (CSV)', extensions: ['gpx', 'csv'], maxBytes: 20 * MEGABYTE },
  attachment: {
    label: 'Photo or PDF',
    extensions: ['jpg', 'jpeg', 'png', 'webp', 'pdf'],
    maxBytes: 20 * MEGABYTE,
  },
};

/** True for one of the purposes; what comes from a page may be anything. */
export function isFilePurpose(text: unknown): text is FilePurpose {
  return typeof text === 'string' && Object.hasOwn(FILE_PURPOSES, text);
}

/** The sentence for a file that is too large, e.g. "A file may have at most 20 MB." */
export function tooLargeSentence(maxBytes: number): string {
  return `A file may have at most ${sizeWords(maxBytes)}.`;
}

/** A size as file managers count it, e.g. "20 MB", "5.2 GB". */
export function sizeWords(bytes: number): string {
  const megabytes = bytes / MEGABYTE;
  if (megabytes < 10) return `${Number(megabytes.toFixed(1))} MB`;
  if (megabytes < 1024) return `${grouped(Math.floor(megabytes))} MB`;
  return `${grouped(Number((megabytes / 1024).toFixed(1)))} GB`;
}

/** One of several files that were chosen together, and what became of it. */
export interface ChosenFile {
  readonly name: string;
  readonly taken: Answer<TakenFile>;
}

/** A file the service has taken in; only its token says which. */
export interface TakenFile {
  /** Names the file for the call that uses it, once. */
  readonly token: string;
  /** The file's own name, without folders. */
  readonly name: string;
  readonly bytes: number;
}
