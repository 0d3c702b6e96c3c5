import { createHash, createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import { Refusal } from '../../contract/errors.ts';
import { COST, stretch, type ScryptCost } from '../passphrase.ts';

// FORMAT.md describes every byte of this.

const MAGIC = Buffer.from('TROTWELL', 'ascii');
export const FORMAT_VERSION = 1;
export const HEADER_BYTES = 112;
const SALT_BYTES = 16;
const NONCE_BYTES = 7;
const AT = { version: 8, protection: 10, log2N: 11, r: 12, p: 13, chunk: 14, salt: 18, nonce: 34 };
/** The bytes between nonce and verifier are zero, for later formats. */
const VERIFIER_AT = 48;
const CHECKSUM_AT = 80;
/** Bytes of content in each chunk but the last. */
export const CHUNK_BYTES = 1024 * 1024;
/** The dearest scrypt a file may ask for: 1 GiB of memory. A forged header must not exhaust it. */
const DEAREST: ScryptCost = { log2N: 20, r: 8, p: 4 };

/** What of the header is needed to read or write the chunks. */
export interface Seal {
  /** Null for a file without a passphrase. */
  readonly key: Buffer | null;
  /** The first seven bytes of every chunk's nonce. */
  readonly nonce: Buffer;
  /** Of the header's bytes; bound to every chunk. */
  readonly headerHash: Buffer;
}

const sha256 = (bytes: Buffer): Buffer => createHash('sha256').update(bytes).digest();

export const damaged = (what: string): Refusal =>
  new Refusal({
    kind: 'storage',
    message: `This backup is damaged (${what}); nothing was changed. Use another one.`,
  });

/** The refusal for a passphrase that does not open the file; the file itself is whole. */
export function wrongPassphrase(): Refusal {
  const message = 'The passphrase does not open this backup. The file itself is not damaged.';
  return new Refusal({ kind: 'input', message, fields: [{ path: 'passphrase', message }] });
}

/** A new header and the seal that goes with it. */
export async function newHeader(
  passphrase: string | null,
  cost: ScryptCost = COST,
): Promise<{ readonly header: Buffer; readonly seal: Seal }> {
  const header = Buffer.alloc(HEADER_BYTES);
  MAGIC.copy(header);
  header.writeUInt16BE(FORMAT_VERSION, AT.version);
  header.writeUInt32BE(CHUNK_BYTES, AT.chunk);
  randomBytes(NONCE_BYTES).copy(header, AT.nonce);
  if (passphrase !== null) {
    header.writeUInt8(1, AT.protection);
    header.writeUInt8(cost.log2N, AT.log2N);
    header.writeUInt8(cost.r, AT.r);
    header.writeUInt8(cost.p, AT.p);
    randomBytes(SALT_BYTES).copy(header, AT.salt);
  }
  const keys = passphrase === null ? null : await keysOf(header, passphrase, cost);
  if (keys !== null) verifierOf(header, keys.verifying).copy(header, VERIFIER_AT);
  sha256(header.subarray(0, CHECKSUM_AT)).copy(header, CHECKSUM_AT);
  return { header, seal: sealOf(header, keys?.encrypting ?? null) };
}

/** True when the file's contents are encrypted. @throws Refusal when this is no header of ours. */
export function isEncrypted(header: Buffer): boolean {
  assertHeader(header);
  return header.readUInt8(AT.protection) === 1;
}

/**
 * The seal of an existing file.
 * @throws Refusal: no backup of ours, from a newer version, damaged, no or the wrong passphrase.
 */
export async function openHeader(header: Buffer, passphrase: string | null): Promise<Seal> {
  if (!isEncrypted(header)) return sealOf(header, null);
  if (passphrase === null) {
    const message = 'This backup is protected; give its passphrase.';
    throw new Refusal({ kind: 'input', message, fields: [{ path: 'passphrase', message }] });
  }
  const cost = {
    log2N: header.readUInt8(AT.log2N),
    r: header.readUInt8(AT.r),
    p: header.readUInt8(AT.p),
  };
  const acceptable =
    cost.log2N >= 1 &&
    cost.log2N <= DEAREST.log2N &&
    cost.r >= 1 &&
    cost.r <= DEAREST.r &&
    cost.p >= 1 &&
    cost.p <= DEAREST.p;
  if (!acceptable) throw damaged('its header asks for the impossible');
  const keys = await keysOf(header, passphrase, cost);
  const verifier = header.subarray(VERIFIER_AT, CHECKSUM_AT);
  if (!timingSafeEqual(verifier, verifierOf(header, keys.verifying))) throw wrongPassphrase();
  return sealOf(header, keys.encrypting);
}

function assertHeader(header: Buffer): void {
  if (header.length < HEADER_BYTES || !header.subarray(0, MAGIC.length).equals(MAGIC)) {
    const short = header.subarray(0, MAGIC.length).equals(MAGIC);
    throw short
      ? damaged('its beginning is cut off')
      : new Refusal({
          kind: 'input',
          message: 'This file is not a backup of Trotwell.',
        });
  }
  const version = header.readUInt16BE(AT.version);
  const checksum = sha256(header.subarray(0, CHECKSUM_AT));
  if (!checksum.equals(header.subarray(CHECKSUM_AT, HEADER_BYTES))) {
    throw damaged('its header does not match its checksum');
  }
  if (version !== FORMAT_VERSION || header.readUInt32BE(AT.chunk) !== CHUNK_BYTES) {
    throw new Refusal({
      kind: 'storage',
      message: `This backup was written by a newer Trotwell (format ${version}); install it to read the file.`,
    });
  }
}

async function keysOf(header: Buffer, passphrase: string, cost: ScryptCost) {
  const salt = Buffer.from(header.subarray(AT.salt, AT.salt + SALT_BYTES));
  const keys = await stretch(passphrase, salt, 64, cost);
  return { encrypting: keys.subarray(0, 32), verifying: keys.subarray(32) };
}

/** Proves the passphrase without touching the contents; covers every header byte before it. */
function verifierOf(header: Buffer, key: Buffer): Buffer {
  return createHmac('sha256', key).update(header.subarray(0, VERIFIER_AT)).digest();
}

function sealOf(header: Buffer, key: Buffer | null): Seal {
  return {
    key,
    nonce: Buffer.from(header.subarray(AT.nonce, AT.nonce + NONCE_BYTES)),
    headerHash: sha256(header),
  };
}
