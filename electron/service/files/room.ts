import { existsSync, statfsSync } from 'node:fs';
import { dirname } from 'node:path';
import { sizeWords } from '../../contract/files/purposes.ts';
import { troubled } from '../database/trouble.ts';

/** What must stay free beside a large file, so that records can still be saved. Ours (D). */
const RESERVE_BYTES = 64 * 1024 * 1024;

/** How many bytes a folder's disk has room for; null where the system does not say. */
export type FreeBytes = (folder: string) => number | null;

/** As the system says. A folder that is still to be made is asked for where it will lie. */
export const freeBytesOf: FreeBytes = (folder) => {
  if (!existsSync(folder) && dirname(folder) !== folder) return freeBytesOf(dirname(folder));
  try {
    const { bavail, bsize } = statfsSync(folder);
    return bavail * bsize;
  } catch {
    return null;
  }
};

/**
 * Says before a byte is written that a file will not fit, rather than after minutes of copying.
 * @param bytes what is to be written
 * @throws Refusal (storage, disk full) with what is needed and what is there
 */
export function assertRoom(folder: string, bytes: number, freeBytes: FreeBytes): void {
  const free = freeBytes(folder);
  const needed = bytes + Math.min(bytes, RESERVE_BYTES);
  if (free === null || needed <= free) return;
  throw troubled(
    'disk full',
    `There is not enough room where the records lie: ${sizeWords(needed)} are needed and ${sizeWords(free)} are free. Make room and try again.`,
  );
}
