import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { ReadableStream } from 'node:stream/web';
import { costRefusal, damaged, needsPassphrase, noBackup, wrongPassphrase } from './refusals.ts';

// The outside of a backup (FORMAT.md): a tar archive as it is, or in an age file.

/** The least the OWASP Password Storage Cheat Sheet recommends for scrypt; see `passphrase.ts`. */
const WORK_FACTOR = 17;
/** What is tried of a file from elsewhere: some seconds of a desk computer at the most (D). */
const WORK_FACTORS = { min: 10, max: 18 };
const PIECE_BYTES = 1024 * 1024;
const HEAD_BYTES = 1024;

/** Read when a passphrase is there: its ciphers are a tenth of what the program reads. */
const age = () => import('age-encryption');

export type Container = 'age' | 'tar' | 'format 1';

/** What a file is, told by its first bytes. @throws Refusal (input) when it is no backup of ours */
export async function containerOf(file: string): Promise<Container> {
  const head = await headOf(file);
  if (head.startsWith('TROTWELL')) return 'format 1';
  if (head.startsWith('age-encryption.org/')) return 'age';
  // The mark of a tar archive (POSIX.1-2017, pax, ustar interchange format).
  if (head.slice(257, 262) === 'ustar') return 'tar';
  throw noBackup();
}

/**
 * Puts bytes into an age file that a passphrase opens; without one they go through as they are.
 * @param workFactor log2 of scrypt's N
 */
export async function sealed(
  content: AsyncIterable<Uint8Array>,
  passphrase: string | null,
  workFactor = WORK_FACTOR,
): Promise<AsyncIterable<Uint8Array>> {
  if (passphrase === null) return content;
  const { Encrypter } = await age();
  const encrypter = new Encrypter();
  encrypter.setPassphrase(passphrase.normalize('NFC'));
  encrypter.setScryptWorkFactor(workFactor);
  return encrypter.encrypt(streamOf(content)) as Promise<AsyncIterable<Uint8Array>>;
}

/**
 * The archive inside a file, piece by piece.
 * @param progress told the bytes of the file read so far
 * @throws Refusal: not with a passphrase, without it, or with the wrong one
 */
export async function opened(
  file: string,
  container: 'age' | 'tar',
  passphrase: string | null,
  progress: (bytesRead: number) => Promise<void>,
): Promise<AsyncIterable<Uint8Array>> {
  const content = counted(file, progress);
  if (container === 'tar') return content;
  assertCost(await headOf(file));
  if (passphrase === null) throw needsPassphrase();
  const { Decrypter } = await age();
  const decrypter = new Decrypter();
  decrypter.addPassphrase(passphrase.normalize('NFC'));
  try {
    return (await decrypter.decrypt(streamOf(content))) as unknown as AsyncIterable<Uint8Array>;
  } catch (error) {
    throw asDamage(error);
  }
}

/** What the libraries throw at a file that is not as it was written; the disk's errors stay. */
export function asDamage(error: unknown): unknown {
  if (!(error instanceof Error) || error.name === 'Refusal') return error;
  if (/^E[A-Z]+$/.test((error as NodeJS.ErrnoException).code ?? '')) return error;
  if (error.message.startsWith('no identity matched')) return wrongPassphrase();
  return damaged('its bytes are not as they were written');
}

/** The library takes a browser's stream; Node's is the same under another name. */
const streamOf = (content: AsyncIterable<Uint8Array>): globalThis.ReadableStream<Uint8Array> =>
  ReadableStream.from(content) as unknown as globalThis.ReadableStream<Uint8Array>;

async function* counted(
  file: string,
  progress: (bytesRead: number) => Promise<void>,
): AsyncGenerator<Uint8Array> {
  let read = 0;
  for await (const piece of createReadStream(file, { highWaterMark: PIECE_BYTES })) {
    read += (piece as Buffer).length;
    await progress(read);
    yield piece as Buffer;
  }
}

/** @throws Refusal when the file is not opened by a passphrase, or asks for an odd cost */
function assertCost(head: string): void {
  const [, factor] = /^age-encryption\.org\/v1\n-> scrypt \S+ (\d{1,4})\n/.exec(head) ?? [];
  if (factor === undefined) {
    throw damaged('its first lines do not say that a passphrase opens it');
  }
  const { min, max } = WORK_FACTORS;
  if (Number(factor) < min || Number(factor) > max) throw costRefusal(Number(factor));
}

async function headOf(file: string): Promise<string> {
  const handle = await open(file, 'r');
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(HEAD_BYTES), 0, HEAD_BYTES, 0);
    return buffer.toString('latin1', 0, bytesRead);
  } finally {
    await handle.close();
  }
}
