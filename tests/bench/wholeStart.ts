import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { compare, type BenchLine } from './measure.ts';
import type { GeneratedPractice } from './practice.ts';

const run = promisify(execFile);
const at = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

/** The same as a process of its own each time: what Node and the modules cost is in it. */
export async function measureWholeStart(practice: GeneratedPractice): Promise<BenchLine> {
  const { ratio, oursMs, theirsMs } = await compare(
    () => run(process.execPath, [at('startOurs.ts'), practice.folder]),
    () => run(process.execPath, [at('startBare.ts'), practice.file]),
    { rounds: 7, warmUp: 1 },
  );
  return {
    name: 'The same, each time as a new process run from source',
    against: 'a new process with the driver and the bare SQL',
    value: ratio,
    unit: '×',
    target: 2.5,
    note: `${oursMs.toFixed(0)} ms / ${theirsMs.toFixed(0)} ms`,
  };
}
