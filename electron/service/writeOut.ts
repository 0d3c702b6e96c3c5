import { rmSync } from 'node:fs';
import { copyFile } from 'node:fs/promises';
import { putInPlace } from './backup/durable.ts';
import type { Given } from './transfer.ts';

/**
 * Writes a file the service made to where the practitioner chose: whole, or not at all. The file
 * stays ready for another try when the disk refuses.
 */
export async function writeOut(given: Given, path: string): Promise<void> {
  const temporary = `${path}.part`;
  try {
    await copyFile(given.file, temporary);
    putInPlace(temporary, path);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
  given.done();
}
