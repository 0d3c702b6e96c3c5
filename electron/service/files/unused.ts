import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { contentsOf, dropUnnamed } from '../backup/contents.ts';
import { presentContents, sweepHalfWritten } from '../backup/folder.ts';
import { lookInto } from '../backup/whole.ts';
import type { Context } from '../database/context.ts';
import { DATABASE_FILES } from '../database/open.ts';

/** What was chosen for a visit that is not saved yet. */
const WAITING = `SELECT json_extract(file.value, '$.hash') FROM draft, json_each(draft.json, '$.files') AS file
  WHERE draft.key GLOB 'files:*' AND json_valid(draft.json)`;

/**
 * Removes every stored file that neither an attachment nor a visit begun names any more, one left behind by a start that was
 * killed as well. The own practice and the demonstration share the folder: what the other one names
 * stays.
 * @returns how many files were removed from the folder
 */
export function removeUnusedFiles(context: Pick<Context, 'raw' | 'folder' | 'which'>): number {
  context.raw
    .prepare(
      `DELETE FROM stored_file WHERE hash NOT IN (SELECT hash FROM attachment)
         AND hash NOT IN (${WAITING})`,
    )
    .run();
  const named = new Set([...contentsOf(context.raw), ...contentsOfOther(context)]);
  const removed = dropUnnamed(presentContents(context.folder), named);
  sweepHalfWritten(context.folder);
  return removed;
}

function contentsOfOther(context: Pick<Context, 'folder' | 'which'>): readonly string[] {
  const other = context.which === 'own' ? DATABASE_FILES.demo : DATABASE_FILES.own;
  const file = join(context.folder, other);
  return existsSync(file) ? lookInto(file, contentsOf) : [];
}
