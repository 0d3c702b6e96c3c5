import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { DATABASE_FILES } from '../database/open.ts';
import { makeFolder, putInPlace, syncFolder } from './durable.ts';
import { PACKED } from './manifest.ts';

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
const restoreFolder = (folder: string): string => join(folder, RESTORE);

/** Throws away what an earlier restore left, and makes the folder new. */
export function beginRestore(folder: string): string {
  dropRestore(folder);
  makeFolder(join(restoreFolder(folder), PACKED.contents));
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
 * @throws what the disk throws; the marker stays then, and no file of records may be opened
 */
export function settleRestore(folder: string): void {
  if (!completeRestore(folder) && existsSync(restoreFolder(folder))) dropRestore(folder);
}

/**
 * Moves in what was committed. Where that fails on the way, everything goes back to its place and
 * the restore is thrown away; the marker never outlives an answer that nothing was changed.
 * @returns false when nothing was committed
 * @throws what the disk threw at the move
 */
export function completeRestore(folder: string): boolean {
  const ready = readReady(folder);
  if (ready === null) return false;
  try {
    moveIn(folder, ready.setAside);
  } catch (error) {
    moveBack(folder, ready.setAside);
    dropRestore(folder);
    throw error;
  }
  try {
    dropRestore(folder);
  } catch {
    // The new records are in; the next start finds nothing left to move, and tidies up.
  }
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

const OWN = DATABASE_FILES.own;
/** What moves out and in again, in this order: log first, database last. */
const OWN_PARTS = [`${OWN}-wal`, `${OWN}-shm`, OWN];

const oldFolder = (folder: string, setAside: string | null): string =>
  setAside === null ? join(restoreFolder(folder), 'old') : join(folder, setAside);

/**
 * The old parts move out before the new ones move in: a new database beside an old log would be
 * taken for one that was not closed.
 */
function moveIn(folder: string, setAside: string | null): void {
  const fresh = restoreFolder(folder);
  const old = oldFolder(folder, setAside);
  makeFolder(old);
  if (existsSync(join(fresh, PACKED.contents))) {
    moveAcross(folder, old, PACKED.contents);
    moveAcross(fresh, folder, PACKED.contents);
  }
  if (existsSync(join(fresh, PACKED.records))) {
    for (const name of OWN_PARTS) moveAcross(folder, old, name);
    renameSync(join(fresh, PACKED.records), join(folder, OWN));
  }
  syncFolder(old);
  syncFolder(folder);
}

/** Takes back what `moveIn` had done, by what lies where; the last first. */
function moveBack(folder: string, setAside: string | null): void {
  const fresh = restoreFolder(folder);
  const old = oldFolder(folder, setAside);
  for (const [name, prepared] of [
    [OWN, PACKED.records],
    [PACKED.contents, PACKED.contents],
  ] as const) {
    const movedIn = !existsSync(join(fresh, prepared)) && existsSync(join(folder, name));
    if (movedIn) renameSync(join(folder, name), join(fresh, prepared));
  }
  for (const name of [...OWN_PARTS.toReversed(), PACKED.contents]) moveAcross(old, folder, name);
  if (setAside !== null) rmSync(old, { recursive: true, force: true });
  syncFolder(folder);
}

function moveAcross(from: string, to: string, name: string): void {
  if (existsSync(join(from, name))) renameSync(join(from, name), join(to, name));
}
