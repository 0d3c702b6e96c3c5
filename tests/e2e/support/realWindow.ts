import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { _electron, chromium, type Browser, type ElectronApplication } from 'playwright-core';
import type { Page } from 'playwright-core';
import { findRuntime } from '../../../electron/launch/runtime.mjs';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const DEVTOOLS_LIMIT_MS = 30_000;

/** Electron's program, where it was fetched. */
export const program = findRuntime(join(ROOT, 'node_modules', 'electron'));
/** The program of an installed package, where one is named. */
export const packaged = process.env['TROTWELL_PACKAGED'] ?? null;

/** Why no window can be opened here; null where one can. */
export function whyNoWindow(path: string | null): string | null {
  if (path === null) return 'no Electron runtime on this machine';
  if (process.platform !== 'linux') return null;
  if (!process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY']) return 'no display for a window';
  return process.getuid?.() === 0 ? 'Electron keeps its sandbox, so it does not run as root' : null;
}

const envFor = (folder: string): Record<string, string> => ({
  ...(process.env as Record<string, string>),
  TROTWELL_DATA: folder,
});

/** Starts the built program in the real runtime, which writes down every address it goes to. */
export async function launched(
  folder: string,
  netLog: string,
): Promise<{ app: ElectronApplication; page: Page }> {
  const app = await _electron.launch({
    executablePath: program!,
    args: [ROOT, `--log-net-log=${netLog}`],
    env: envFor(folder),
  });
  return { app, page: await app.firstWindow() };
}

/** Starts it again while it runs. @returns its exit code */
export async function startedAgain(folder: string): Promise<number | null> {
  const child = spawn(program!, [ROOT], { env: envFor(folder), stdio: 'ignore' });
  await once(child, 'exit');
  return child.exitCode;
}

/** The addresses of a network log that are not of our own scheme, nor inside of the page. */
export function addressesIn(netLog: string): string[] {
  const found = readFileSync(netLog, 'utf8').matchAll(/"url":"([^"]+)"/g);
  const all = [...found].map(([, url]) => url!);
  return all.filter((url) => !/^(trotwell|data|blob|devtools|about|chrome):/.test(url));
}

export const backupsIn = (folder: string): string[] => {
  const place = join(folder, 'backups');
  return existsSync(place) ? readdirSync(place).filter((name) => name.endsWith('.sqlite')) : [];
};

/**
 * Starts an installed package by its path. Its fuses let nobody look into its main process, so it is
 * watched as any page of a browser is.
 */
export async function launchedPackage(
  folder: string,
): Promise<{ child: ChildProcess; browser: Browser; page: Page }> {
  const child = spawn(packaged!, ['--remote-debugging-port=0'], {
    env: envFor(folder),
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  const late = AbortSignal.timeout(DEVTOOLS_LIMIT_MS);
  let words = '';
  child.stderr!.on('data', (part: Buffer) => (words += part.toString()));
  for (;;) {
    const [, address] = /DevTools listening on (ws:\S+)/.exec(words) ?? [];
    if (address !== undefined) {
      const browser = await chromium.connectOverCDP(address);
      const [context] = browser.contexts();
      const page = context!.pages()[0] ?? (await context!.waitForEvent('page'));
      return { child, browser, page };
    }
    await once(child.stderr!, 'data', { signal: late });
  }
}
