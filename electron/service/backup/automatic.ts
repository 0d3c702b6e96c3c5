import { existsSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import type { Desk } from '../context.ts';
import { DATABASE_FILES } from '../desk.ts';
import { contentFile, contentsOf, copyContent, listContents } from './contents.ts';
import {
  backedUpContents,
  backupsFolder,
  freeName,
  listBackups,
  noteFailure,
  presentContents,
} from './folder.ts';
import { dispensable, type Keeping } from './keeping.ts';
import type { BackupReason } from './names.ts';
import { snapshot } from './snapshot.ts';
import { storageRefusal } from '../trouble.ts';

/**
 * Copies the own practice into the folder of backups, then lets go of old ones.
 * @returns the new backup's name
 * @throws Refusal or SqliteError when the records or the disk do not let it; older ones all stay
 */
export async function keepBackup(desk: Desk, reason: BackupReason): Promise<string> {
  const { folder } = desk;
  const name = freeName(folder, reason, desk.instant());
  // Attachments first: a backup whose database is there has its attachments too.
  for (const hash of contentsOf(desk.raw)) {
    await copyContent(presentContents(folder), backedUpContents(folder), hash);
  }
  snapshot(desk.raw, join(backupsFolder(folder), name));
  letGo(folder, await keepingOf(desk));
  return name;
}

/** Makes an automatic backup when the records changed since the newest one. Never throws. */
export async function keepBackupIfChanged(desk: Desk): Promise<void> {
  if (desk.which !== 'own' || !changedSinceBackup(desk.folder)) return;
  try {
    await keepBackup(desk, 'automatic');
    noteFailure(desk.folder, null);
  } catch (error) {
    const known = storageRefusal(error);
    const message = known instanceof Error ? known.message : 'It stopped for an unknown reason.';
    noteFailure(desk.folder, { at: desk.instant(), message });
  }
}

/** By the time the files were last written: true also after a start that was killed. */
export function changedSinceBackup(folder: string): boolean {
  const file = join(folder, DATABASE_FILES.own);
  const log = `${file}-wal`;
  const written = [file, log]
    .filter((path) => existsSync(path) && statSync(path).size > 0)
    .map((path) => statSync(path).mtimeMs);
  const copied = listBackups(folder)
    .filter(({ reason }) => reason === 'automatic')
    .map(({ name }) => statSync(join(backupsFolder(folder), name)).mtimeMs);
  return Math.max(0, ...written) > Math.max(0, ...copied);
}

/** How many backups the practice keeps. */
export async function keepingOf(desk: Desk): Promise<Keeping> {
  const row = await desk.db
    .selectFrom('deskSetting')
    .select(['dailyBackups as daily', 'weeklyBackups as weekly'])
    .executeTakeFirstOrThrow();
  return row;
}

/** Removes the backups that are not to be kept, and the attachments that none of the others names. */
export function letGo(folder: string, keeping: Keeping): void {
  const going = dispensable(listBackups(folder), keeping);
  if (going.length === 0) return;
  for (const { name } of going) rmSync(join(backupsFolder(folder), name), { force: true });
  const named = contentsOfBackups(folder);
  if (named === null) return;
  const store = backedUpContents(folder);
  for (const hash of listContents(store)) {
    if (!named.has(hash)) rmSync(contentFile(store, hash), { force: true });
  }
}

/** Null when a backup cannot be read: then nothing is known to be without use. */
function contentsOfBackups(folder: string): ReadonlySet<string> | null {
  const named = new Set<string>();
  for (const { name } of listBackups(folder)) {
    try {
      const db = new BetterSqlite3(join(backupsFolder(folder), name), { readonly: true });
      try {
        for (const hash of contentsOf(db)) named.add(hash);
      } finally {
        db.close();
      }
    } catch {
      return null;
    }
  }
  return named;
}
