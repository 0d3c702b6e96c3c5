import { createCipheriv, createDecipheriv, createHash } from 'node:crypto';
import type { FileHandle } from 'node:fs/promises';
import { CHUNK_BYTES, HEADER_BYTES, damaged, type Seal } from './header.ts';

// The body of a backup: chunks of 1 MiB, each followed by a tag of 16 bytes. A chunk's place and
// whether it is the last are part of its nonce, so that none can be left out, doubled, swapped or
// cut off unseen (the STREAM construction).

const TAG_BYTES = 16;
const STORED_BYTES = CHUNK_BYTES + TAG_BYTES;
const CIPHER = 'aes-256-gcm';

/** Takes bytes in pieces of any size, and writes them as chunks behind the header. */
export interface ChunkWriter {
  write(bytes: Buffer): Promise<void>;
  /** Writes the last chunk. Without it the file counts as damaged. */
  end(): Promise<void>;
}

/** Writes at the handle's present place, which is behind the header. */
export function chunkWriter(file: FileHandle, seal: Seal): ChunkWriter {
  const chunk = Buffer.alloc(CHUNK_BYTES);
  let filled = 0;
  let index = 0;

  async function put(last: boolean): Promise<void> {
    const { body, tag } = close(seal, index, last, chunk.subarray(0, filled));
    await file.writev([body, tag]);
    index += 1;
    filled = 0;
  }

  return {
    async write(bytes) {
      let from = 0;
      while (from < bytes.length) {
        // A full chunk waits for the next byte: only then is it known not to be the last.
        if (filled === CHUNK_BYTES) await put(false);
        const taken = bytes.copy(chunk, filled, from);
        filled += taken;
        from += taken;
      }
    },
    end: () => put(true),
  };
}

/**
 * Reads the chunks of a file in order.
 * @param progress told the bytes of the file read so far
 * @throws Refusal at the first chunk that is not as it was written
 */
export async function* readChunks(
  file: FileHandle,
  seal: Seal,
  progress: (bytesRead: number) => Promise<void> = async () => undefined,
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
    yield open(seal, index, last, stored);
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

function close(seal: Seal, index: number, last: boolean, bytes: Buffer) {
  const nonce = nonceOf(seal, index, last);
  if (seal.key === null) return { body: bytes, tag: plainTag(seal, nonce, bytes) };
  const cipher = createCipheriv(CIPHER, seal.key, nonce, { authTagLength: TAG_BYTES });
  cipher.setAAD(seal.headerHash);
  const body = Buffer.concat([cipher.update(bytes), cipher.final()]);
  return { body, tag: cipher.getAuthTag() };
}

function open(seal: Seal, index: number, last: boolean, stored: Buffer): Buffer {
  const nonce = nonceOf(seal, index, last);
  const body = stored.subarray(0, -TAG_BYTES);
  const tag = stored.subarray(-TAG_BYTES);
  if (seal.key === null) {
    if (!plainTag(seal, nonce, body).equals(tag)) throw damaged(placeOf(index));
    return body;
  }
  const decipher = createDecipheriv(CIPHER, seal.key, nonce, { authTagLength: TAG_BYTES });
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
