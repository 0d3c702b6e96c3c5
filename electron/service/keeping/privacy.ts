import { accessSync, chmodSync, constants, lstatSync, readdirSync, type Stats } from 'node:fs';
import { join } from 'node:path';
import { placeWarning } from '../backup/place.ts';
import { troubled } from '../database/trouble.ts';

/** What of the folder of records is ours; a folder chosen by hand may hold other things too. */
const OURS =
  /^(trotwell|demonstration)\.sqlite(-wal|-shm)?$|^(backups|files|restore|transfer|running|set-aside-[\w-]+)$/;
const OTHERS = 0o077;
const STICKY = 0o1000;

/**
 * Takes the rights of every other user of the computer off a folder of records that was made
 * beforehand, and off what of ours lies in it.
 * @throws Refusal where others can read it, and it is not ours to change
 */
export function keepPrivate(folder: string): void {
  // Windows has lists of rights in place of these; a user's own folders are closed to others there.
  if (process.platform === 'win32') return;
  const found = lookAt(join(folder, '.'));
  if (found === null) return;
  // A folder all users share is none of ours to close; what is ours in it is closed.
  if ((found.mode & STICKY) === 0) tighten(folder, found);
  for (const name of namesIn(folder)) {
    if (OURS.test(name)) tightenAll(join(folder, name));
  }
}

/** A folder that was closed already keeps what is in it from others. */
function tightenAll(path: string): void {
  const found = lookAt(path);
  if (found === null || found.isSymbolicLink()) return;
  if (!tighten(path, found) || !found.isDirectory()) return;
  for (const name of namesIn(path)) tightenAll(join(path, name));
}

/** @returns true where something was open to others */
function tighten(path: string, { mode }: Stats): boolean {
  if ((mode & OTHERS) === 0) return false;
  try {
    chmodSync(path, mode & ~OTHERS & 0o777);
  } catch {
    refuseForeign(path);
  }
  return true;
}

/** What cannot be written can be read and printed; and some disks know no rights at all. */
function refuseForeign(path: string): void {
  try {
    accessSync(path, constants.W_OK);
  } catch {
    return;
  }
  if (placeWarning(path) !== null) return;
  throw troubled(
    'unreadable',
    'Other users of this computer can read the folder of records, and it belongs to another user, so that cannot be changed. Nothing was changed. Choose a folder of your own for the records.',
  );
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return []; // opening the records says why
  }
}

function lookAt(path: string): Stats | null {
  try {
    return lstatSync(path);
  } catch {
    return null; // not made yet, or not to be looked at: opening the records says so
  }
}
