import { buffer } from 'node:stream/consumers';
import { createHash } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { expect } from 'vitest';
import yauzl from 'yauzl';
import { ZipFile } from 'yazl';
import type {
  BundleManifest,
  BundleRecords,
} from '../../../../electron/contract/exchange/bundle.ts';
import type {
  BundleDone,
  BundleLook,
} from '../../../../electron/contract/exchange/bundleImport.ts';
import { temporaryFolder, type TestDesk } from '../../support/desk.ts';

export const WORK = '00000000-0000-4000-8000-00000000000b';
const MOST = 1024 ** 3;

export type Entries = Map<string, Buffer>;

/** Exports and unpacks; read by a library that is not what writes. */
export async function exported(desk: TestDesk, clientId: string | null = null): Promise<Entries> {
  const { token } = await desk.ok('export/make', { clientId, workId: WORK });
  const given = desk.service.giveOut(token);
  if (!given.ok) expect.fail(given.error.message);
  const zip = await yauzl.openPromise(given.value.file);
  const entries: Entries = new Map();
  for await (const entry of zip.eachEntry()) {
    entries.set(entry.fileName, await buffer(await zip.openReadStreamPromise(entry)));
  }
  given.value.done();
  return entries;
}

export const jsonOf = <T>(entries: Entries, name: string): T =>
  JSON.parse(entries.get(name)!.toString()) as T;
export const recordsOf = (entries: Entries): BundleRecords => jsonOf(entries, 'records.json');

/** The entries with one of them changed, the list in the manifest mended so that hashes agree. */
export function changed(
  entries: Entries,
  change: (records: BundleRecords, manifest: BundleManifest) => void,
): Entries {
  const records = recordsOf(entries);
  const manifest = jsonOf<BundleManifest>(entries, 'manifest.json');
  change(records, manifest);
  const bytes = Buffer.from(JSON.stringify(records));
  const listed = manifest.files.find(({ name }) => name === 'records.json')!;
  Object.assign(listed, {
    sha256: createHash('sha256').update(bytes).digest('hex'),
    bytes: bytes.length,
  });
  const counts = Object.fromEntries(
    Object.entries(records).map(([kind, list]) => [kind, list.length]),
  );
  Object.assign(manifest.counts, counts);
  return new Map([
    ...entries,
    ['records.json', bytes],
    ['manifest.json', Buffer.from(JSON.stringify(manifest))],
  ]);
}

/** Packs entries into an archive on the disk. */
export async function zipped(entries: Iterable<readonly [string, Buffer]>): Promise<string> {
  const zip = new ZipFile();
  for (const [name, bytes] of entries) zip.addBuffer(bytes, name);
  zip.end();
  const file = join(temporaryFolder(), 'bundle.zip');
  await pipeline(zip.outputStream, createWriteStream(file));
  return file;
}

/** Hands a file over, as a host does. @returns its token */
export async function handed(desk: TestDesk, file: string): Promise<string> {
  const taken = await desk.service.takeIn('bundle.zip', file, MOST);
  if (!taken.ok) expect.fail(taken.error.message);
  return taken.value.token;
}

export interface LookedAt {
  readonly token: string;
  readonly look: BundleLook;
}

export async function lookedAt(desk: TestDesk, entries: Entries): Promise<LookedAt> {
  const token = await handed(desk, await zipped(entries));
  return { token, look: await desk.ok('import/bundleLook', { token, workId: WORK }) };
}

type Choices = Partial<{ different: 'ours' | 'theirs'; erased: 'leave out' | 'bring back' }>;

/** Looks at a bundle and imports it. */
export async function imported(
  desk: TestDesk,
  entries: Entries,
  choices: Choices = {},
): Promise<BundleDone> {
  const { token, look } = await lookedAt(desk, entries);
  expect(look.problems.first).toEqual([]);
  const rest = { different: 'ours', erased: 'leave out', ...choices } as const;
  return desk.ok('import/bundleRun', { token, digest: look.digest, workId: WORK, ...rest });
}
