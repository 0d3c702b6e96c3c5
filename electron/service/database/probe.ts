import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** What SQLite needs beside the file, and a save or two. Ours (D). */
const ENOUGH_BYTES = 256 * 1024;

/** What the disk says when a folder is to take a file, which is removed at once; null when it does. */
export function whyNothingIsTaken(folder: string): unknown {
  const probe = join(folder, 'room.part');
  try {
    writeFileSync(probe, Buffer.alloc(ENOUGH_BYTES), { mode: 0o600 });
    return null;
  } catch (error) {
    return error;
  } finally {
    rmSync(probe, { force: true });
  }
}
