import { createDecipheriv, createHash, createHmac, timingSafeEqual } from 'node:crypto';
import { open, type FileHandle } from 'node:fs/promises';
import { COST, stretch } from '../lock/passphrase.ts';
import { keepPart, MOST_MANIFEST_BYTES, partsOf, readManifest, type Manifest } from './manifest.ts';
import { costRefusal, damaged, needsPassphrase, noBackup, wrongPassphrase } from './refusals.ts';

// The first format of backups, our own; read until the release after the first, written by none.
// A header of 112 bytes, then chunks of 1 MiB, each followed by a tag of 16 bytes: of AES-256-GCM
// with a passphrase, of SHA-256 without. A chunk's number and whether it is the last are part of its
// nonce (the STREAM construction). In the chunks: the length of the list, the list, the database,
// the contents of attachments.

const MAGIC = Buffer.from('TROTWELL', 'ascii');
const FORMAT_VERSION = 1;
const HEADER_BYTES = 112;
const AT = { version: 8, protection: 10, log2N: 11, r: 12, p: 13, chunk: 14, salt: 18, nonce: 34 };
const SALT_BYTES = 16;
const NONCE_BYTES = 7;
const VERIFIER_AT = 48;
const CHECKSUM_AT = 80;
const CHUNK_BYTES = 1024 * 1024;
const TAG_BYTES = 16;
const STORED_BYTES = CHUNK_BYTES + TAG_BYTES;

interface Seal {
  /** Null for a file without a passphrase. */
  readonly key: Buffer | null;
  /** The first seven bytes of every chunk's nonce. */
  readonly nonce: Buffer;
  /** Of the header's bytes; bound to every chunk. */
  readonly headerHash: Buffer;
}

const sha256 = (bytes: Buffer): Buffer => createHash('sha256').update(bytes).digest();

/** True when the file's contents are encrypted. @throws Refusal when its header is damaged. */
export async function isFormat1Encrypted(file: string): Promise<boolean> {
  const handle = await open(file, 'r');
  try {
    return isEncrypted(await readHeader(handle));
  } finally {
    await handle.close();
  }
}

/** As `unpack`, for a file of the first format. */
export async function unpackFormat1(
  file: string,
  passphrase: string | null,
  into: string | null,
  progress: (bytesRead: number) => Promise<void>,
): Promise<Manifest> {
  const handle = await open(file, 'r');
  try {
    const seal = await openHeader(await readHeader(handle), passphrase);
    return await readBody(pieces(readChunks(handle, seal, progress)), into);
  } finally {
    await handle.close();
  }
}

async function readHeader(handle: FileHandle): Promise<Buffer> {
  const header = Buffer.alloc(HEADER_BYTES);
  const { bytesRead } = await handle.read(header, 0, HEADER_BYTES, 0);
  return header.subarray(0, bytesRead);
}

async function readBody(body: Pieces, into: string | null): Promise<Manifest> {
  const length = (await body.exactly(4)).readUInt32BE();
  if (length > MOST_MANIFEST_BYTES) throw damaged('its list of contents is too long');
  const manifest = readManifest((await body.exactly(length)).toString('utf8'));
  for (const part of partsOf(manifest)) await keepPart(body.upTo(part.bytes), part, into);
  if (!(await body.atEnd())) throw damaged('there is more in it than it lists');
  return manifest;
}

function isEncrypted(header: Buffer): boolean {
  assertHeader(header);
  return header.readUInt8(AT.protection) === 1;
}

async function openHeader(header: Buffer, passphrase: string | null): Promise<Seal> {
  if (!isEncrypted(header)) return sealOf(header, null);
  if (passphrase === null) throw needsPassphrase();
  // No release wrote another cost, and a forged one must not take a desk's memory or minutes.
  const log2N = header.readUInt8(AT.log2N);
  const { r, p } = COST;
  if (log2N !== COST.log2N) throw costRefusal(log2N);
  if (header.readUInt8(AT.r) !== r || header.readUInt8(AT.p) !== p) {
    throw damaged('its header asks for the impossible');
  }
  const salt = Buffer.from(header.subarray(AT.salt, AT.salt + SALT_BYTES));
  const keys = await stretch(passphrase, salt, 64);
  const proof = createHmac('sha256', keys.subarray(32))
    .update(header.subarray(0, VERIFIER_AT))
    .digest();
  if (!timingSafeEqual(header.subarray(VERIFIER_AT, CHECKSUM_AT), proof)) throw wrongPassphrase();
  return sealOf(header, keys.subarray(0, 32));
}

function assertHeader(header: Buffer): void {
  if (!header.subarray(0, MAGIC.length).equals(MAGIC)) throw noBackup();
  if (header.length < HEADER_BYTES) throw damaged('its beginning is cut off');
  const checksum = sha256(header.subarray(0, CHECKSUM_AT));
  if (!checksum.equals(header.subarray(CHECKSUM_AT))) {
    throw damaged('its header does not match its checksum');
  }
  const version = header.readUInt16BE(AT.version);
  if (version !== FORMAT_VERSION || header.readUInt32BE(AT.chunk) !== CHUNK_BYTES) {
    throw damaged(`its header names format ${version}, which no release wrote`);
  }
}

function sealOf(header: Buffer, key: Buffer | null): Seal {
  return {
    key,
    nonce: Buffer.from(header.subarray(AT.nonce, AT.nonce + NONCE_BYTES)),
    headerHash: sha256(header),
  };
}

/**
 * Reads the chunks of a file in order.
 * @param progress told the bytes of the file read so far
 * @throws Refusal at the first chunk that is not as it was written
 */
async function* readChunks(
  file: FileHandle,
  seal: Seal,
  progress: (bytesRead: number) => Promise<void>,
): AsyncGenerator<Buffer> {
  const { size } = await file.stat();
  let at = HEADER_BYTES;
  for (let index = 0; ; index++) {
    const left = size - at;
    const last = left <= STORED_BYTES;
    if (left < TAG_BYTES) throw damaged('its end is missing');
    const stored = Buffer.alloc(Math.min(left, STORED_BYTES));
    const { bytesRead } = await file.read(stored, 0, stored.length, at);
    if (bytesRead < stored.length) throw damaged('its end is missing');
    yield openChunk(seal, index, last, stored);
    at += stored.length;
    await progress(at);
    if (last) return;
  }
}

function nonceOf(seal: Seal, index: number, last: boolean): Buffer {
  const nonce = Buffer.alloc(12);
  seal.nonce.copy(nonce);
  nonce.writeUInt32BE(index, 7);
  nonce.writeUInt8(last ? 1 : 0, 11);
  return nonce;
}

function openChunk(seal: Seal, index: number, last: boolean, stored: Buffer): Buffer {
  const nonce = nonceOf(seal, index, last);
  const body = stored.subarray(0, -TAG_BYTES);
  const tag = stored.subarray(-TAG_BYTES);
  if (seal.key === null) {
    if (!plainTag(seal, nonce, body).equals(tag)) throw damaged(placeOf(index));
    return body;
  }
  const decipher = createDecipheriv('aes-256-gcm', seal.key, nonce, { authTagLength: TAG_BYTES });
  decipher.setAAD(seal.headerHash);
  decipher.setAuthTag(tag);
  try {
    return Buffer.concat([decipher.update(body), decipher.final()]);
  } catch {
    throw damaged(placeOf(index));
  }
}

/** Finds damage in a file without a passphrase; unlike the other tag it proves no origin. */
function plainTag(seal: Seal, nonce: Buffer, bytes: Buffer): Buffer {
  const hash = createHash('sha256').update(seal.headerHash).update(nonce).update(bytes);
  return hash.digest().subarray(0, TAG_BYTES);
}

const placeOf = (index: number): string => `in its ${index + 1}. mebibyte`;

type Pieces = ReturnType<typeof pieces>;

/** Lets a stream of chunks be taken in pieces of any size. */
function pieces(chunks: AsyncGenerator<Buffer>) {
  let rest: Buffer = Buffer.alloc(0);

  async function refill(): Promise<boolean> {
    while (rest.length === 0) {
      const next = await chunks.next();
      if (next.done === true) return false;
      rest = next.value;
    }
    return true;
  }

  async function* upTo(bytes: number): AsyncGenerator<Buffer> {
    let wanted = bytes;
    while (wanted > 0) {
      if (!(await refill())) throw damaged('its end is missing');
      const piece = rest.subarray(0, wanted);
      rest = rest.subarray(piece.length);
      wanted -= piece.length;
      yield piece;
    }
  }

  return {
    upTo,
    async exactly(bytes: number): Promise<Buffer> {
      const parts: Buffer[] = [];
      for await (const piece of upTo(bytes)) parts.push(piece);
      return Buffer.concat(parts);
    },
    atEnd: async (): Promise<boolean> => !(await refill()),
  };
}
