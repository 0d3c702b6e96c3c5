import { randomBytes } from 'node:crypto';
import { createWriteStream, readdirSync, rmSync } from 'node:fs';
import { chmod, open, rename, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { Transform, type Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { plainFileName } from '../../contract/files/name.ts';
import { tooLargeSentence, type TakenFile } from '../../contract/files/purposes.ts';
import { Refusal } from '../../contract/errors.ts';
import { makeFolder } from '../backup/durable.ts';
import { badField } from '../refuse.ts';
import { assertRoom, freeBytesOf, type FreeBytes } from './room.ts';

/** Files waiting at once; one more sends the oldest away. Ours (D): a visit takes at most 30. */
const MOST_WAITING = 64;

/** Larger pieces than Node's own: a backup may have many gigabytes. */
const PIECE_BYTES = 1024 * 1024;

/** A file that was taken in from the practitioner and waits for the call that uses it. */
export interface Taken extends TakenFile {
  /** Where it lies until it is dropped. */
  readonly file: string;
}

/** A file the service made, ready to be handed to the practitioner. */
export interface Given {
  readonly file: string;
  readonly name: string;
  readonly mediaType: string;
  readonly bytes: number;
  /** Removes it; to be called once it has arrived. */
  done(): void;
}

type Waiting =
  { readonly kind: 'in'; readonly taken: Taken } | { readonly kind: 'out'; given: Given };

/** What waits, by token. */
function waitingList() {
  const waiting = new Map<string, Waiting>();

  /** Forgets a token and removes its file; an unknown one is no matter. */
  function drop(token: string): void {
    const found = waiting.get(token);
    if (found === undefined) return;
    waiting.delete(token);
    rmSync(found.kind === 'in' ? found.taken.file : found.given.file, { force: true });
  }

  return {
    drop,
    clear: () => waiting.clear(),
    /** Forgets every token and removes its file. */
    forgetAll: (): void => [...waiting.keys()].forEach(drop),
    keep(token: string, entry: Waiting): void {
      waiting.set(token, entry);
      const oldest = waiting.keys().next().value;
      if (waiting.size > MOST_WAITING && oldest !== undefined) drop(oldest);
    },
    /** The file behind a token. @throws Refusal (not-found) for a token unknown, used or too old */
    open(token: string): Taken {
      const found = waiting.get(token);
      if (found?.kind !== 'in') throw gone();
      return found.taken;
    },
    /** A file the service made, for a host. @throws Refusal (not-found), as `open` */
    giveOut(token: string): Given {
      const found = waiting.get(token);
      if (found?.kind !== 'out') throw gone();
      return found.given;
    },
  };
}

/**
 * The one place where files pass between page and service. A page never names a path: it holds
 * random tokens. What lies here is removed after use, on closing, and on the next start.
 * @param folder the folder of records
 */
export function createTransfer(folder: string, freeBytes: FreeBytes = freeBytesOf) {
  const transfers = join(folder, 'transfer');
  // Named by its process, so that a start sweeps away what a killed one left, and nothing else.
  const own = join(transfers, `${process.pid}-${newToken()}`);
  const { keep, clear, ...waiting } = waitingList();
  sweep(transfers);

  /** A path inside the folder of transfers for a file the service is about to make. */
  function room(): string {
    makeFolder(own);
    return join(own, newToken());
  }

  return {
    ...waiting,
    room,
    /**
     * Copies a stream, or the file at a path the practitioner chose, into the folder of transfers,
     * piece by piece.
     * @param saidBytes how long a stream is said to be, where that is known
     * @throws Refusal: (input) for an empty file or one of more than `maxBytes`, (storage) for one
     *   that the disk has no room for; the disk's own errors
     */
    async takeIn(
      name: string,
      from: Readable | string,
      maxBytes: number,
      saidBytes = 0,
    ): Promise<Taken> {
      const expected = typeof from === 'string' ? await bytesOf(from) : saidBytes;
      if (expected > maxBytes) throw badField('file', tooLargeSentence(maxBytes));
      assertRoom(folder, expected, freeBytes);
      const file = room();
      try {
        const bytes = await copyIn(from, file, maxBytes);
        const token = newToken();
        const taken = { token, file, bytes, name: plainFileName(name, 'file') };
        keep(token, { kind: 'in', taken });
        return taken;
      } catch (error) {
        rmSync(file, { force: true });
        throw error;
      }
    },
    /** Runs `use` on the file behind a token. Afterwards, whatever came of it, the file is gone. */
    async use<T>(token: string, use: (taken: Taken) => Promise<T>): Promise<T> {
      const taken = waiting.open(token);
      try {
        return await use(taken);
      } finally {
        waiting.drop(token);
      }
    },
    /** Takes over a finished file, wherever on the same disk it lies. @returns its token */
    async produced(made: string, name: string, mediaType: string): Promise<string> {
      const file = room();
      await rename(made, file);
      await chmod(file, 0o600);
      const token = newToken();
      const { size: bytes } = await stat(file);
      const plain = plainFileName(name, 'file');
      const given = { file, bytes, mediaType, name: plain, done: () => waiting.drop(token) };
      keep(token, { kind: 'out', given });
      return token;
    },
    /** Removes everything. */
    close(): void {
      clear();
      removeAll(own);
      removeIfEmpty(transfers);
    },
  };
}
export type Transfer = ReturnType<typeof createTransfer>;

const newToken = (): string => randomBytes(24).toString('base64url');

function gone(): Refusal {
  return new Refusal({
    kind: 'not-found',
    message: 'The file was not kept, or was used before. Choose or make it again.',
  });
}

/** Copies until the end or the limit. @returns the bytes that came */
async function copyIn(from: Readable | string, file: string, maxBytes: number): Promise<number> {
  let bytes = 0;
  const counted = new Transform({
    transform(piece: Buffer, _encoding, done) {
      bytes += piece.length;
      if (bytes <= maxBytes) done(null, piece);
      else done(badField('file', tooLargeSentence(maxBytes)));
    },
  });
  const source = typeof from === 'string' ? await opened(from) : from;
  await pipeline(source, counted, createWriteStream(file, { flags: 'wx', mode: 0o600 }));
  if (bytes === 0) throw badField('file', 'The file is empty.');
  return bytes;
}

/** The size of a file; 0 where it cannot be looked at, which opening it says better. */
const bytesOf = (path: string): Promise<number> =>
  stat(path).then(
    ({ size }) => size,
    () => 0,
  );

/** @throws Refusal (input) for a file that is gone, a folder, or what may not be read */
async function opened(path: string): Promise<Readable> {
  try {
    const handle = await open(path);
    if ((await handle.stat()).isFile())
      return handle.createReadStream({ highWaterMark: PIECE_BYTES });
    await handle.close();
  } catch {
    // Moved since it was chosen, or not to be read by this user; the sentence covers both.
  }
  throw badField('file', 'The file cannot be read. Choose it again.');
}

/** Removes what processes that no longer run have left. A folder that cannot be read waits. */
function sweep(transfers: string): void {
  try {
    for (const name of readdirSync(transfers)) {
      const pid = /^(\d+)-/.exec(name)?.[1];
      if (pid !== undefined && runs(Number(pid))) continue;
      rmSync(join(transfers, name), { recursive: true, force: true });
    }
    removeIfEmpty(transfers);
  } catch {
    // None there yet, or a folder that cannot be written: opening the records says so.
  }
}

function runs(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // A process of another user may not be asked, but is there.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

function removeAll(folder: string): void {
  try {
    rmSync(folder, { recursive: true, force: true });
  } catch {
    // A folder that may not be looked into any more; the next start that can sweeps it away.
  }
}

function removeIfEmpty(folder: string): void {
  try {
    if (readdirSync(folder).length === 0) rmSync(folder, { recursive: true });
  } catch {
    // Another window's files are still in it, or it is gone already.
  }
}
