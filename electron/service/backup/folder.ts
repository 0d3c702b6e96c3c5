import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BackupLine, BackupStatus } from '../../contract/calls/backup.ts';
import { readBackupName, stampOf, type BackupReason } from './names.ts';

// The folder `backups` inside the folder of records.

export const backupsFolder = (folder: string): string => join(folder, 'backups');
/** The contents of attachments, once for all backups. */
export const backedUpContents = (folder: string): string => join(backupsFolder(folder), 'files');
/** The contents of attachments of the records themselves. */
export const presentContents = (folder: string): string => join(folder, 'files');

/** The backups that were made by themselves, newest first. */
export function listBackups(folder: string): readonly BackupLine[] {
  const backups = backupsFolder(folder);
  if (!existsSync(backups)) return [];
  return readdirSync(backups)
    .flatMap((name) => {
      const read = readBackupName(name);
      return read === null ? [] : [{ ...read, name, bytes: statSync(join(backups, name)).size }];
    })
    .sort((a, b) => (a.madeAt < b.madeAt || (a.madeAt === b.madeAt && a.name < b.name) ? 1 : -1));
}

/** A name no other backup has: two of one instant must not replace each other. */
export function freeName(folder: string, reason: BackupReason, instant: string): string {
  const stem = `${reason}-${stampOf(instant)}`;
  for (let number = 1; ; number++) {
    const name = number === 1 ? `${stem}.sqlite` : `${stem}_${number}.sqlite`;
    if (!existsSync(join(backupsFolder(folder), name))) return name;
  }
}

/** What became of the last automatic backup, where it failed. */
export type BackupFailure = NonNullable<BackupStatus['failure']>;

const failureFile = (folder: string): string => join(backupsFolder(folder), 'last-failure.json');

/** Kept in a file, because a backup at closing has nobody to tell. */
export function noteFailure(folder: string, failure: BackupFailure | null): void {
  try {
    if (failure === null) rmSync(failureFile(folder), { force: true });
    else writeFileSync(failureFile(folder), JSON.stringify(failure), { mode: 0o600 });
  } catch {
    // A disk that takes no backup may take no note either; the list shows how old the last one is.
  }
}

export function lastFailure(folder: string): BackupFailure | null {
  try {
    const read = JSON.parse(readFileSync(failureFile(folder), 'utf8')) as Partial<BackupFailure>;
    const { at, message } = read;
    return typeof at === 'string' && typeof message === 'string' ? { at, message } : null;
  } catch {
    return null;
  }
}
