import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Erased } from '../../contract/keeping/bin.ts';
import { keepBackup } from '../backup/automatic.ts';
import { contentsOf, dropUnnamed } from '../backup/contents.ts';
import {
  backedUpContents,
  backupsFolder,
  listBackups,
  noteFailure,
  sweepHalfWritten,
} from '../backup/folder.ts';
import type { Context } from '../database/context.ts';
import { storageRefusal } from '../database/trouble.ts';

/** Samples of keys that the query planner keeps; they would outlive their rows. */
const PLANNER_SAMPLES = 'sqlite_stat4';

/**
 * Rewrites the database without the remains of removed rows, and empties its write-ahead log.
 * Removed rows are overwritten anyhow (`secure_delete`); this reaches what was freed before.
 * @returns false when another program held the file or the disk had no room for it
 */
export function wipeRemains({ raw }: Context): boolean {
  try {
    const sampled = raw.prepare('SELECT 1 FROM sqlite_schema WHERE name = ?').get(PLANNER_SAMPLES);
    if (sampled !== undefined) raw.exec(`DELETE FROM ${PLANNER_SAMPLES}`);
    raw.exec('VACUUM');
    return emptyLog({ raw });
  } catch (error) {
    if (storageRefusal(error) === error) throw error;
    return false;
  }
}

/** Folds the write-ahead log into the database. @returns false when another program reads it. */
export function emptyLog({ raw }: Pick<Context, 'raw'>): boolean {
  const [result] = raw.pragma('wal_checkpoint(TRUNCATE)') as { readonly busy: number }[];
  return result?.busy === 0;
}

/** How many backups made by themselves are older than an erasure, and may hold what was erased. */
export function olderBackups({ which, folder, instant }: Context, erasedAt: string | null): number {
  if (which !== 'own' || erasedAt === null) return 0;
  // One dated in the future was made while the clock was wrong, and may be from before.
  const now = instant();
  return listBackups(folder).filter(({ madeAt }) => madeAt < erasedAt || madeAt > now).length;
}

/**
 * Puts one backup of the records as they are now in place of all that were made by themselves
 * before. When it cannot be made, the older ones stay: they may be all that others' records have.
 */
export async function replaceBackups(context: Context): Promise<Erased['backups']> {
  if (context.which !== 'own') return 'none there';
  const { folder } = context;
  const older = listBackups(folder);
  if (older.length === 0) {
    // A first backup that was cut off has copied contents, and has no name yet.
    clearBackups(context);
    return 'none there';
  }
  let fresh: string;
  try {
    fresh = await keepBackup(context, 'automatic');
    noteFailure(folder, null);
  } catch (error) {
    if (storageRefusal(error) === error) throw error;
    return 'kept';
  }
  for (const { name } of older) {
    if (name !== fresh) rmSync(join(backupsFolder(folder), name), { force: true });
  }
  clearBackups(context);
  return 'replaced';
}

/** Removes from the backups what was begun, and the contents that the records no longer name. */
function clearBackups({ raw, folder }: Context): void {
  sweepHalfWritten(folder);
  dropUnnamed(backedUpContents(folder), new Set(contentsOf(raw)));
}
