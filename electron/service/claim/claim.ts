import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3, { type Database } from 'better-sqlite3';
import { leaveRequest, sweepRequests, watchRequests, type StartRequest } from './requests.ts';

/** How long a second start waits for the first to notice it, in milliseconds. Ours (D). */
const ANSWER_LIMIT_MS = 10_000;
const LOOK_EVERY_MS = 200;

export type Claimed =
  | { readonly kind: 'ours'; readonly claim: Claim }
  /** Another Trotwell works on the folder and has taken up the request. */
  | { readonly kind: 'answered' }
  /** Another Trotwell works on the folder and does not react. */
  | { readonly kind: 'silent' };

/**
 * Claims a folder of records for this process, or hands the request of this start to the process
 * that has it. The hold is a lock of the system on an empty file: it ends with the process, however
 * that ends. Where the folder cannot be written there is no hold; opening the records says why.
 */
export async function claimFolder(
  folder: string,
  request: StartRequest,
  answerLimitMs = ANSWER_LIMIT_MS,
): Promise<Claimed> {
  const running = join(folder, 'running');
  try {
    mkdirSync(running, { recursive: true, mode: 0o700 });
  } catch {
    return { kind: 'ours', claim: hold(running, null) };
  }
  const first = tryLock(running);
  if (first !== 'taken') return { kind: 'ours', claim: hold(running, first) };
  const left = leaveRequest(running, request);
  const late = performance.now() + answerLimitMs;
  try {
    while (performance.now() < late) {
      await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS));
      if (left.isTakenUp()) return { kind: 'answered' };
      // The first may have been closing.
      const lock = tryLock(running);
      if (lock !== 'taken') return { kind: 'ours', claim: hold(running, lock) };
    }
    return { kind: 'silent' };
  } finally {
    left.takeBack();
  }
}

/** @returns null where no lock is to be had at all */
function tryLock(running: string): Database | 'taken' | null {
  let db: Database | null = null;
  try {
    db = new BetterSqlite3(join(running, 'claim'), { timeout: 0 });
    // Nothing is ever written, so no journal need lie beside the file.
    db.pragma('journal_mode = MEMORY');
    db.exec('BEGIN EXCLUSIVE');
    return db;
  } catch (error) {
    db?.close();
    const code = error instanceof BetterSqlite3.SqliteError ? error.code : '';
    return code.startsWith('SQLITE_BUSY') ? 'taken' : null;
  }
}

/** A lock that nothing refers to would be closed by the garbage collector. */
const locks = new Set<Database>();

/** The hold on a folder of records, until it is let go or the process ends. */
function hold(running: string, lock: Database | null) {
  let stop = (): void => undefined;
  if (lock !== null) {
    locks.add(lock);
    sweepRequests(running);
  }
  return {
    /** Calls back for every later start on the same folder. */
    onLaterStart(answer: (request: StartRequest) => void): void {
      if (lock !== null) stop = watchRequests(running, answer);
    },
    // The file stays: were it removed, two later starts could each lock a file of their own.
    release(): void {
      stop();
      if (lock === null) return;
      locks.delete(lock);
      lock.close();
    },
  };
}
export type Claim = ReturnType<typeof hold>;
