import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import type { ZipFile } from 'yazl';
import {
  BUNDLE_FORMAT,
  BUNDLE_KINDS,
  BUNDLE_VERSION,
  bundleRecords,
  FILE_ENDINGS,
  type BundleKind,
  type BundleManifest,
  type BundleMade,
  type BundleRecords,
} from '../../contract/bundle.ts';
import { contentFile, hashOfFile } from '../backup/contents.ts';
import { presentContents } from '../backup/folder.ts';
import { readClient } from '../clients.ts';
import type { Desk } from '../context.ts';
import { readPractice } from '../practice.ts';
import type { Transfer } from '../transfer.ts';
import type { Work } from '../work.ts';
import { writeZip } from '../zipFile.ts';
import { readBundleRecords } from './bundleRecords.ts';
import { BUNDLE_README, bundleSchema } from './bundleTexts.ts';
import { writeCsv } from './csvWrite.ts';

export interface WriteRoom {
  readonly transfer: Transfer;
  readonly version: string;
}

/**
 * Writes the open bundle of one owner, or of all where `clientId` is null.
 * @throws Refusal (not-found, cancelled); nothing is left behind then
 */
export async function makeBundle(
  desk: Desk,
  { transfer, version }: WriteRoom,
  work: Work,
  clientId: string | null,
): Promise<BundleMade> {
  if (clientId !== null) await readClient(desk.db, clientId);
  const records = await readBundleRecords(desk.db, clientId === null ? null : [clientId]);
  const file = transfer.room();
  const madeOn = desk.instant();
  let missing: readonly string[] = [];
  await writeZip(file, work, async (zip) => {
    missing = await fill(zip, desk, work, records, { version, madeOn });
  });
  const fileName = `trotwell-bundle-${desk.today()}.zip`;
  const token = await transfer.produced(file, fileName, 'application/zip');
  return { token, fileName, counts: countsOf(records), missing: missing.length };
}

export function countsOf(records: BundleRecords): Record<BundleKind, number> {
  return Object.fromEntries(BUNDLE_KINDS.map((kind) => [kind, records[kind].length])) as Record<
    BundleKind,
    number
  >;
}

/** @returns the hashes of attached files that are not in the folder of records */
async function fill(
  zip: ZipFile,
  desk: Desk,
  work: Work,
  records: BundleRecords,
  { version, madeOn }: { readonly version: string; readonly madeOn: string },
): Promise<readonly string[]> {
  const files: BundleManifest['files'] = [];
  const addText = (name: string, text: string): void => {
    const bytes = Buffer.from(text);
    files.push({ name, sha256: sha256(bytes), bytes: bytes.length });
    zip.addBuffer(bytes, name);
  };
  addText('README.txt', BUNDLE_README);
  addText('schema.json', `${JSON.stringify(bundleSchema(), null, 2)}\n`);
  addText('records.json', `${JSON.stringify(records, null, 1)}\n`);
  for (const [index, kind] of BUNDLE_KINDS.entries()) {
    await work.step({ done: index, total: BUNDLE_KINDS.length, step: 'Writing the tables' });
    const columns = Object.keys(bundleRecords.shape[kind].element.shape);
    addText(`tables/${kind}.csv`, writeCsv(columns, records[kind]));
  }
  const attached = await addFiles(zip, desk, work, records);
  files.push(...attached.files);
  const practice = (await readPractice(desk))?.name ?? '';
  const manifest: BundleManifest = {
    format: BUNDLE_FORMAT,
    version: BUNDLE_VERSION,
    madeOn,
    appVersion: version,
    practice,
    counts: countsOf(records),
    files,
    missing: attached.missing,
  };
  zip.addBuffer(Buffer.from(`${JSON.stringify(manifest, null, 2)}\n`), 'manifest.json');
  return attached.missing;
}

/** Adds each attached file once. One that is not on the disk, or no longer what it was, is listed as missing. */
async function addFiles(
  zip: ZipFile,
  desk: Desk,
  work: Work,
  { attachments }: BundleRecords,
): Promise<Pick<BundleManifest, 'files' | 'missing'>> {
  const store = presentContents(desk.folder);
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
    const name = `files/${hash}.${FILE_ENDINGS[mediaType]}`;
    // Photos are compressed already. Opened only when its turn comes.
    zip.addReadStreamLazy(name, { compress: false }, (give) =>
      give(null, createReadStream(source)),
    );
    files.push({ name, sha256: hash, bytes });
  }
  return { files, missing };
}

const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');
