import { createHash } from 'node:crypto';
import { createReadStream, existsSync, readdirSync, rmSync } from 'node:fs';
import { copyFile, open } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { makeFolder, putInPlace, syncFolder } from './durable.ts';

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
  makeFolder(dirname(target));
  try {
    await copyFile(source, temporary);
    if ((await hashOfFile(temporary)) !== hash) return false;
    putInPlace(temporary, target);
    return true;
  } finally {
    rmSync(temporary, { force: true });
  }
}

/** Copies a part out, to nowhere without a target. @returns its SHA-256 */
export async function copyOut(
  pieces: AsyncIterable<Uint8Array>,
  target: string | null,
): Promise<string> {
  if (target !== null) makeFolder(dirname(target));
  const out = target === null ? null : await open(target, 'w', 0o600);
  const hash = createHash('sha256');
  try {
    for await (const piece of pieces) {
      hash.update(piece);
      await out?.writeFile(piece);
    }
    await out?.sync();
  } finally {
    await out?.close();
  }
  if (target !== null) syncFolder(dirname(target));
  return hash.digest('hex');
}

/** Removes the contents of a store that nothing names any more. @returns how many */
export function dropUnnamed(store: string, named: ReadonlySet<string>): number {
  const unnamed = listContents(store).filter((hash) => !named.has(hash));
  for (const hash of unnamed) rmSync(contentFile(store, hash), { force: true });
  return unnamed.length;
}

/** The hashes of all contents in a store. */
export function listContents(store: string): readonly string[] {
  if (!existsSync(store)) return [];
  return readdirSync(store, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap(({ name }) => readdirSync(join(store, name)))
    .filter((name) => /^[0-9a-f]{64}$/.test(name));
}
