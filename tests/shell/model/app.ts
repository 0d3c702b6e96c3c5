import { EventEmitter } from 'node:events';
import { existsSync } from 'node:fs';
import type { Seen, Setting } from './seen.ts';

/** An event whose default can be prevented. */
export function newEvent() {
  const event = { defaultPrevented: false, preventDefault: () => (event.defaultPrevented = true) };
  return event;
}

const later = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/**
 * Electron's `app`, as its documentation has it (node_modules/electron/electron.d.ts): what may be
 * asked before and after `ready`, and the order of quitting: `before-quit`, each window's `close`,
 * `will-quit`, `quit`; one prevented `close` takes the quitting back, and `window-all-closed` is not
 * told while quitting.
 */
export class App extends EventEmitter {
  readonly isPackaged: boolean;
  readonly commandLine: { hasSwitch(name: string): boolean };
  ready = false;
  private quitting = false;
  private readonly whenItIsReady: Promise<void>;
  private readonly seen: Seen;
  private readonly setting: Setting;

  constructor(seen: Seen, setting: Setting, started: Promise<void>) {
    super();
    this.seen = seen;
    this.setting = setting;
    this.isPackaged = setting.packaged ?? false;
    this.commandLine = { hasSwitch: (name) => (setting.switches ?? []).includes(name) };
    this.whenItIsReady = started.then(async () => {
      await later();
      this.ready = true;
      this.emit('ready');
    });
  }

  /** Refuses what Electron refuses before, or after, the application is ready. */
  demand(ready: boolean, what: string): void {
    if (this.ready === ready) return;
    throw new Error(`${what} can only be used ${ready ? 'after' : 'before'} the app is ready`);
  }

  getAppPath(): string {
    return this.setting.appPath;
  }
  getVersion(): string {
    return '0.0.0-model';
  }
  setPath(name: string, path: string): void {
    if (!existsSync(path)) throw new Error('Failed to set path');
    this.seen.paths[name] = path;
  }
  enableSandbox(): void {
    this.demand(false, 'app.enableSandbox()');
    this.seen.sandboxed = true;
  }
  requestSingleInstanceLock(): boolean {
    const locks = this.setting.locks ?? [true];
    this.seen.lockAsked += 1;
    return locks[this.seen.lockAsked - 1] ?? locks.at(-1)!;
  }
  whenReady(): Promise<void> {
    return this.whenItIsReady;
  }
  relaunch(options: unknown): void {
    this.seen.relaunched.push(options);
  }

  /** Ends at once: no window is asked, and neither `before-quit` nor `will-quit` is told. */
  exit(code = 0): void {
    this.seen.exitCode = code;
    this.seen.order.push('exit');
    this.emit('quit');
  }

  quit(): void {
    if (this.seen.quit || this.seen.exitCode !== null) return;
    const before = newEvent();
    this.seen.order.push('before-quit');
    this.emit('before-quit', before);
    if (before.defaultPrevented) return;
    this.quitting = true;
    for (const window of [...this.seen.windows]) window.close();
    if (this.seen.windows.some((window) => !window.isDestroyed())) {
      this.quitting = false;
      return;
    }
    const will = newEvent();
    this.seen.order.push('will-quit');
    this.emit('will-quit', will);
    if (will.defaultPrevented) return;
    this.seen.quit = true;
    this.seen.order.push('quit');
    this.emit('quit');
  }

  /** Told by a window that has closed. */
  windowClosed(): void {
    if (this.quitting || this.seen.windows.some((window) => !window.isDestroyed())) return;
    this.seen.order.push('window-all-closed');
    if (!this.emit('window-all-closed')) this.quit();
  }
}
