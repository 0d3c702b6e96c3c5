import { rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { contentToKeep } from '../files/content.ts';
import { keepContent } from '../files/store.ts';
import { contentFile, contentsOf } from './contents.ts';
import { syncFile } from './durable.ts';
import { PACKED } from './manifest.ts';
import { openStrange } from './prepare.ts';

/**
 * Takes from the pictures of a restored backup what is noted in them, as on every other way in: it
 * may have been made by an earlier version, or by hand. A backup of ours is left as it is.
 * @param into the folder that records and contents were prepared in
 */
export async function cleanPictures(into: string): Promise<void> {
  const records = join(into, PACKED.records);
  const db = openStrange(records, { readonly: false });
  try {
    for (const hash of contentsOf(db)) {
      const file = contentFile(join(into, PACKED.contents), hash);
      const clean = await cleaned(file);
      if (clean === null) continue;
      rename(db, { from: hash, to: await keepContent(into, clean), bytes: clean.length });
      rmSync(file);
    }
  } finally {
    db.close();
    syncFile(records);
  }
}

/** Null for what stays as it is: what is not there, too, or can be read as no picture. */
async function cleaned(file: string): Promise<Buffer | null> {
  try {
    const bytes = await readFile(file);
    const { content } = contentToKeep(bytes, { recording: true });
    return content.equals(bytes) ? null : content;
  } catch {
    return null;
  }
}

/** Has the records name a content otherwise, those chosen for a visit that is not saved yet as well. */
function rename(db: Database, content: { from: string; to: string; bytes: number }): void {
  db.transaction(() => {
    db.prepare(
      `INSERT INTO stored_file SELECT @to, media_type, @bytes, created_at FROM stored_file
       WHERE hash = @from ON CONFLICT DO NOTHING`,
    ).run(content);
    db.prepare('UPDATE attachment SET hash = @to WHERE hash = @from').run(content);
    db.prepare("UPDATE draft SET json = replace(json, @from, @to) WHERE key GLOB 'files:*'").run(
      content,
    );
    db.prepare('DELETE FROM stored_file WHERE hash = @from').run(content);
  })();
}
