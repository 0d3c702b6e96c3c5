import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { Readable } from 'node:stream';
import BetterSqlite3 from 'better-sqlite3';
import type { ZipFile } from 'yazl';
import {
  BUNDLE_FORMAT,
  BUNDLE_KINDS,
  BUNDLE_VERSION,
  bundleRecords,
  type BundleKind,
  type BundleManifest,
  type BundleMade,
  type BundleRecords,
} from '../../contract/exchange/bundle.ts';
import { ATTACHMENT_TYPES } from '../../contract/files/attachment.ts';
import { contentFile, hashOfFile } from '../backup/contents.ts';
import { presentContents } from '../backup/folder.ts';
import { readClient } from '../dogs/clients.ts';
import { Later, type Context } from '../database/context.ts';
import { queriesOn } from '../database/open.ts';
import { readPractice } from '../practice/practice.ts';
import type { Transfer } from '../files/transfer.ts';
import type { Work, WorkRegister } from '../work.ts';
import { addWhenDue, writeZip } from '../files/zipFile.ts';
import { csvPieces, jsonPieces } from './bundlePieces.ts';
import { readBundleRecords } from './bundleRecords.ts';
import { BUNDLE_README, bundleSchema } from './bundleTexts.ts';

export interface WriteRoom {
  readonly transfer: Transfer;
  readonly work: WorkRegister;
  readonly version: string;
}

/**
 * Writes the open bundle of one owner, or of all where `clientId` is null, as the records stand now.
 * It is made later, in slices; the next call does not wait for it.
 * @throws Refusal (not-found) now, (cancelled) later; nothing is left behind then
 */
export async function makeBundle(
  context: Context,
  room: WriteRoom,
  workId: string,
  clientId: string | null,
): Promise<Later<BundleMade>> {
  if (clientId !== null) await readClient(context.db, clientId);
  const about = {
    madeOn: context.instant(),
    appVersion: room.version,
    practice: (await readPractice(context))?.name ?? '',
  };
  const fileName = `trotwell-bundle-${context.today()}.zip`;
  return new Later(
    room.work.run(workId, async (work) => {
      const reading = () => work.step({ done: 0, total: 1, step: 'Reading the records' });
      const records = await asOfNow(context, (db) =>
        readBundleRecords(db, clientId === null ? null : [clientId], reading),
      );
      const file = room.transfer.room();
      let missing: readonly string[] = [];
      await writeZip(file, work, async (zip) => {
        missing = await fill(zip, context, work, records, about);
      });
      const token = await room.transfer.produced(file, fileName, 'application/zip');
      return { token, fileName, counts: countsOf(records), missing: missing.length };
    }),
  );
}

function countsOf(records: BundleRecords): Record<BundleKind, number> {
  return Object.fromEntries(BUNDLE_KINDS.map((kind) => [kind, records[kind].length])) as Record<
    BundleKind,
    number
  >;
}

/** @returns the hashes of attached files that are not in the folder of records */
async function fill(
  zip: ZipFile,
  context: Context,
  work: Work,
  records: BundleRecords,
  about: Pick<BundleManifest, 'madeOn' | 'appVersion' | 'practice'>,
): Promise<readonly string[]> {
  const files: BundleManifest['files'] = [];
  const addText = (name: string, pieces: Iterable<string>): void => {
    addWhenDue(zip, name, () => Readable.from(listing(name, pieces, work, files)));
  };
  addText('README.txt', [BUNDLE_README]);
  addText('schema.json', [`${JSON.stringify(bundleSchema(), null, 2)}\n`]);
  addText('records.json', jsonPieces(records));
  for (const kind of BUNDLE_KINDS) {
    const columns = Object.keys(bundleRecords.shape[kind].element.shape);
    addText(`tables/${kind}.csv`, csvPieces(columns, records[kind]));
  }
  const attached = await addFiles(zip, context, work, records);
  const manifest = (): BundleManifest => ({
    format: BUNDLE_FORMAT,
    version: BUNDLE_VERSION,
    ...about,
    counts: countsOf(records),
    files: [...files, ...attached.files],
    missing: attached.missing,
  });
  // Made when its turn comes: by then the sums of all that stands before it are known.
  addWhenDue(zip, 'manifest.json', () =>
    Readable.from([Buffer.from(`${JSON.stringify(manifest(), null, 2)}\n`)]),
  );
  return attached.missing;
}

/** A text on its way into the archive; at its end it is listed with its sum. */
async function* listing(
  name: string,
  pieces: Iterable<string>,
  work: Work,
  files: BundleManifest['files'],
): AsyncGenerator<Buffer> {
  const sum = createHash('sha256');
  let bytes = 0;
  for (const piece of pieces) {
    await work.step({
      done: files.length,
      total: 2 + BUNDLE_KINDS.length,
      step: `Writing ${name}`,
    });
    const content = Buffer.from(piece);
    sum.update(content);
    bytes += content.length;
    yield content;
  }
  files.push({ name, sha256: sum.digest('hex'), bytes });
}

/** Adds each attached file once. One that is not on the disk, or no longer what it was, is listed as missing. */
async function addFiles(
  zip: ZipFile,
  context: Context,
  work: Work,
  { attachments }: BundleRecords,
): Promise<Pick<BundleManifest, 'files' | 'missing'>> {
  const store = presentContents(context.folder);
  const once = [...new Map(attachments.map((entry) => [entry.hash, entry])).values()];
  const files: BundleManifest['files'] = [];
  const missing: string[] = [];
  for (const [done, { hash, mediaType, bytes }] of once.entries()) {
    await work.step({ done, total: once.length, step: 'Adding the attached files' });
    const source = contentFile(store, hash);
    if ((await hashOfFile(source)) !== hash) {
      missing.push(hash);
      continue;
    }
    const name = `files/${hash}.${ATTACHMENT_TYPES[mediaType][0]}`;
    // Photos are compressed already. Opened only when its turn comes.
    addWhenDue(zip, name, () => createReadStream(source), { compress: false });
    files.push({ name, sha256: hash, bytes });
  }
  return { files, missing };
}

/**
 * Runs `read` on the records as they stand when this is called, however long it takes and whatever
 * is saved meanwhile: a connection of its own, whose transaction begins at once.
 */
async function asOfNow<T>(context: Context, read: (db: Context['db']) => Promise<T>): Promise<T> {
  // Records opened for reading only lie in memory, or are held, and do not change.
  if (context.raw.pragma('query_only', { simple: true }) === 1) return read(context.db);
  const raw = new BetterSqlite3(context.raw.name, { readonly: true });
  try {
    raw.pragma('trusted_schema = OFF');
    raw.exec('BEGIN');
    // What a transaction sees is settled when it first reads.
    raw.prepare('SELECT count(*) FROM sqlite_schema').get();
    return await read(queriesOn(raw));
  } finally {
    raw.close();
  }
}
