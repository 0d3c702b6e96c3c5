import { createHash } from 'node:crypto';
import { existsSync, rmSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { Refusal } from '../../contract/errors.ts';
import { contentFile, hashOfFile } from '../backup/contents.ts';
import { makeFolder, putInPlace } from '../backup/durable.ts';
import { presentContents } from '../backup/folder.ts';

// The contents of attachments lie in the folder of records, each named by its SHA-256, so that the
// same letter at three visits is kept once and a changed file is found out. The own practice and
// the demonstration share the store; `unused.ts` removes what neither of them names.

/** Keeps a content: afterwards the whole of it is on the disk, or nothing new. @returns its hash */
export async function keepContent(folder: string, content: Buffer): Promise<string> {
  const hash = createHash('sha256').update(content).digest('hex');
  const file = contentFile(presentContents(folder), hash);
  if ((await hashOfFile(file)) === hash) return hash;
  const temporary = `${file}.part`;
  makeFolder(dirname(file));
  try {
    await writeFile(temporary, content, { mode: 0o600 });
    putInPlace(temporary, file);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
  return hash;
}

/** True when a content is there; whether it is still whole is seen when it is read. */
export const hasContent = (folder: string, hash: string): boolean =>
  existsSync(contentFile(presentContents(folder), hash));

/**
 * Reads a content and compares it with its hash.
 * @param name the attachment's, for the sentence
 * @throws Refusal (storage) when it is missing or no longer what it was
 */
export async function readContent(folder: string, hash: string, name: string): Promise<Buffer> {
  const content = await readFile(contentFile(presentContents(folder), hash)).catch(
    (error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return null;
      throw error;
    },
  );
  if (content === null) throw lost(name, 'is missing from the folder of records');
  if (createHash('sha256').update(content).digest('hex') !== hash) {
    throw lost(name, 'is damaged');
  }
  return content;
}

function lost(name: string, what: string): Refusal {
  return new Refusal({
    kind: 'storage',
    message: `The content of “${name}” ${what}. Everything else is as it was; a backup may still have it.`,
  });
}
