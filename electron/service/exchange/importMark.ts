import { existsSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeFolder, syncFolder } from '../backup/durable.ts';
import { presentContents } from '../backup/folder.ts';
import type { Context } from '../database/context.ts';
import { removeUnusedFiles } from '../files/unused.ts';

// Attached files are put into the folder of records before the records that name them, so that a
// kill in between leaves files without a record and never a record without its file. A mark in the
// folder says that an import is under way; a start that finds it sweeps up.

const markOf = (folder: string): string => join(presentContents(folder), 'import-under-way');

/** Says that an import is under way. @returns what takes the mark away again */
export function markImport(folder: string): () => void {
  const mark = markOf(folder);
  makeFolder(presentContents(folder));
  writeFileSync(mark, '', { mode: 0o600 });
  syncFolder(presentContents(folder));
  return () => rmSync(mark, { force: true });
}

/** Sweeps up after an import that was cut off. Called when a practice is opened; never throws. */
export function settleImport(context: Pick<Context, 'raw' | 'folder' | 'which'>): void {
  const mark = markOf(context.folder);
  if (!existsSync(mark)) return;
  try {
    removeUnusedFiles(context);
    rmSync(mark, { force: true });
  } catch {
    // A folder that cannot be written just now: the next start sweeps.
  }
}
