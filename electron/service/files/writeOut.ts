import { randomUUID } from 'node:crypto';
import { constants, rmSync } from 'node:fs';
import { copyFile } from 'node:fs/promises';
import { Refusal } from '../../contract/errors.ts';
import { putInPlace } from '../backup/durable.ts';
import type { Given } from './transfer.ts';

const NO_ROOM = 'The disk there has no room for the file. Choose another place.';
const NO_ENTRY = 'Nothing can be written there. Choose another folder.';
const SENTENCES: Readonly<Record<string, string>> = {
  ENOSPC: NO_ROOM,
  EDQUOT: NO_ROOM,
  EFBIG:
    'The disk there takes no file of this size; many memory sticks end at 4 GB. Choose another place.',
  EACCES: NO_ENTRY,
  EPERM: NO_ENTRY,
  EROFS: NO_ENTRY,
};

/**
 * Writes a file the service made to where the practitioner chose: whole, or not at all. The file
 * stays ready for another try when the disk refuses.
 */
export async function writeOut(given: Given, path: string): Promise<void> {
  // A name of its own: what else lies in that folder is not ours to write over.
  const temporary = `${path}.${randomUUID()}.part`;
  try {
    await copyFile(given.file, temporary, constants.COPYFILE_EXCL);
    putInPlace(temporary, path);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw ofPlace(error);
  }
  given.done();
}

/** What the chosen place refuses is no matter of the disk the records lie on. */
function ofPlace(error: unknown): unknown {
  const sentence = SENTENCES[(error as NodeJS.ErrnoException).code ?? ''];
  return sentence === undefined ? error : new Refusal({ kind: 'storage', message: sentence });
}
