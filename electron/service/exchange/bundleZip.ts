import { createHash } from 'node:crypto';
import type { Readable } from 'node:stream';
import { crc32 } from 'node:zlib';
import type { Entry, ZipFile } from 'yauzl';
import { Refusal } from '../../contract/errors.ts';
import { MEGABYTE } from '../../contract/files/purposes.ts';

// What an archive may come to. Our own decisions (mark D): far above a practice's own bundle, far
// below what fills a disk or the memory.
const ARCHIVE_LIMITS = {
  entries: 50_000,
  /** Everything in it, unpacked. */
  totalBytes: 2048 * MEGABYTE,
  /** How many times its packed size an entry may come to, where it is larger than `freeBytes`. */
  ratio: 200,
  freeBytes: 8 * MEGABYTE,
} as const;

/** What is left when the folders of an archive made by hand are taken off. */
const FOLDERS: ReadonlySet<string> = new Set(['files/', 'tables/']);

/** The refusal for a bundle that cannot be read as it is. */
export const unreadable = (what: string): Refusal =>
  new Refusal({
    kind: 'input',
    message: `${what} Nothing was imported.`,
    fields: [{ path: 'token', message: `${what} Nothing was imported.` }],
  });

const damaged = (): Refusal =>
  unreadable('The file is damaged, or is no zip archive. Copy it again, or export it again.');

/** An entry, named for a sentence; a name may be as long and strange as it likes. */
export const quoted = (name: string): string =>
  `“${name.length > 80 ? `${name.slice(0, 80)}…` : name}”`;

/**
 * Opens a zip archive and refuses, by name, what no bundle has: names that lead out of a folder,
 * names twice, secret or otherwise packed entries, and sizes that would fill disk or memory.
 * @returns an archive whose names and sizes have been looked at; its contents have not
 * @throws Refusal (input)
 */
export async function openArchive(file: string) {
  const { default: yauzl } = await import('yauzl');
  const zip = await yauzl
    .openPromise(file, { autoClose: false, lazyEntries: true, strictFileNames: true })
    .catch(() => Promise.reject(damaged()));
  try {
    const entries = await readEntries(zip);
    return {
      names: [...entries.keys()],
      bytesOf: (name: string): number => entries.get(name)!.uncompressedSize,
      /**
       * Reads an entry to its end, piece by piece, and checks it against the archive's own sum.
       * @returns its SHA-256, in hex
       * @throws Refusal (input) when it is damaged, or longer than the archive says
       */
      read: (name: string, each: (piece: Buffer) => void): Promise<string> =>
        readEntry(zip, entries.get(name)!, each),
      close: (): void => zip.close(),
    };
  } catch (error) {
    zip.close();
    throw error instanceof Refusal ? error : damaged();
  }
}
export type Archive = Awaited<ReturnType<typeof openArchive>>;

async function readEntries(zip: ZipFile): Promise<Map<string, Entry>> {
  const entries = new Map<string, Entry>();
  if (zip.entryCount > ARCHIVE_LIMITS.entries) throw tooMany();
  let total = 0;
  for await (const entry of named(zip)) {
    if (FOLDERS.has(entry.fileName)) continue;
    assertPlain(entry);
    if (entries.has(entry.fileName)) {
      throw unreadable(`The archive holds ${quoted(entry.fileName)} twice.`);
    }
    total += entry.uncompressedSize;
    if (total > ARCHIVE_LIMITS.totalBytes) throw tooLarge();
    entries.set(entry.fileName, entry);
    if (entries.size > ARCHIVE_LIMITS.entries) throw tooMany();
  }
  return entries;
}

/** The entries; the library refuses names that lead elsewhere, and its reason becomes ours. */
async function* named(zip: ZipFile): AsyncGenerator<Entry> {
  try {
    yield* zip.eachEntry();
  } catch (error) {
    if (error instanceof Refusal) throw error;
    const reason = error instanceof Error ? error.message : '';
    const [, name] =
      /^(?:absolute path|invalid relative path|invalid characters in fileName): (.*)$/s.exec(
        reason,
      ) ?? [];
    if (name === undefined) throw damaged();
    throw unreadable(
      `The archive holds ${quoted(name)}, a name that leads out of its folder. It is no bundle of Trotwell.`,
    );
  }
}

function assertPlain(entry: Entry): void {
  const { fileName: name, compressedSize, uncompressedSize, compressionMethod } = entry;
  if (entry.isEncrypted()) {
    throw unreadable(`${quoted(name)} in the archive is protected by a password. Unpack it first.`);
  }
  if (compressionMethod !== 0 && compressionMethod !== 8) {
    throw unreadable(`${quoted(name)} in the archive is packed in a way this program cannot read.`);
  }
  const swollen = uncompressedSize > ARCHIVE_LIMITS.ratio * Math.max(1, compressedSize);
  if (swollen && uncompressedSize > ARCHIVE_LIMITS.freeBytes) throw tooLarge();
}

const tooMany = (): Refusal =>
  unreadable(`The archive holds more than ${ARCHIVE_LIMITS.entries} files.`);
const tooLarge = (): Refusal =>
  unreadable(
    `Unpacked, the archive would be far larger than it is, or than ${ARCHIVE_LIMITS.totalBytes / MEGABYTE} MB.`,
  );

async function readEntry(
  zip: ZipFile,
  entry: Entry,
  each: (piece: Buffer) => void,
): Promise<string> {
  const hash = createHash('sha256');
  let sum = 0;
  let bytes = 0;
  try {
    const stream: Readable = await zip.openReadStreamPromise(entry);
    for await (const piece of stream as AsyncIterable<Buffer>) {
      bytes += piece.length;
      // What an entry says of its size is only what it says.
      if (bytes > entry.uncompressedSize) throw damaged();
      sum = crc32(piece, sum);
      hash.update(piece);
      each(piece);
    }
  } catch (error) {
    if (isOfDisk(error)) throw error;
    throw error instanceof Refusal ? error : damagedEntry(entry);
  }
  if (bytes !== entry.uncompressedSize || sum !== entry.crc32) throw damagedEntry(entry);
  return hash.digest('hex');
}

const damagedEntry = ({ fileName }: Entry): Refusal =>
  unreadable(`${quoted(fileName)} in the archive is damaged. Copy it again, or export it again.`);

/** An error of the disk is answered as such; those of unpacking carry codes of zlib. */
function isOfDisk(error: unknown): boolean {
  const code = error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;
  return code !== undefined && /^E[A-Z]+$/.test(code);
}
