import { z } from 'zod';
import { wholeBetween } from '../fields.ts';
import { BACKUP_LIMITS, PASSPHRASE_LENGTH } from '../keeping/limits.ts';
import type { AppStatus } from '../results.ts';
import { call, nothing } from './call.ts';
import { workId } from './work.ts';

const LENGTH_SENTENCE = `The passphrase must have from ${PASSPHRASE_LENGTH.min} to ${PASSPHRASE_LENGTH.max} characters.`;

/** A passphrase being chosen. Not trimmed and not cleaned: every character counts. */
export const newPassphrase = z.string({ error: 'The passphrase must be text.' }).refine((text) => {
  const { length } = [...text.normalize('NFC')];
  return length >= PASSPHRASE_LENGTH.min && length <= PASSPHRASE_LENGTH.max;
}, LENGTH_SENTENCE);

/** A passphrase being tried; only its length is bounded. */
export const triedPassphrase = z
  .string({ error: 'The passphrase must be text.' })
  .min(1, { error: 'Give the passphrase.' })
  .max(4 * PASSPHRASE_LENGTH.max, { error: LENGTH_SENTENCE });

const kept = (name: keyof typeof BACKUP_LIMITS) => {
  const { label, min, max } = BACKUP_LIMITS[name];
  const sentence = `${label} must be a whole number from ${min} to ${max}.`;
  return wholeBetween(min, max, sentence);
};

/** A file that was taken in, or one of the automatic backups by its name from `backup/status`. */
const source = z.union(
  [
    z.strictObject({ token: z.string().min(1).max(100) }),
    z.strictObject({
      name: z
        .string()
        .regex(/^[a-zA-Z0-9_-]{1,100}\.sqlite$/, { error: 'Choose a backup from the list.' }),
    }),
  ],
  { error: 'Choose a backup.' },
);

const opened = z.strictObject({ source, passphrase: triedPassphrase.nullable(), workId });

/** What is in some records, for a person to compare. */
export interface RecordsSummary {
  /** Empty where the practice has no name yet. */
  readonly practiceName: string;
  readonly schemaVersion: number;
  readonly owners: number;
  readonly dogs: number;
  readonly visits: number;
  readonly plans: number;
  readonly attachments: number;
  /** The instant of the newest entry, ISO text; null where there is none. */
  readonly newestEntry: string | null;
}

/** A backup that was made by itself. */
export interface BackupLine {
  readonly name: string;
  readonly reason: 'automatic' | 'before-schema' | 'before-restore';
  /** UTC instant. */
  readonly madeAt: string;
  readonly bytes: number;
}

export interface BackupStatus {
  /** Newest first. */
  readonly kept: readonly BackupLine[];
  /** Why the last automatic backup failed; null when it did not. */
  readonly failure: { readonly at: string; readonly message: string } | null;
  /** The instant of a backup that is dated in the future; null where none is. */
  readonly fromFuture: string | null;
  /** Null while the own practice is not open. */
  readonly settings: { readonly dailyBackups: number; readonly weeklyBackups: number } | null;
  /** Why the folder is a poor place for records; null when nothing speaks against it. */
  readonly folderWarning: string | null;
}

export interface MadeBackup {
  /** To be fetched with. */
  readonly token: string;
  readonly fileName: string;
  /** Attachments that could not be taken along because they are missing or damaged. */
  readonly missing: number;
}

export interface BackupLook {
  /** UTC instant. */
  readonly madeAt: string;
  readonly protectedByPassphrase: boolean;
  readonly summary: RecordsSummary;
  /** Attachments that were missing when it was made. */
  readonly missing: number;
  /** What the present records hold; null where there are none or they cannot be read. */
  readonly present: RecordsSummary | null;
}

export interface RestoredBackup {
  readonly status: AppStatus;
  /** Attachments that the restored records name and that are nowhere to be found. */
  readonly missing: number;
  /** Folder with the former files, where they could not be backed up; else null. */
  readonly setAside: string | null;
}

// All of these also answer while the own records cannot be opened; making one and the settings need
// them open.
export const backupCalls = {
  'backup/status': call<BackupStatus>()(() => nothing),
  /** Writes everything into one file, and answers with a token to save it by. */
  'backup/make': call<MadeBackup>()(() =>
    z.strictObject({ passphrase: newPassphrase.nullable(), workId }),
  ),
  /** Reads a backup through to its end and says what is in it. Nothing is changed. */
  'backup/look': call<BackupLook>()(() => opened),
  /** Puts a backup in the place of the present records, which are saved first. */
  'backup/restore': call<RestoredBackup>()(() => opened),
  'backup/settings': call<BackupStatus>()(() =>
    z.strictObject({
      dailyBackups: kept('dailyBackups'),
      weeklyBackups: kept('weeklyBackups'),
    }),
  ),
} as const;
