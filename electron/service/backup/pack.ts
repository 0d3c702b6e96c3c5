import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream, rmSync, statSync } from 'node:fs';
import { pipeline } from 'node:stream/promises';
import { pack as tarPack, type Pack } from 'tar-stream';
import type { RecordsSummary } from '../../contract/calls/backup.ts';
import type { WorkState } from '../../contract/calls/work.ts';
import { sealed } from './container.ts';
import { contentFile, hashOfFile } from './contents.ts';
import { putInPlace } from './durable.ts';
import { PACKED, type Manifest } from './manifest.ts';

/** Told how far the work is; throws when it is to stop. */
export type Progress = (state: WorkState) => Promise<void>;

export interface PackSource {
  /** A finished copy of the database. */
  readonly records: string;
  readonly summary: RecordsSummary;
  /** The store of attachments, and what of it the records name. */
  readonly store: string;
  readonly contents: readonly string[];
  readonly madeAt: string;
  readonly program: string;
}

/**
 * Writes a backup file (FORMAT.md) piece by piece; no more than a piece is held in memory.
 * @throws what the disk or `progress` throws; no half file is left behind.
 */
export async function pack(
  target: string,
  source: PackSource,
  passphrase: string | null,
  progress: Progress,
  workFactor?: number,
): Promise<Manifest> {
  const manifest = await listWhatIsThere(source, progress);
  const temporary = `${target}.part`;
  const tar = tarPack();
  try {
    const written = (async () =>
      pipeline(
        await sealed(tar, passphrase, workFactor),
        createWriteStream(temporary, { mode: 0o600 }),
      ))();
    // The disk's own error is the one that is told; an archive that stops ends the writing.
    const filled = fill(tar, source, manifest, progress).catch((error: unknown) => {
      tar.destroy(error as Error);
      throw error;
    });
    await firstFailure(
      written.finally(() => tar.destroy()),
      filled,
    );
    putInPlace(temporary, target);
    return manifest;
  } finally {
    rmSync(temporary, { force: true });
  }
}

/** Waits for both, also when one fails, and throws what went wrong first. */
async function firstFailure(...work: readonly Promise<void>[]): Promise<void> {
  const failures: unknown[] = [];
  await Promise.all(work.map((each) => each.catch((error: unknown) => void failures.push(error))));
  if (failures.length > 0) throw failures[0];
}

/** Attachments that are missing or damaged are named as such; they do not stand in the way. */
async function listWhatIsThere(source: PackSource, progress: Progress): Promise<Manifest> {
  const contents: { bytes: number; hash: string }[] = [];
  const missing: string[] = [];
  for (const [done, hash] of source.contents.entries()) {
    await progress({ done, total: source.contents.length, step: 'Checking the attachments' });
    const file = contentFile(source.store, hash);
    if ((await hashOfFile(file)) === hash) contents.push({ bytes: statSync(file).size, hash });
    else missing.push(hash);
  }
  return {
    madeAt: source.madeAt,
    program: source.program,
    summary: source.summary,
    records: { bytes: statSync(source.records).size, hash: (await hashOfFile(source.records))! },
    contents,
    missing,
  };
}

const README = `A backup of the records of a practice, made by Trotwell.

${PACKED.records} is an SQLite database with everything that was typed in. files/ holds photos and
letters, each named by its SHA-256; the table stored_file says what kind of file it is, and the table
attachment at which visit it is. ${PACKED.manifest} lists all of it with lengths and SHA-256.
`;

async function fill(
  tar: Pack,
  source: PackSource,
  manifest: Manifest,
  progress: Progress,
): Promise<void> {
  const mtime = new Date(manifest.madeAt);
  const json = JSON.stringify(manifest, null, 2);
  const sum = createHash('sha256').update(json).digest('hex');
  const texts = [
    [PACKED.manifest, json],
    [PACKED.sum, `${sum}  ${PACKED.manifest}\n`],
    [PACKED.readme, README],
  ] as const;
  for (const [name, text] of texts) tar.entry({ name, mtime, mode: 0o600 }, text);
  const parts = [
    { name: PACKED.records as string, file: source.records, size: manifest.records.bytes },
    ...manifest.contents.map(({ hash, bytes }) => ({
      name: `${PACKED.contents}/${hash}`,
      file: contentFile(source.store, hash),
      size: bytes,
    })),
  ];
  const total = parts.reduce((sum, { size }) => sum + size, 0);
  let done = 0;
  for (const { name, file, size } of parts) {
    const entry = tar.entry({ name, size, mtime, mode: 0o600 });
    await pipeline(
      createReadStream(file, { highWaterMark: 1024 * 1024 }),
      async function* (pieces) {
        for await (const piece of pieces as AsyncIterable<Buffer>) {
          done += piece.length;
          await progress({ done, total, step: 'Writing the backup' });
          yield piece;
        }
      },
      entry,
    );
  }
  tar.finalize();
}
