import { createHash } from 'node:crypto';
import { z } from 'zod';
import {
  BUNDLE_FORMAT,
  BUNDLE_KINDS,
  BUNDLE_VERSION,
  bundleManifest,
  bundleRecords,
  type BundleKind,
  type BundleManifest,
  type BundleRecords,
} from '../../contract/exchange/bundle.ts';
import { Refusal } from '../../contract/errors.ts';
import { ATTACHMENT_TYPES } from '../../contract/files/attachment.ts';
import { FILE_PURPOSES, MEGABYTE } from '../../contract/files/purposes.ts';
import { contentToKeep, typeOf } from '../files/content.ts';
import { isBeyond } from '../jsonLimits.ts';
import type { Work } from '../work.ts';
import { cleanBefore, completed } from './bundleEarlier.ts';
import { cleanedOf, namingCleaned, type Cleaned, type CleanedContents } from './bundleClean.ts';
import { KINDS } from './bundleKinds.ts';
import { openArchive, quoted, unreadable, type Archive } from './bundleZip.ts';

/**
 * What is read into memory at once may come to so much. Our own decisions (D). Records of ours take
 * some 25 bytes a part; a list dense in empty ones would take a hundred times the memory of its text.
 */
const MOST_PARTS = { 'manifest.json': 1_000_000, 'records.json': 16_000_000 } as const;
const MOST_BYTES = { 'manifest.json': 16 * MEGABYTE, 'records.json': 256 * MEGABYTE } as const;
/** No record goes deeper (D). */
const DEEPEST = 64;
/** Records checked between two looks at whether the work is to stop. */
const RECORDS_AT_ONCE = 500;
/** Refused fields that are told. */
const FIELDS_SHOWN = 20;

/** A bundle that was read; every record in it is one the program could have kept. */
export interface BundleIn {
  readonly manifest: BundleManifest;
  readonly records: BundleRecords;
  /** The hashes of the attached files in it, as they are kept. */
  readonly contents: ReadonlySet<string>;
  readonly cleaned: CleanedContents;
  /** Stands for the records and the list of files. */
  readonly digest: string;
}

/**
 * Reads an archive as a bundle. With `whole`, every byte of the attached files is checked as well;
 * without, letters are checked as they are taken out, and pictures looked at for what is to go.
 * @throws Refusal (input) that says what is wrong with it; (cancelled)
 */
export async function readBundle(file: string, work: Work, whole: boolean): Promise<BundleIn> {
  const archive = await openArchive(file);
  try {
    const manifestText = await readText(archive, 'manifest.json');
    const manifest = readManifest(manifestText);
    assertListed(archive, manifest);
    let recordsText = '';
    const cleaned = new Map<string, Cleaned>();
    for (const [done, entry] of manifest.files.entries()) {
      const isContent = entry.name.startsWith('files/');
      if (isContent && !whole && entry.name.endsWith('.pdf')) continue;
      await work.step({ done, total: manifest.files.length, step: 'Checking the bundle' });
      if (entry.name === 'records.json') recordsText = await readText(archive, entry.name, entry);
      else if (isContent) {
        const clean = cleanedOf(await readContent(archive, entry), quoted(entry.name));
        if (clean !== null) cleaned.set(entry.sha256, clean);
      } else await readChecked(archive, entry, () => undefined);
    }
    const records = namingCleaned(await readRecords(recordsText, manifest.version, work), cleaned);
    const contents = new Set(
      manifest.files.flatMap(({ name, sha256 }) =>
        name.startsWith('files/') ? [cleaned.get(sha256)?.hash ?? sha256] : [],
      ),
    );
    const digest = createHash('sha256').update(manifestText).digest('hex');
    return { manifest, records, contents, cleaned, digest };
  } finally {
    archive.close();
  }
}

/** Takes attached files out of a bundle that was read, one after the other. */
export async function takeContents(
  file: string,
  { manifest, cleaned }: Pick<BundleIn, 'manifest' | 'cleaned'>,
  wanted: ReadonlySet<string>,
  take: (content: Buffer, done: number) => Promise<void>,
): Promise<void> {
  const archive = await openArchive(file);
  try {
    const entries = manifest.files.filter(
      ({ name, sha256 }) =>
        name.startsWith('files/') && wanted.has(cleaned.get(sha256)?.hash ?? sha256),
    );
    for (const [done, entry] of entries.entries()) {
      await take(
        contentToKeep(await readContent(archive, entry), { recording: true }).content,
        done,
      );
    }
  } finally {
    archive.close();
  }
}

type Listed = BundleManifest['files'][number];

async function readChecked(
  archive: Archive,
  { name, sha256 }: Listed,
  each: (piece: Buffer) => void,
): Promise<void> {
  if ((await archive.read(name, each)) === sha256) return;
  throw unreadable(
    `${quoted(name)} is not what the list of the bundle says; it was changed since.`,
  );
}

/** Reads a text whole; without an entry of the list its hash is not known. */
async function readText(
  archive: Archive,
  name: keyof typeof MOST_BYTES,
  listed?: Listed,
): Promise<string> {
  if (!archive.names.includes(name)) {
    throw unreadable(`The archive holds no ${name}. It is no bundle of Trotwell.`);
  }
  if (archive.bytesOf(name) > MOST_BYTES[name]) {
    throw unreadable(
      `${name} in the bundle is larger than ${MOST_BYTES[name] / MEGABYTE} MB. Export owners one by one.`,
    );
  }
  const pieces: Buffer[] = [];
  const keep = (piece: Buffer): void => void pieces.push(piece);
  if (listed === undefined) await archive.read(name, keep);
  else await readChecked(archive, listed, keep);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(pieces));
  } catch {
    throw unreadable(`${name} in the bundle is not written in UTF-8.`);
  }
}

/** @throws Refusal (input) for a text that is no JSON, or goes beyond any of ours */
function readJson(text: string, name: keyof typeof MOST_PARTS): unknown {
  if (isBeyond(text, { deepest: DEEPEST, mostParts: MOST_PARTS[name] })) {
    throw unreadable(`${name} in the bundle holds more, or goes deeper, than any of ours.`);
  }
  try {
    return JSON.parse(text);
  } catch {
    throw unreadable(`${name} in the bundle is not valid JSON.`);
  }
}

/** An attached file: named by its hash, of the type its ending says. */
async function readContent(archive: Archive, entry: Listed): Promise<Buffer> {
  const pieces: Buffer[] = [];
  await readChecked(archive, entry, (piece) => pieces.push(piece));
  const content = Buffer.concat(pieces);
  const type = typeOf(content);
  if (type !== null && entry.name.endsWith(`.${ATTACHMENT_TYPES[type][0]}`)) return content;
  throw unreadable(`${quoted(entry.name)} in the bundle is not the kind of file its ending says.`);
}

function readManifest(text: string): BundleManifest {
  const value = readJson(text, 'manifest.json');
  const head = z.looseObject({ format: z.literal(BUNDLE_FORMAT), version: z.int().min(1) });
  const known = head.safeParse(value);
  if (!known.success) throw unreadable('The archive is no bundle of Trotwell.');
  if (known.data.version > BUNDLE_VERSION) {
    throw unreadable(
      `The bundle was made by a newer Trotwell (form ${known.data.version}; this one reads ${BUNDLE_VERSION}). Install the newer version to import it.`,
    );
  }
  const parsed = bundleManifest.safeParse(value);
  if (parsed.success) return parsed.data;
  throw unreadable('The list in manifest.json of the bundle is damaged.');
}

const PLAIN_NAMES: ReadonlySet<string> = new Set([
  'README.txt',
  'schema.json',
  'records.json',
  ...BUNDLE_KINDS.map((kind) => `tables/${kind}.csv`),
]);
const CONTENT_NAME = /^files\/([0-9a-f]{64})\.(jpg|png|webp|pdf|gpx)$/;

/** The list and the archive name the same files, and no others than a bundle has. */
function assertListed(archive: Archive, { files }: BundleManifest): void {
  const listed = new Set<string>();
  const there = new Set(archive.names);
  for (const { name, sha256, bytes } of files) {
    const content = CONTENT_NAME.exec(name);
    const fits = content === null ? PLAIN_NAMES.has(name) : content[1] === sha256;
    if (!fits) throw unreadable(`The bundle lists ${quoted(name)}, which no bundle has.`);
    if (listed.has(name)) throw unreadable(`The bundle lists ${quoted(name)} twice.`);
    if (!there.has(name)) throw unreadable(`${quoted(name)} is missing from the bundle.`);
    if (archive.bytesOf(name) !== bytes) {
      throw unreadable(`${quoted(name)} is not as long as the list of the bundle says.`);
    }
    if (content !== null && bytes > FILE_PURPOSES.attachment.maxBytes) {
      throw unreadable(
        `${quoted(name)} is larger than ${FILE_PURPOSES.attachment.maxBytes / MEGABYTE} MB, the most for an attached file.`,
      );
    }
    listed.add(name);
  }
  if (!listed.has('records.json')) throw unreadable('records.json is missing from the bundle.');
  const strange = archive.names.find((name) => name !== 'manifest.json' && !listed.has(name));
  if (strange === undefined) return;
  throw unreadable(`The archive holds ${quoted(strange)}, which is not on the list of the bundle.`);
}

const lists = z.strictObject(
  Object.fromEntries(BUNDLE_KINDS.map((kind) => [kind, z.array(z.unknown())])) as Record<
    BundleKind,
    z.ZodArray<z.ZodUnknown>
  >,
);

/** What one record is called in a sentence. */
export const wordFor = (kind: BundleKind): string =>
  kind === 'history' ? 'history entry' : KINDS[kind].word;

async function readRecords(text: string, version: number, work: Work): Promise<BundleRecords> {
  const all = lists.safeParse(readJson(text, 'records.json'));
  if (!all.success) throw unreadable('The lists in records.json of the bundle are damaged.');
  const total = BUNDLE_KINDS.reduce((sum, kind) => sum + all.data[kind].length, 0);
  const read = Object.fromEntries(BUNDLE_KINDS.map((kind) => [kind, [] as unknown[]]));
  const wrong: { path: string; message: string }[] = [];
  let done = 0;
  for (const kind of BUNDLE_KINDS) {
    const { element } = bundleRecords.shape[kind];
    for (const [index, record] of all.data[kind].entries()) {
      if (done % RECORDS_AT_ONCE === 0) {
        await work.step({ done, total, step: 'Checking the records' });
      }
      done += 1;
      const parsed = element.safeParse(completed(kind, record, version));
      const cleaned = parsed.success ? cleanBefore(kind, parsed.data) : parsed;
      if (cleaned.success) read[kind]!.push(cleaned.data);
      else wrong.push(...problemsOf(kind, index, cleaned.error));
      if (wrong.length >= FIELDS_SHOWN) throw refused(wrong);
    }
  }
  if (wrong.length > 0) throw refused(wrong);
  return read as unknown as BundleRecords;
}

function problemsOf(kind: BundleKind, index: number, error: z.ZodError) {
  return error.issues.slice(0, FIELDS_SHOWN).map((issue) => {
    const path = issue.path.map(String).join('.');
    const where = `${wordFor(kind)} ${index + 1}`;
    const sentence = `In the bundle, ${where}${path === '' ? '' : ` (${path})`}: ${issue.message}`;
    return { path: `${kind}.${index}${path === '' ? '' : `.${path}`}`, message: sentence };
  });
}

function refused(fields: readonly { path: string; message: string }[]): Refusal {
  const message = `${fields[0]!.message} Nothing was imported.`;
  return new Refusal({ kind: 'input', message, fields });
}
