import { existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BackupLine, BackupStatus } from '../../contract/calls/backup.ts';
import { readBackupName, stampOf } from './names.ts';

// The folder `backups` inside the folder of records.

export const backupsFolder = (folder: string): string => join(folder, 'backups');
/** The contents of attachments, once for all backups. */
export const backedUpContents = (folder: string): string => join(backupsFolder(folder), 'files');
/** The contents of attachments of the records themselves. */
export const presentContents = (folder: string): string => join(folder, 'files');

/** The backups that were made by themselves, newest first: in the order they were made in. */
export function listBackups(folder: string): readonly BackupLine[] {
  const backups = backupsFolder(folder);
  return backupNames(folder)
    .sort((a, b) => b.number - a.number || (a.madeAt < b.madeAt ? 1 : -1))
    .map(({ name, reason, madeAt }) => {
      return { name, reason, madeAt, bytes: statSync(join(backups, name)).size };
    });
}

function backupNames(folder: string) {
  const backups = backupsFolder(folder);
  if (!existsSync(backups)) return [];
  return readdirSync(backups).flatMap((name) => {
    const read = readBackupName(name);
    return read === null ? [] : [{ ...read, name }];
  });
}

/** The name of a backup that is about to be made; its number is beyond that of every other one. */
export function nextName(folder: string, beginning: string, instant: string): string {
  const numbers = backupNames(folder).map(({ number }) => number);
  return `${beginning}-${stampOf(instant)}-n${Math.max(0, ...numbers) + 1}.sqlite`;
}

/** Removes what was begun, in the backups and the attachments, by a start that was killed. */
export function sweepHalfWritten(folder: string): void {
  for (const place of [backupsFolder(folder), presentContents(folder)]) {
    if (!existsSync(place)) continue;
    for (const name of readdirSync(place, { recursive: true, encoding: 'utf8' })) {
      if (/\.part(-journal|-wal|-shm)?$/.test(name)) rmSync(join(place, name), { force: true });
    }
  }
}

const noteFile = (folder: string): string => join(backupsFolder(folder), 'last-automatic.json');

/** Which automatic backup has the records as they were, told by their bytes. */
export interface BackupNote {
  readonly name: string;
  /** Of the file of records, SHA-256. */
  readonly digest: string;
}

/** Not written through: a note that is lost makes one backup more. */
export function noteBackup(folder: string, note: BackupNote): void {
  writeFileSync(noteFile(folder), JSON.stringify(note), { mode: 0o600 });
}

/** The note about the newest automatic backup; null where there is none, or the backup is gone. */
export function backupNote(folder: string): BackupNote | null {
  try {
    const note = JSON.parse(readFileSync(noteFile(folder), 'utf8')) as BackupNote;
    return existsSync(join(backupsFolder(folder), note.name)) ? note : null;
  } catch {
    return null;
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
