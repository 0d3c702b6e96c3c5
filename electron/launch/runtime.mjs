import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

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
 * Has the package's own installer fetch the program, for a bounded time.
 * @param {string} folder
 * @param {number} limitMs
 * @returns {string | null} the program, or null when it could not be had
 */
export function fetchRuntime(folder, limitMs) {
  const installer = join(folder, 'install.js');
  if (!existsSync(installer)) return null;
  spawnSync(process.execPath, [installer], {
    cwd: folder,
    stdio: 'ignore',
    timeout: limitMs,
    killSignal: 'SIGKILL',
  });
  return findRuntime(folder);
}
