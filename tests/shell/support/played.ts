import { EventEmitter } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished, vi } from 'vitest';
import { createElectron } from '../model/electron.ts';
import type { Setting, UtilityChild } from '../model/seen.ts';
import { demandBuild, ROOT } from './boot.ts';

/** A service process that says only what a test has it say, and ends when it is told to close. */
export class PlayedChild extends EventEmitter implements UtilityChild {
  readonly told: { kind: string; name?: string }[] = [];
  /** A service that is at work on a large backup does not end at once. */
  endsAtOnce = true;

  postMessage(message: unknown): void {
    const { kind, id, name } = message as { kind: string; id: number; name?: string };
    this.told.push(name === undefined ? { kind } : { kind, name });
    if (kind !== 'close') {
      setImmediate(() => this.emit('message', { id, answer: { ok: true, value: null } }));
    } else if (this.endsAtOnce) setImmediate(() => this.emit('exit', 0));
  }
  kill(): boolean {
    this.emit('exit', 15);
    return true;
  }
}

interface Played extends Partial<Setting> {
  /** The words after those of the program itself. */
  readonly words?: readonly string[];
  readonly folder?: string;
}

/** Starts the built main bundle in this process on the model, without any process of its own. */
export async function play({ words = [], folder = newFolder(), ...setting }: Played = {}) {
  demandBuild();
  const child = new PlayedChild();
  // Electron is ready no sooner than the main module has run.
  const { promise: hasRun, resolve: run } = Promise.withResolvers<void>();
  const { electron, seen } = createElectron(
    { appPath: ROOT, fork: () => child, ...setting },
    hasRun,
  );
  vi.resetModules();
  vi.doMock('electron', () => electron);
  vi.stubEnv('TROTWELL_DATA', folder);
  const platform = Object.getOwnPropertyDescriptor(process, 'platform')!;
  Object.defineProperty(process, 'platform', { ...platform, value: setting.platform ?? 'linux' });
  const { argv } = process;
  process.argv = ['/opt/electron', ROOT, ...words];
  onTestFinished(() => {
    process.argv = argv;
    Object.defineProperty(process, 'platform', platform);
    vi.unstubAllEnvs();
    vi.doUnmock('electron');
  });
  const main = join(ROOT, 'out', 'main', 'main.js');
  await import(main);
  run();
  const started = (): boolean =>
    seen.windows.length > 0 || seen.quit || seen.exitCode !== null || seen.messages.length > 0;
  await vi.waitUntil(started, { timeout: 20_000 });
  return { electron, seen, child, folder, window: seen.windows[0] };
}

function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'trotwell-played-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Loads the built preload, as the page's window would. @returns the page's side of the bridge */
export function loadPreload({
  electron,
  seen,
}: Pick<Awaited<ReturnType<typeof play>>, 'electron' | 'seen'>) {
  const file = join(ROOT, 'out', 'preload', 'preload.cjs');
  const require = createRequire(file);
  const source = readFileSync(file, 'utf8');
  // A sandboxed preload gets `electron` from a `require` of its own.

  new Function('require', source)((name: string) =>
    name === 'electron' ? electron : require(name),
  );
  return seen.bridge.api;
}
