import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const SOURCES = [
  'core',
  'electron',
  'renderer',
  'templates',
  'electron.vite.config.ts',
  'package.json',
];
/** The front end is built last, so its page is the youngest part of a whole build. */
const BUILT = [
  'out/main/main.js',
  'out/main/loopback.js',
  'out/preload/preload.cjs',
  'out/renderer/index.html',
];

/**
 * The time of the youngest file below a path; a folder's own time shows what was removed from it.
 * @param {string} path
 * @returns {number} milliseconds
 */
function youngest(path) {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return readdirSync(path).reduce(
    (time, name) => Math.max(time, youngest(join(path, name))),
    stat.mtimeMs,
  );
}

/**
 * True when every part of a build is there, however old.
 * @param {string} root the project's folder
 */
export function isWhole(root) {
  return BUILT.every((path) => existsSync(join(root, path)));
}

/**
 * True when everything is built and nothing it was built from is younger.
 * @param {string} root the project's folder
 */
export function isBuilt(root) {
  if (!isWhole(root)) return false;
  const finished = statSync(join(root, /** @type {string} */ (BUILT.at(-1)))).mtimeMs;
  return SOURCES.map((path) => join(root, path))
    .filter((path) => existsSync(path))
    .every((path) => youngest(path) <= finished);
}

/**
 * Builds into `out/`.
 * @param {string} root the project's folder
 * @returns {boolean} false when the build failed; it has said why
 */
export function build(root) {
  const cli = join(root, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js');
  const run = spawnSync(process.execPath, [cli, 'build', '--logLevel', 'warn'], {
    cwd: root,
    stdio: 'inherit',
  });
  return run.status === 0;
}
