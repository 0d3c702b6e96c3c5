import { createWriteStream, rmSync } from 'node:fs';
import { pipeline } from 'node:stream/promises';
import { ZipFile } from 'yazl';
import { cancelled, type Work } from './work.ts';

/**
 * Writes a zip archive to `file`, filled by `fill` as the work goes on.
 * @throws what `fill` throws, a Refusal (cancelled) too, and the disk's own errors; nothing of the
 *   file is left behind then
 */
export async function writeZip(
  file: string,
  work: Work,
  fill: (zip: ZipFile) => Promise<void>,
): Promise<void> {
  const zip = new ZipFile();
  const stop = new AbortController();
  const written = pipeline(zip.outputStream, createWriteStream(file, { mode: 0o600 }), {
    signal: AbortSignal.any([work.signal, stop.signal]),
  });
  /** What the disk said before anything was stopped: the work itself only stumbles over it. */
  let ofDisk: unknown;
  const settled = written.catch((error: unknown) => {
    if (!stop.signal.aborted) ofDisk = error;
  });
  try {
    await fill(zip);
    zip.end();
    await written;
  } catch (error) {
    stop.abort();
    await settled;
    rmSync(file, { force: true });
    // The last entries are written after the last step, so that a stop can come in between.
    throw work.signal.aborted ? cancelled() : (ofDisk ?? error);
  }
}
