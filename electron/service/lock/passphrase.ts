import { scrypt, type ScryptOptions } from 'node:crypto';
import { promisify } from 'node:util';

/**
 * How costly a guess is. N = 2^17, r = 8, p = 1: the least that the OWASP Password Storage Cheat
 * Sheet recommends for scrypt (RFC 7914). Mark S, read as quoted in the scrypt library that adopted
 * it. Memory taken: 128 · N · r bytes, here 128 MiB.
 */
export const COST = {
  /** log2 of N, the cost in processor time and memory. */
  log2N: 17,
  /** Block size. */
  r: 8,
  /** Parallel lanes. */
  p: 1,
};

const derive = promisify<Buffer, Buffer, number, ScryptOptions, Buffer>(scrypt);

/**
 * Stretches a passphrase into `length` bytes of key; takes some tenths of a second. Composed (NFC)
 * first, because two keyboards may spell the same é as one character or as two, and only one of
 * them made the file.
 */
export function stretch(
  passphrase: string,
  salt: Buffer,
  length: number,
  { log2N, r, p } = COST,
): Promise<Buffer> {
  const N = 2 ** log2N;
  // Node refuses when what it needs is more than the limit; its need is a little above 128 · N · r.
  const maxmem = 256 * N * r;
  const bytes = Buffer.from(passphrase.normalize('NFC'), 'utf8');
  return derive(bytes, salt, length, { N, r, p, maxmem });
}
