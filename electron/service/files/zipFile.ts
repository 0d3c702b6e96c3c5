import { createWriteStream, rmSync } from 'node:fs';
import type { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { ZipFile } from 'yazl';
import { cancelled, type Work } from '../work.ts';

/**
 * Adds an entry whose content is opened when its turn comes. What goes wrong inside it, such as a
 * file that is gone, ends the archive; the library itself would leave it unheard.
 */
export function addWhenDue(
  zip: ZipFile,
  name: string,
  open: () => Readable,
  options: { readonly compress: boolean } = { compress: true },
): void {
  zip.addReadStreamLazy(name, options, (give) => {
    const content = open();
    content.on('error', (error) => (zip.outputStream as Readable).destroy(error));
    give(null, content);
  });
}

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
