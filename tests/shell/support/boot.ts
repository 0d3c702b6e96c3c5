import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isBuilt } from '../../../electron/launch/build.mjs';

export const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const at = (name: string): string => join(ROOT, 'tests', 'shell', 'standIn', name);

/** The shell is tested as built, and never as it was built before something changed. */
export function demandBuild(): void {
  if (!isBuilt(ROOT)) throw new Error('The shell is tested as built: "npm run build" first.');
}

// eslint-disable-next-line @typescript-eslint/no-explicit-any -- a report in JSON, asserted by tests
type Report = any;

/**
 * Boots the built main bundle against the stand-in of the `electron` module, with the built preload
 * and the built service in a process of its own, and returns what a script of tests/shell/standIn saw.
 * @param words the words of the start command
 */
export function boot(
  env: Record<string, string>,
  script = 'probe.mjs',
  words: readonly string[] = [],
): Report {
  demandBuild();
  const args = ['--import', at('register.mjs'), at(script), ...words];
  const output = execFileSync(process.execPath, args, {
    cwd: ROOT,
    encoding: 'utf8',
    env: { ...process.env, ...env },
    timeout: 60_000,
  });
  return JSON.parse(output.trim().split('\n').at(-1)!);
}
