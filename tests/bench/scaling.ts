import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const SIZE = fileURLToPath(new URL('size.ts', import.meta.url));
export const SIZES = [500, 5000, 50_000] as const;

/** What one size of practice costs, measured in a process of its own. */
export interface SizeLine {
  readonly dogs: number;
  readonly fileMB: number;
  /** Medians, milliseconds. */
  readonly listMs: number;
  readonly searchMs: number;
  readonly reviewMs: number;
  readonly reviewUsPerDog: number;
  /** Memory of the process after listing and searching, and after the review, MB. */
  readonly listMemoryMB: number;
  readonly reviewMemoryMB: number;
}

/** Lists, searches and reviews practices of three sizes, each in a process of its own. */
export function measureScaling(): SizeLine[] {
  return SIZES.map((dogs) => {
    const output = execFileSync(process.execPath, ['--expose-gc', SIZE, String(dogs)]);
    return JSON.parse(output.toString()) as SizeLine;
  });
}
