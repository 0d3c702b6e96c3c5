import { scrypt } from 'node:crypto';

/** How costly a guess is. Memory taken: 128 · N · r bytes, here 128 MiB. */
export interface ScryptCost {
  /** log2 of N, the cost in processor time and memory. */
  readonly log2N: number;
  /** Block size. */
  readonly r: number;
  /** Parallel lanes. */
  readonly p: number;
}

/**
 * N = 2^17, r = 8, p = 1: the least that the OWASP Password Storage Cheat Sheet recommends for
 * scrypt (RFC 7914). Mark S, read as quoted in the scrypt library that adopted it.
 */
export const COST: ScryptCost = { log2N: 17, r: 8, p: 1 };

/**
 * The bytes of a passphrase. Composed (NFC), because two keyboards may spell the same é as one
 * character or as two, and only one of them made the file.
 */
export function passphraseBytes(passphrase: string): Buffer {
  return Buffer.from(passphrase.normalize('NFC'), 'utf8');
}

/** Stretches a passphrase into `length` bytes of key; takes some tenths of a second. */
export function stretch(
  passphrase: string,
  salt: Buffer,
  length: number,
  { log2N, r, p }: ScryptCost = COST,
): Promise<Buffer> {
  const N = 2 ** log2N;
  // Node refuses when what it needs is more than the limit; its need is a little above 128 · N · r.
  const maxmem = 256 * N * r;
  return new Promise((resolve, reject) => {
    scrypt(passphraseBytes(passphrase), salt, length, { N, r, p, maxmem }, (error, key) => {
      if (error === null) resolve(key);
      else reject(error);
    });
  });
}
