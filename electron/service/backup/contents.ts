import { createHash } from 'node:crypto';
import { createReadStream, existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { copyFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { putInPlace } from './durable.ts';

// The contents of attachments lie apart from the database, each named by its SHA-256, in the folder
// of records and once more among the backups.

/** Where a content lies under its store's folder. */
export const contentFile = (store: string, hash: string): string =>
  join(store, hash.slice(0, 2), hash);

/** The contents a database names; none in a schema from before attachments. */
export function contentsOf(db: Database): readonly string[] {
  const there = db.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'stored_file'").get();
  if (there === undefined) return [];
  return db.prepare('SELECT hash FROM stored_file ORDER BY hash').pluck().all() as string[];
}

/** The SHA-256 of a file, in hex; null when it is not there. */
export async function hashOfFile(file: string): Promise<string | null> {
  if (!existsSync(file)) return null;
  const hash = createHash('sha256');
  for await (const piece of createReadStream(file)) hash.update(piece as Buffer);
  return hash.digest('hex');
}

/**
 * Copies a content from one store to another, unless it is there already.
 * @returns false when the source is missing or no longer what its name says; nothing is copied then
 */
export async function copyContent(from: string, to: string, hash: string): Promise<boolean> {
  const target = contentFile(to, hash);
  if (existsSync(target)) return true;
  const source = contentFile(from, hash);
  if (!existsSync(source)) return false;
  const temporary = `${target}.part`;
  mkdirSync(dirname(target), { recursive: true, mode: 0o700 });
  try {
    await copyFile(source, temporary);
    if ((await hashOfFile(temporary)) !== hash) return false;
    putInPlace(temporary, target);
    return true;
  } finally {
    rmSync(temporary, { force: true });
  }
}

/** The hashes of all contents in a store. */
export function listContents(store: string): readonly string[] {
  if (!existsSync(store)) return [];
  return readdirSync(store, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap(({ name }) => readdirSync(join(store, name)))
    .filter((name) => /^[0-9a-f]{64}$/.test(name));
}
