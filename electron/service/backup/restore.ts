import { copyFileSync, existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { DATABASE_FILES, type OpenContext } from '../database/open.ts';
import { assertRoom, type FreeBytes } from '../files/room.ts';
import { isTrouble, storageRefusal, troubled } from '../database/trouble.ts';
import type { Practices } from '../practice/practices.ts';
import { keepBackup } from './automatic.ts';
import { cleanPictures } from './cleanPictures.ts';
import { contentFile, copyContent } from './contents.ts';
import { backedUpContents, backupsFolder, presentContents } from './folder.ts';
import { PACKED } from './manifest.ts';
import { stampOf } from './names.ts';
import type { Progress } from './pack.ts';
import { prepareRecords, readLockRow } from './prepare.ts';
import { beginRestore, commitRestore, completeRestore, dropRestore } from './swap.ts';
import { unpack } from './unpack.ts';

/** A backup file from outside, or one from the folder of backups by its checked name. */
export type RestoreSource =
  | { readonly kind: 'file'; readonly file: string; readonly passphrase: string | null }
  | { readonly kind: 'kept'; readonly name: string };

export interface RestoreRoom {
  readonly folder: string;
  readonly practices: Practices;
  readonly freeBytes: FreeBytes;
  instant(): string;
}

export interface Restored {
  /** Attachments that the records name and that are nowhere to be found. */
  readonly missing: number;
  /** Folder, inside the folder of records, with the former files; null where a backup has them. */
  readonly setAside: string | null;
}

/**
 * Puts a backup in the place of the own records. Until the very end the present records stand as
 * they are; a kill at any moment leaves the one or the other.
 * @throws Refusal when backup or disk does not allow it, or the work is cancelled; nothing is
 *   changed then
 */
export async function restore(
  room: RestoreRoom,
  source: RestoreSource,
  progress: Progress,
): Promise<Restored> {
  const { folder } = room;
  try {
    const restored = await prepare(room, source, progress);
    completeRestore(folder);
    return restored;
  } catch (error) {
    throw storageRefusal(error);
  }
}

/** All up to the point of no return. */
async function prepare(
  room: RestoreRoom,
  source: RestoreSource,
  progress: Progress,
): Promise<Restored> {
  const { folder } = room;
  try {
    const into = beginRestore(folder);
    assertRoom(folder, bytesNeeded(folder, source), room.freeBytes);
    await fetchRecords(folder, source, into, progress);
    await progress({ done: 0, total: 3, step: 'Checking the records of the backup' });
    const context = readableOwn(room.practices);
    const named = prepareRecords(join(into, PACKED.records), presentLock(context));
    await progress({ done: 1, total: 3, step: 'Looking for the attachments' });
    const missing = await fetchContents(folder, join(into, PACKED.contents), named);
    if (source.kind === 'file') await cleanPictures(into);
    await progress({ done: 2, total: 3, step: 'Keeping the present records' });
    const restored = { missing, setAside: await keepPresent(room, context) };
    await room.practices.letGo();
    if (context !== null) assertAlone(folder);
    commitRestore(folder, { setAside: restored.setAside });
    return restored;
  } catch (error) {
    dropRestore(folder);
    throw error;
  }
}

/** What is unpacked, and the backup of the present records beside it. */
function bytesNeeded(folder: string, source: RestoreSource): number {
  const from = source.kind === 'file' ? source.file : join(backupsFolder(folder), source.name);
  const present = join(folder, DATABASE_FILES.own);
  return statSync(from).size + (existsSync(present) ? statSync(present).size : 0);
}

async function fetchRecords(
  folder: string,
  source: RestoreSource,
  into: string,
  progress: Progress,
): Promise<void> {
  if (source.kind === 'file') {
    await unpack(source.file, source.passphrase, into, progress);
    return;
  }
  copyFileSync(join(backupsFolder(folder), source.name), join(into, PACKED.records));
}

/** @returns how many are nowhere to be found */
async function fetchContents(
  folder: string,
  into: string,
  named: readonly string[],
): Promise<number> {
  let missing = 0;
  for (const hash of named) {
    const there =
      existsSync(contentFile(into, hash)) ||
      (await copyContent(backedUpContents(folder), into, hash)) ||
      (await copyContent(presentContents(folder), into, hash));
    if (!there) missing += 1;
  }
  return missing;
}

function presentLock(context: OpenContext | null) {
  if (context === null) return null;
  try {
    return { row: readLockRow(context.raw) };
  } catch {
    return null; // damaged just there; the backup's own lock stays
  }
}

/** Saves the present records as a backup; records that cannot be read are set aside as they are. */
async function keepPresent(room: RestoreRoom, context: OpenContext | null): Promise<string | null> {
  if (!existsSync(join(room.folder, DATABASE_FILES.own))) return null;
  const aside = `set-aside-${stampOf(room.instant())}`;
  if (context === null) return aside;
  try {
    await keepBackup(context, 'before-restore');
    return null;
  } catch (error) {
    if (isTrouble(storageRefusal(error), 'damaged')) return aside;
    throw error;
  }
}

/** SQLite removes its log when the last one closes the file; a log that stays has another owner. */
function assertAlone(folder: string): void {
  if (!existsSync(join(folder, `${DATABASE_FILES.own}-wal`))) return;
  throw troubled(
    'held',
    'Another program holds the records; nothing was changed. Close it and try again.',
  );
}

/** The own practice; null where there is none, or where its file cannot be read for good. */
export function readableOwn(practices: Practices): OpenContext | null {
  try {
    const context = practices.context();
    return context?.which === 'own' ? context : null;
  } catch (error) {
    if (isTrouble(error, 'damaged', 'newer', 'foreign')) return null;
    throw error;
  }
}
