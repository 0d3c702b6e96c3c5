// `npm test`: makes sure of a browser and of poppler's readers, builds, runs every test, and closes
// with one line that counts them.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findChromium } from './support/chromium.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const FETCH_LIMIT_MS = 60_000;

function run(command: string, args: readonly string[], timeout?: number, quiet = false): boolean {
  const result = spawnSync(command, args, {
    cwd: ROOT,
    stdio: quiet ? 'ignore' : 'inherit',
    ...(timeout === undefined ? {} : { timeout, killSignal: 'SIGKILL' as const }),
  });
  return result.status === 0;
}

const cli = (...path: string[]): string => join(ROOT, 'node_modules', ...path);
const has = (command: string): boolean =>
  spawnSync(command, ['-v'], { stdio: 'ignore' }).error === undefined;

function installByApt(...packages: string[]): void {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !has('apt-get')) return;
  console.log(`Installing ${packages.join(', ')} …`);
  run('apt-get', ['update', '-qq'], 300_000, true);
  run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages], 600_000, true);
}

function fail(sentence: string): never {
  console.error(sentence);
  process.exit(1);
}

function ensureChromium(): void {
  if (findChromium() !== null) return;
  console.log('No Chromium found; trying to fetch one …');
  run(
    process.execPath,
    [cli('playwright-core', 'cli.js'), 'install', 'chromium'],
    FETCH_LIMIT_MS,
    true,
  );
  if (findChromium() === null) installByApt('chromium');
  if (findChromium() !== null) return;
  fail(
    'The browser tests need Chromium, and none could be fetched. Install it (Debian: "apt-get install chromium"), ' +
      'or name one in the environment variable TROTWELL_CHROMIUM.',
  );
}

function ensurePdfReaders(): void {
  const missing = [
    ...(has('pdftotext') ? [] : ['poppler-utils']),
    ...(spawnSync('qpdf', ['--version'], { stdio: 'ignore' }).error === undefined ? [] : ['qpdf']),
  ];
  if (missing.length > 0) installByApt(...missing);
  if (has('pdftotext')) return;
  fail(
    'The handout tests need pdftotext. Install poppler (Debian: "apt-get install poppler-utils qpdf").',
  );
}

interface Report {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
}

ensureChromium();
ensurePdfReaders();
if (
  !run(process.execPath, [
    cli('electron-vite', 'bin', 'electron-vite.js'),
    'build',
    '--logLevel',
    'warn',
  ])
) {
  fail('The build failed; see the lines above.');
}
const folder = mkdtempSync(join(tmpdir(), 'trotwell-report-'));
const report = join(folder, 'report.json');
const passed = run(process.execPath, [
  cli('vitest', 'vitest.mjs'),
  'run',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${report}`,
  ...process.argv.slice(2),
]);
const counts = JSON.parse(readFileSync(report, 'utf8')) as Report;
rmSync(folder, { recursive: true, force: true });
const skipped = counts.numPendingTests + counts.numTodoTests;
console.log(`${counts.numPassedTests} passed, ${counts.numFailedTests} failed, ${skipped} skipped`);
process.exit(passed ? 0 : 1);
