import { EventEmitter } from 'node:events';
import { newEvent, type App } from './app.ts';
import type { Seen } from './seen.ts';

export class Contents extends EventEmitter {
  openHandler: ((details: { url: string }) => unknown) | null = null;
  reloads = 0;
  private readonly toPage: EventEmitter;

  constructor(toPage: EventEmitter) {
    super();
    this.toPage = toPage;
  }
  setWindowOpenHandler(handler: (details: { url: string }) => unknown): void {
    this.openHandler = handler;
  }
  /** What is sent is cloned; a page that has crashed hears nothing. */
  send(channel: string, ...args: unknown[]): void {
    const copies = structuredClone(args);
    setImmediate(() => this.toPage.emit(channel, { sender: 'main' }, ...copies));
  }
  reload(): void {
    this.reloads += 1;
  }
}

export interface Session extends EventEmitter {
  name: string;
}

/**
 * Electron's `BrowserWindow`: none before `ready`; hidden until shown; `ready-to-show` comes once its
 * page is drawn; a second address takes the place of one that has not arrived; closing can be
 * prevented, and what is destroyed answers no more.
 */
export function windowClass(seen: Seen, app: App, toPage: EventEmitter, makeSession: () => void) {
  return class BrowserWindow extends EventEmitter {
    readonly webContents = new Contents(toPage);
    readonly options: Record<string, unknown>;
    url = '';
    visible: boolean;
    focused = 0;
    private destroyed = false;
    private loading = 0;

    constructor(options: Record<string, unknown>) {
      super();
      app.demand(true, 'A BrowserWindow');
      makeSession();
      this.options = options;
      this.visible = options['show'] !== false;
      seen.windows.push(this);
      app.emit('web-contents-created', newEvent(), this.webContents);
    }
    loadURL(url: string): Promise<void> {
      this.alive();
      this.url = url;
      seen.addresses.push(url);
      const mine = (this.loading += 1);
      return new Promise((resolve, reject) => {
        setImmediate(() => {
          if (mine !== this.loading) {
            this.webContents.emit('did-fail-load', newEvent(), -3, 'ERR_ABORTED', url, true);
            reject(new Error(`ERR_ABORTED (-3) loading '${url}'`));
            return;
          }
          if (!this.destroyed) this.emit('ready-to-show');
          resolve();
        });
      });
    }
    show(): void {
      this.alive();
      this.visible = true;
    }
    hide(): void {
      this.alive();
      this.visible = false;
      seen.order.push('hide');
    }
    focus(): void {
      this.alive();
      this.focused += 1;
    }
    isMinimized(): boolean {
      return false;
    }
    isDestroyed(): boolean {
      return this.destroyed;
    }
    close(): void {
      if (this.destroyed) return;
      const event = newEvent();
      seen.order.push('close');
      this.emit('close', event);
      if (event.defaultPrevented) return;
      this.destroyed = true;
      this.emit('closed');
      app.windowClosed();
    }
    private alive(): void {
      if (this.destroyed) throw new TypeError('Object has been destroyed');
    }
  };
}
