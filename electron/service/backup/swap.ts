import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DATABASE_FILES } from '../desk.ts';
import { putInPlace, syncFolder } from './durable.ts';
import { UNPACKED } from './unpack.ts';

// New records are prepared in the folder `restore`, beside the present ones. The file `ready.json`
// in it is the point of no return: without it a start throws the folder away, with it a start moves
// the new records in. Every move can be done again after a kill at any moment.

const RESTORE = 'restore';
const READY = 'ready.json';

interface Ready {
  /** Folder, inside the folder of records, where the present ones are kept; null to let them go. */
  readonly setAside: string | null;
}

/** The folder new records are prepared in. */
export const restoreFolder = (folder: string): string => join(folder, RESTORE);

/** Throws away what an earlier restore left, and makes the folder new. */
export function beginRestore(folder: string): string {
  dropRestore(folder);
  mkdirSync(join(restoreFolder(folder), UNPACKED.contents), { recursive: true, mode: 0o700 });
  return restoreFolder(folder);
}

/** Throws away prepared records. The marker goes first: half a folder must never count as ready. */
export function dropRestore(folder: string): void {
  rmSync(join(restoreFolder(folder), READY), { force: true });
  rmSync(restoreFolder(folder), { recursive: true, force: true });
}

/** Says that the prepared records are whole and on the disk: from now on they are the records. */
export function commitRestore(folder: string, ready: Ready): void {
  const target = join(restoreFolder(folder), READY);
  writeFileSync(`${target}.part`, JSON.stringify(ready), { mode: 0o600 });
  putInPlace(`${target}.part`, target);
}

/**
 * Completes a restore that was committed, or throws away one that was not. Called at every start,
 * before any file of records is opened.
 * @returns true when new records were moved in
 */
export function settleRestore(folder: string): boolean {
  const ready = readReady(folder);
  if (ready === null) {
    if (existsSync(restoreFolder(folder))) dropRestore(folder);
    return false;
  }
  moveIn(folder, ready.setAside);
  dropRestore(folder);
  return true;
}

function readReady(folder: string): Ready | null {
  const marker = join(restoreFolder(folder), READY);
  if (!existsSync(marker)) return null;
  const { setAside } = JSON.parse(readFileSync(marker, 'utf8')) as { setAside?: unknown };
  // The name is ours; one that leads elsewhere would be a forged marker.
  const plain = typeof setAside === 'string' && /^set-aside-[\w-]+$/.test(setAside);
  return { setAside: plain ? setAside : null };
}

/**
 * The old parts move out before the new ones move in, log first, database last: a new database
 * beside an old log would be taken for one that was not closed.
 */
function moveIn(folder: string, setAside: string | null): void {
  const fresh = restoreFolder(folder);
  const old = setAside === null ? join(fresh, 'old') : join(folder, setAside);
  mkdirSync(old, { recursive: true, mode: 0o700 });
  const own = DATABASE_FILES.own;
  if (existsSync(join(fresh, UNPACKED.contents))) {
    moveOut(folder, old, UNPACKED.contents);
    renameSync(join(fresh, UNPACKED.contents), join(folder, UNPACKED.contents));
  }
  if (existsSync(join(fresh, UNPACKED.records))) {
    for (const name of [`${own}-wal`, `${own}-shm`, own]) moveOut(folder, old, name);
    renameSync(join(fresh, UNPACKED.records), join(folder, own));
  }
  syncFolder(old);
  syncFolder(folder);
}

function moveOut(folder: string, old: string, name: string): void {
  if (existsSync(join(folder, name))) renameSync(join(folder, name), join(old, name));
}
