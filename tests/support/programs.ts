import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { findChromium } from './chromium.ts';

const PLAYWRIGHT = fileURLToPath(
  new URL('../../node_modules/playwright-core/cli.js', import.meta.url),
);
const DOWNLOAD_LIMIT_MS = 180_000;
const APT_LIMIT_MS = 600_000;

/** The programs that read PDFs, and the Debian package each comes in. */
const PDF_READERS = {
  pdftotext: 'poppler-utils',
  qpdf: 'qpdf',
  mutool: 'mupdf-tools',
} as const;

const isThere = (command: string): boolean =>
  spawnSync(command, ['--version'], { stdio: 'ignore' }).error === undefined;

function installByApt(packages: readonly string[]): void {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !isThere('apt-get')) return;
  console.log(`Installing ${packages.join(', ')} …`);
  const apt = (...args: string[]) =>
    spawnSync('apt-get', ['-qq', ...args], {
      stdio: 'ignore',
      timeout: APT_LIMIT_MS,
      killSignal: 'SIGKILL',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
  apt('update');
  apt('install', '-y', '--no-install-recommends', ...packages);
}

/**
 * Gets a Chromium where there is none: Playwright's own where it can be downloaded, else Debian's.
 * @returns a sentence that says what to do when none could be had; otherwise null
 */
export function ensureChromium(): string | null {
  if (findChromium() !== null) return null;
  console.log('No Chromium found; fetching one …');
  spawnSync(process.execPath, [PLAYWRIGHT, 'install', 'chromium'], {
    stdio: 'ignore',
    timeout: DOWNLOAD_LIMIT_MS,
    killSignal: 'SIGKILL',
  });
  if (findChromium() === null) installByApt(['chromium-headless-shell']);
  if (findChromium() === null) installByApt(['chromium']);
  if (findChromium() !== null) return null;
  return (
    'The browser tests need Chromium, and none could be fetched. Install it (Debian, as root: ' +
    '"apt-get install chromium"), or name one in the environment variable TROTWELL_CHROMIUM.'
  );
}

/**
 * Gets the programs that read PDFs where they are missing. Tests that use qpdf or mutool report
 * themselves as skipped without it, except in CI, where a missing one is a failure.
 * @returns a sentence that says what to do when one could not be had; otherwise null
 */
export function ensurePdfReaders(): string | null {
  const missing = () => Object.entries(PDF_READERS).filter(([command]) => !isThere(command));
  if (missing().length > 0) installByApt(missing().map(([, from]) => from));
  const needed = missing().filter(([command]) => command === 'pdftotext' || process.env['CI']);
  if (needed.length === 0) return null;
  return (
    `The handout tests need ${needed.map(([command]) => command).join(' and ')}. Install it ` +
    `(Debian, as root: "apt-get install ${needed.map(([, from]) => from).join(' ')}").`
  );
}
