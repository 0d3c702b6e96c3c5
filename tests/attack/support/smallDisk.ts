import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, rmdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A disk in memory that can be filled, emptied and made to refuse writing. */
export interface SmallDisk {
  readonly folder: string;
  /** Takes all the room there is, to the last byte. */
  fill(): void;
  empty(): void;
  writable(yes: boolean): void;
  remove(): void;
}

/** Null where this machine does not let one be made: that takes root on Linux. */
export function smallDisk(megabytes: number): SmallDisk | null {
  if (process.platform !== 'linux') return null;
  const folder = mkdtempSync(join(tmpdir(), 'trotwell-disk-'));
  const mount = (options: string, ...more: string[]): void =>
    void execFileSync('mount', [...more, '-o', options, folder], { stdio: 'ignore' });
  try {
    mount(`size=${megabytes}m`, '-t', 'tmpfs', 'tmpfs');
  } catch {
    rmdirSync(folder);
    return null;
  }
  const ballast = join(folder, 'ballast');
  return {
    folder,
    fill() {
      for (let size = megabytes * 1024 * 1024; size >= 1; size = Math.floor(size / 2)) {
        try {
          for (;;) writeFileSync(ballast, Buffer.alloc(size), { flag: 'a' });
        } catch {
          // The next smaller piece.
        }
      }
    },
    empty: () => rmSync(ballast, { force: true }),
    writable: (yes) => mount(`remount,${yes ? 'rw' : 'ro'}`),
    remove() {
      // Lazily: a test that failed has not closed what it opened.
      execFileSync('umount', ['-l', folder]);
      rmdirSync(folder);
    },
  };
}
