import { spawn } from 'node:child_process';
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';

/** A note of a fetch that is older than this is of a process long gone, whoever has its number now. */
const STALE_MS = 24 * 60 * 60 * 1000;
const LOOK_EVERY_MS = 200;
const SAY_EVERY_MS = 5_000;

/**
 * The Electron program inside its package's folder. The package's installer writes `path.txt` last,
 * so a download that was cut short counts as missing.
 * @param {string} folder
 * @returns {string | null}
 */
export function findRuntime(folder) {
  const named = join(folder, 'path.txt');
  if (!existsSync(named)) return null;
  const program = join(folder, 'dist', readFileSync(named, 'utf8').trim());
  return existsSync(program) ? program : null;
}

/**
 * Has the package's own installer fetch the program, and waits for it for a bounded time. On a slow
 * line it goes on in the background, also after this start has ended; a later start waits for the
 * same one, so that nothing begins again from the first byte.
 * @param {string} folder the package's
 * @param {string} place a folder of our own, where what has arrived so far lies
 * @param {number} limitMs
 * @param {(words: string) => void} say progress, in words
 * @returns {Promise<{ program: string } | { program: null, sentence: string }>}
 */
export async function fetchRuntime(folder, place, limitMs, say) {
  const installer = join(folder, 'install.js');
  if (!existsSync(installer)) return failed('its package is not installed');
  if (!isFetching(place)) startFetching(installer, folder, place);
  const began = Date.now();
  let said = began;
  while (isFetching(place) && Date.now() - began < limitMs) {
    await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS));
    if (Date.now() - said < SAY_EVERY_MS) continue;
    said = Date.now();
    say(`… ${megabytes(place)} MB so far`);
  }
  if (isFetching(place)) {
    return {
      program: null,
      sentence: `The Electron runtime is still on its way (${megabytes(place)} MB so far) and goes on in the background; a later start opens the window.`,
    };
  }
  const program = findRuntime(folder);
  const words = lastWords(place);
  rmSync(place, { recursive: true, force: true });
  return program === null ? failed(words) : { program };
}

/** @param {string} why */
function failed(why) {
  return {
    program: null,
    sentence: `The Electron runtime could not be fetched (${why}). "npx install-electron" tries again and shows more.`,
  };
}

/**
 * @param {string} installer
 * @param {string} folder
 * @param {string} place
 */
function startFetching(installer, folder, place) {
  rmSync(place, { recursive: true, force: true });
  const temporary = join(place, 'part');
  mkdirSync(temporary, { recursive: true });
  const words = openSync(join(place, 'words'), 'a');
  const child = spawn(process.execPath, [installer], {
    cwd: folder,
    detached: true,
    windowsHide: true,
    stdio: ['ignore', words, words],
    env: {
      ...process.env,
      // Where a proxy is set, Node takes it up by this word only.
      NODE_USE_ENV_PROXY: '1',
      ELECTRON_GET_NO_PROGRESS: '1',
      TMPDIR: temporary,
      TEMP: temporary,
      TMP: temporary,
    },
  });
  closeSync(words);
  child.on('error', () => undefined);
  child.unref();
  writeFileSync(join(place, 'process'), String(child.pid ?? 0));
  child.once('exit', () => rmSync(join(place, 'process'), { force: true }));
}

/**
 * True while a fetch of this start or an earlier one is at work.
 * @param {string} place
 */
function isFetching(place) {
  const note = join(place, 'process');
  try {
    if (Date.now() - statSync(note).mtimeMs > STALE_MS) return false;
    const id = Number(readFileSync(note, 'utf8'));
    return id > 0 && process.kill(id, 0);
  } catch {
    return false;
  }
}

/** @param {string} place */
function megabytes(place) {
  try {
    const part = join(place, 'part');
    const bytes = readdirSync(part, { recursive: true, encoding: 'utf8' })
      .map((name) => statSync(join(part, name)))
      .reduce((sum, stat) => sum + (stat.isFile() ? stat.size : 0), 0);
    return Math.round(bytes / 1_000_000);
  } catch {
    return 0; // a file was renamed as it was looked at
  }
}

/** @param {string} place */
function lastWords(place) {
  try {
    const lines = readFileSync(join(place, 'words'), 'utf8').trim().split('\n');
    return lines.find((line) => /error/i.test(line))?.trim() || 'no reason given';
  } catch {
    return 'no reason given';
  }
}
