import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeFolder, syncFolder } from '../backup/durable.ts';
import { presentContents } from '../backup/folder.ts';
import type { Desk } from '../context.ts';
import { keepContent } from '../files/store.ts';
import { removeUnusedFiles } from '../files/unused.ts';
import type { Work } from '../work.ts';
import { takeContents, type BundleIn } from './bundleRead.ts';

// Attached files are put into the folder of records before the records that name them, so that a
// kill in between leaves files without a record and never a record without its file. A mark in the
// folder says that an import is under way; a start that finds it sweeps up.

const markOf = (folder: string): string => join(presentContents(folder), 'import-under-way');

/**
 * Keeps attached files of a bundle, then runs `keep`. When either fails, the files that no record
 * names are removed again.
 */
export async function withContents<T>(
  desk: Desk,
  work: Work,
  { file, bundle, wanted }: { file: string; bundle: BundleIn; wanted: ReadonlySet<string> },
  keep: () => Promise<T>,
): Promise<T> {
  if (wanted.size === 0) return keep();
  const mark = markOf(desk.folder);
  makeFolder(presentContents(desk.folder));
  writeFileSync(mark, '', { mode: 0o600 });
  syncFolder(presentContents(desk.folder));
  try {
    await takeContents(file, bundle, wanted, async (content, done) => {
      await work.step({ done, total: wanted.size, step: 'Copying the attached files' });
      await keepContent(desk.folder, content);
    });
    return await keep();
  } catch (error) {
    removeUnusedFiles(desk);
    throw error;
  } finally {
    rmSync(mark, { force: true });
  }
}

/** Sweeps up after an import that was cut off. Called when a practice is opened; never throws. */
export function settleImport(desk: Pick<Desk, 'raw' | 'folder' | 'which'>): void {
  const mark = markOf(desk.folder);
  if (!existsSync(mark)) return;
  try {
    removeUnusedFiles(desk);
    rmSync(mark, { force: true });
  } catch {
    // A folder that cannot be written just now: the next start sweeps.
  }
}
