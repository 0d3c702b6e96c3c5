// `npm test`: makes sure of a browser and of the programs that read PDFs, builds, runs every test,
// and closes with one line that counts them. What follows `--` goes to vitest.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from '../electron/launch/build.mjs';
import { ensureChromium, ensurePdfReaders } from './support/programs.ts';
import { newReport } from './support/report.ts';
import { SOURCE_RUN_FLAGS } from './support/runtimeFlags.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));

function fail(sentence: string): never {
  console.error(sentence);
  process.exit(1);
}

const missing = ensureChromium() ?? ensurePdfReaders();
if (missing !== null) fail(missing);
if (!build(ROOT)) fail('The build failed; the lines above say why.');

const report = newReport();
const { status } = spawnSync(
  process.execPath,
  [
    ...SOURCE_RUN_FLAGS,
    join(ROOT, 'node_modules', 'vitest', 'vitest.mjs'),
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report.file}`,
    ...process.argv.slice(2),
  ],
  { cwd: ROOT, stdio: ['ignore', 'inherit', 'inherit'] },
);
const counts = report.read();
if (counts === null) fail('The tests ended without a report; the lines above say why.');
for (const group of counts.skippedGroups) console.log(`Skipped: ${group}`);
console.log(`${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);
process.exit(status === 0 && counts.failed === 0 ? 0 : 1);
