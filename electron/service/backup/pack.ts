import { createReadStream, rmSync, statSync } from 'node:fs';
import { open } from 'node:fs/promises';
import type { RecordsSummary } from '../../contract/calls/backup.ts';
import type { WorkState } from '../../contract/calls/work.ts';
import type { ScryptCost } from '../passphrase.ts';
import { chunkWriter, type ChunkWriter } from './chunks.ts';
import { contentFile, hashOfFile } from './contents.ts';
import { putInPlace } from './durable.ts';
import { newHeader } from './header.ts';
import type { Manifest } from './manifest.ts';

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
 * Writes a backup file (FORMAT.md) piece by piece; no more than a chunk is held in memory.
 * @throws what the disk or `progress` throws; no half file is left behind.
 */
export async function pack(
  target: string,
  source: PackSource,
  passphrase: string | null,
  progress: Progress,
  cost?: ScryptCost,
): Promise<Manifest> {
  const manifest = await listWhatIsThere(source, progress);
  const { header, seal } = await newHeader(passphrase, cost);
  const temporary = `${target}.part`;
  try {
    const file = await open(temporary, 'w', 0o600);
    try {
      await file.write(header);
      await writeBody(chunkWriter(file, seal), source, manifest, progress);
    } finally {
      await file.close();
    }
    putInPlace(temporary, target);
    return manifest;
  } finally {
    rmSync(temporary, { force: true });
  }
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

async function writeBody(
  chunks: ChunkWriter,
  source: PackSource,
  manifest: Manifest,
  progress: Progress,
): Promise<void> {
  const json = Buffer.from(JSON.stringify(manifest), 'utf8');
  const length = Buffer.alloc(4);
  length.writeUInt32BE(json.length);
  await chunks.write(length);
  await chunks.write(json);
  const files = [
    source.records,
    ...manifest.contents.map(({ hash }) => contentFile(source.store, hash)),
  ];
  const total = manifest.contents.reduce((sum, { bytes }) => sum + bytes, manifest.records.bytes);
  let done = 0;
  for (const file of files) {
    for await (const piece of createReadStream(file, { highWaterMark: 1024 * 1024 })) {
      await chunks.write(piece as Buffer);
      done += (piece as Buffer).length;
      await progress({ done, total, step: 'Writing the backup' });
    }
  }
  await chunks.end();
}
