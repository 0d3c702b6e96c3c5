import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Context } from '../database/context.ts';
import { DATABASE_FILES } from '../database/open.ts';
import { foldIn } from '../database/database.ts';
import { contentsOf, copyContent, dropUnnamed, hashOfFile } from './contents.ts';
import {
  backedUpContents,
  backupNote,
  backupsFolder,
  listBackups,
  nextName,
  noteBackup,
  noteFailure,
  presentContents,
} from './folder.ts';
import { dispensable, type Keeping } from './keeping.ts';
import type { BackupReason } from './names.ts';
import { snapshot } from './snapshot.ts';
import { lookInto } from './whole.ts';
import { storageRefusal } from '../database/trouble.ts';

/**
 * Copies the own practice into the folder of backups, then lets go of old ones.
 * @param digest of the records, where it is known already
 * @returns the new backup's name
 * @throws Refusal or SqliteError when the records or the disk do not let it; older ones all stay
 */
export async function keepBackup(
  context: Context,
  reason: BackupReason,
  digest: string | null = null,
): Promise<string> {
  const { folder } = context;
  const before = digest ?? (await digestOf(context));
  const name = nextName(folder, reason, context.instant());
  // Attachments first: a backup whose database is there has its attachments too.
  for (const hash of contentsOf(context.raw)) {
    await copyContent(presentContents(folder), backedUpContents(folder), hash);
  }
  snapshot(context.raw, join(backupsFolder(folder), name));
  if (reason === 'automatic') noteBackup(folder, { name, digest: before });
  letGo(folder, await keepingOf(context));
  return name;
}

/** Makes an automatic backup when the records changed since the newest one. Never throws. */
export async function keepBackupIfChanged(context: Context): Promise<void> {
  if (context.which !== 'own') return;
  const { folder } = context;
  try {
    const digest = await digestOf(context);
    const note = backupNote(folder);
    if (note !== null && note.digest === digest) return;
    await keepBackup(context, 'automatic', digest);
    noteFailure(folder, null);
  } catch (error) {
    const known = storageRefusal(error);
    const message = known instanceof Error ? known.message : 'It stopped for an unknown reason.';
    noteFailure(folder, { at: context.instant(), message });
  }
}

/**
 * What the file of records holds, as one number. Clocks are set wrong and right again, so the times
 * of files say nothing. Folded in first: the log would change the file without a change of records.
 */
async function digestOf({ raw, folder }: Context): Promise<string> {
  try {
    foldIn(raw);
  } catch {
    // A full disk or a damaged file; the backup says so itself.
  }
  const file = join(folder, DATABASE_FILES.own);
  return `${await hashOfFile(file)} ${await hashOfFile(`${file}-wal`)}`;
}

/** How many backups the practice keeps. */
export function keepingOf(context: Context): Promise<Keeping> {
  return context.db
    .selectFrom('deskSetting')
    .select(['dailyBackups as daily', 'weeklyBackups as weekly'])
    .executeTakeFirstOrThrow();
}

/** Removes the backups that are not to be kept, and the attachments that none of the others names. */
export function letGo(folder: string, keeping: Keeping): void {
  const going = dispensable(listBackups(folder), keeping);
  if (going.length === 0) return;
  for (const { name } of going) rmSync(join(backupsFolder(folder), name), { force: true });
  const named = contentsOfBackups(folder);
  if (named !== null) dropUnnamed(backedUpContents(folder), named);
}

/** Null when a backup cannot be read: then nothing is known to be without use. */
function contentsOfBackups(folder: string): ReadonlySet<string> | null {
  const named = new Set<string>();
  for (const { name } of listBackups(folder)) {
    try {
      for (const hash of lookInto(join(backupsFolder(folder), name), contentsOf)) named.add(hash);
    } catch {
      return null;
    }
  }
  return named;
}
