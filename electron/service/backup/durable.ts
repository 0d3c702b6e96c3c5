import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';

// A name or content that has only reached the system's memory is lost in a power cut. These put
// both on the disk before anything relies on them.

function flush(path: string, how: 'r' | 'r+'): void {
  const handle = openSync(path, how);
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Writes a file's content through to the disk. */
export const syncFile = (file: string): void => flush(file, 'r+');

/** Writes a folder's names through to the disk. */
export function syncFolder(folder: string): void {
  // Windows gives no handle on a folder to flush; its file system journals names by itself.
  if (process.platform !== 'win32') flush(folder, 'r');
}

/** Makes a folder for the user alone, and those above it where needed; their names are on the disk. */
export function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder));
  try {
    // One by one: Node's own way to make several says "not found" of a disk that is read-only.
    mkdirSync(folder, { mode: 0o700 });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
  syncFolder(dirname(folder));
}

/** Gives a finished temporary file its name: afterwards the whole file is there, or nothing new. */
export function putInPlace(temporary: string, target: string): void {
  syncFile(temporary);
  renameSync(temporary, target);
  syncFolder(dirname(target));
}
