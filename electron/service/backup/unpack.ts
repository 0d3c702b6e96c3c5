import { createHash } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { open, type FileHandle } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { readChunks } from './chunks.ts';
import { contentFile } from './contents.ts';
import { syncFolder } from './durable.ts';
import { HEADER_BYTES, damaged, isEncrypted, openHeader } from './header.ts';
import { MOST_MANIFEST_BYTES, readManifest, type Manifest } from './manifest.ts';
import type { Progress } from './pack.ts';

/** The names inside the folder a backup is unpacked into. */
export const UNPACKED = { records: 'trotwell.sqlite', contents: 'files' } as const;

/** True when a backup file asks for a passphrase. @throws Refusal when it is no backup of ours. */
export async function asksForPassphrase(file: string): Promise<boolean> {
  const handle = await open(file, 'r');
  try {
    return isEncrypted(await readHeader(handle));
  } finally {
    await handle.close();
  }
}

/**
 * Reads a whole backup file and checks every byte of it; with a folder, also unpacks it there.
 * Names in the file are hashes and never become paths by themselves.
 * @throws Refusal: no backup, from a newer version, damaged, no or the wrong passphrase.
 */
export async function unpack(
  file: string,
  passphrase: string | null,
  into: string | null,
  progress: Progress,
): Promise<Manifest> {
  const handle = await open(file, 'r');
  try {
    const seal = await openHeader(await readHeader(handle), passphrase);
    const { size } = await handle.stat();
    const step = into === null ? 'Checking the backup' : 'Unpacking the backup';
    const chunks = readChunks(handle, seal, (done) => progress({ done, total: size, step }));
    return await readBody(pieces(chunks), into);
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
  const { records, contents } = manifest;
  await copyOut(body, records, into === null ? null : join(into, UNPACKED.records));
  for (const content of contents) {
    const store = into === null ? null : join(into, UNPACKED.contents);
    await copyOut(body, content, store === null ? null : contentFile(store, content.hash));
  }
  if (!(await body.atEnd())) throw damaged('there is more in it than it lists');
  return manifest;
}

/** Copies one part out (to nowhere without a target) and checks it against its hash. */
async function copyOut(
  body: Pieces,
  part: { readonly bytes: number; readonly hash: string },
  target: string | null,
): Promise<void> {
  if (target !== null) mkdirSync(dirname(target), { recursive: true, mode: 0o700 });
  const out = target === null ? null : await open(target, 'w', 0o600);
  try {
    const hash = createHash('sha256');
    for await (const piece of body.upTo(part.bytes)) {
      hash.update(piece);
      await out?.write(piece);
    }
    if (hash.digest('hex') !== part.hash) throw damaged('a part of it is not what it was');
    await out?.sync();
  } finally {
    await out?.close();
  }
  if (target !== null) syncFolder(dirname(target));
}

interface Pieces {
  exactly(bytes: number): Promise<Buffer>;
  upTo(bytes: number): AsyncGenerator<Buffer>;
  atEnd(): Promise<boolean>;
}

/** Lets a stream of chunks be taken in pieces of any size. */
function pieces(chunks: AsyncGenerator<Buffer>): Pieces {
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
    async exactly(bytes) {
      const parts: Buffer[] = [];
      for await (const piece of upTo(bytes)) parts.push(piece);
      return Buffer.concat(parts);
    },
    atEnd: async () => !(await refill()),
  };
}
