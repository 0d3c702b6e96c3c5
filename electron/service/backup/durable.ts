import { closeSync, fsyncSync, openSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';

// A name or content that has only reached the system's memory is lost in a power cut. These put
// both on the disk before anything relies on them.

/** Writes a file's content through to the disk. */
export function syncFile(file: string): void {
  const handle = openSync(file, 'r+');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Writes a folder's names through to the disk. */
export function syncFolder(folder: string): void {
  // Windows gives no handle on a folder to flush; its file system journals names by itself.
  if (process.platform === 'win32') return;
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Gives a finished temporary file its name: afterwards the whole file is there, or nothing new. */
export function putInPlace(temporary: string, target: string): void {
  syncFile(temporary);
  renameSync(temporary, target);
  syncFolder(dirname(target));
}
