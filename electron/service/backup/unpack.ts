import { createHash } from 'node:crypto';
import { statSync } from 'node:fs';
import { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { extract, type Entry } from 'tar-stream';
import { asDamage, containerOf, opened } from './container.ts';
import { isFormat1Encrypted, unpackFormat1 } from './format1.ts';
import {
  keepPart,
  MOST_MANIFEST_BYTES,
  PACKED,
  partsOf,
  readManifest,
  type Manifest,
} from './manifest.ts';
import type { Progress } from './pack.ts';
import { damaged } from './refusals.ts';

/** True when a backup file asks for a passphrase. @throws Refusal when it is no backup of ours. */
export async function asksForPassphrase(file: string): Promise<boolean> {
  const container = await containerOf(file);
  return container === 'format 1' ? isFormat1Encrypted(file) : container === 'age';
}

/**
 * Reads a whole backup file and checks every part of it; with a folder, also unpacks it there.
 * Names in the file are compared with the list and never become paths by themselves.
 * @throws Refusal: no backup, from a newer version, damaged, no or the wrong passphrase.
 */
export async function unpack(
  file: string,
  passphrase: string | null,
  into: string | null,
  progress: Progress,
): Promise<Manifest> {
  const step = into === null ? 'Checking the backup' : 'Unpacking the backup';
  const total = statSync(file).size;
  const container = await containerOf(file);
  const told = (done: number): Promise<void> => progress({ done, total, step });
  if (container === 'format 1') return unpackFormat1(file, passphrase, into, told);
  try {
    return await readArchive(await opened(file, container, passphrase, told), into);
  } catch (error) {
    throw asDamage(error);
  }
}

async function readArchive(
  content: AsyncIterable<Uint8Array>,
  into: string | null,
): Promise<Manifest> {
  const tar = extract();
  const source = Readable.from(content);
  source.on('error', (error) => tar.destroy(error));
  source.pipe(tar);
  try {
    const entries = tar[Symbol.asyncIterator]();
    const next = async (): Promise<Entry | null> => {
      const { done, value } = await entries.next();
      return done === true ? null : (value as Entry);
    };
    const manifest = await readList(next);
    await readParts(next, manifest, into);
    return manifest;
  } finally {
    source.destroy();
    tar.destroy();
  }
}

type Next = () => Promise<Entry | null>;

/** The list stands first, and its sum behind it: nothing after it is believed without it. */
async function readList(next: Next): Promise<Manifest> {
  const json = await textOf(await next(), PACKED.manifest);
  const sum = createHash('sha256').update(json).digest('hex');
  if (!(await textOf(await next(), PACKED.sum)).toString().startsWith(`${sum} `)) {
    throw damaged('its list of contents is not what it was');
  }
  await textOf(await next(), PACKED.readme);
  return readManifest(json.toString('utf8'));
}

async function textOf(entry: Entry | null, name: string): Promise<Buffer> {
  if (entry?.header.name !== name) throw damaged('its list of contents is missing');
  if ((entry.header.size ?? 0) > MOST_MANIFEST_BYTES) {
    throw damaged('its list of contents is too long');
  }
  return buffer(entry);
}

async function readParts(next: Next, manifest: Manifest, into: string | null): Promise<void> {
  for (const part of partsOf(manifest)) {
    const entry = await next();
    if (entry === null) throw damaged('its end is missing');
    const { header } = entry;
    if (header.name !== part.name || header.type !== 'file' || header.size !== part.bytes) {
      throw damaged('it holds something else than it lists');
    }
    await keepPart(entry, part, into);
  }
  if ((await next()) !== null) throw damaged('there is more in it than it lists');
}
