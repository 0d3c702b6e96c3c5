import { BrowserWindow, screen, type WebContents } from 'electron';
import { APP_ORIGIN } from './channels.ts';
import { showContextMenu } from './menu.ts';

const PAGE = `${APP_ORIGIN}/index.html`;
/** Chromium's word for an address that another one took the place of. */
const ABORTED = -3;

/** What the window cannot mend by itself. */
export interface Faults {
  /** The page never came: there is no window to show. */
  cannotShow(reason: string): void;
  /** The page's process has ended. */
  pageGone(window: BrowserWindow, reason: string): void;
}

/** Opens the one window: sandboxed, isolated, without Node, and bound to our own page. */
export function openWindow(preload: string, faults: Faults): BrowserWindow {
  const room = screen.getPrimaryDisplay().workAreaSize;
  const window = new BrowserWindow({
    width: Math.min(1280, room.width),
    height: Math.min(800, room.height),
    // A screen of 1080 lines has 360 of them at 300 %, less its bar; the pages fold to this width.
    minWidth: 640,
    minHeight: 320,
    show: false,
    title: 'Trotwell',
    webPreferences: {
      preload,
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
    },
  });
  window.once('ready-to-show', () => window.show());
  tellFaults(window, faults);
  load(window, PAGE);
  return window;
}

function tellFaults(window: BrowserWindow, faults: Faults): void {
  const contents = window.webContents;
  contents.on('did-fail-load', (_event, code, words, _address, isMainFrame) => {
    if (isMainFrame && code !== ABORTED) faults.cannotShow(`${words} (${code})`);
  });
  contents.on('preload-error', (_event, _path, error) => faults.cannotShow(error.message));
  contents.on('render-process-gone', (_event, { reason }) => {
    if (reason !== 'clean-exit') faults.pageGone(window, reason);
  });
}

/** Leads the window to one of its pages. A page that is already there stays, and its router follows. */
export function showRoute(window: BrowserWindow, route: string): void {
  load(window, `${PAGE}#${route}`);
}

function load(window: BrowserWindow, address: string): void {
  // What fails is told by `did-fail-load`; a second address before the first has arrived is no fault.
  window.loadURL(address).catch(() => undefined);
}

/** Nothing a page does may lead it elsewhere, or open another window or program. */
export function confine(contents: WebContents): void {
  contents.on('will-navigate', (event) => event.preventDefault());
  contents.on('will-frame-navigate', (event) => event.preventDefault());
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  contents.on('context-menu', (_event, at) => showContextMenu(at));
}
