import { BrowserWindow, session, type WebContents } from 'electron';
import { APP_ORIGIN } from './channels.ts';

const PAGE = `${APP_ORIGIN}/index.html`;

/** Opens the one window: sandboxed, isolated, without Node, and bound to our own page. */
export function openWindow(preload: string): BrowserWindow {
  const window = new BrowserWindow({
    width: 1280,
    height: 800,
    minWidth: 1024,
    minHeight: 640,
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
  load(window, PAGE);
  return window;
}

/** Leads the window to one of its pages. A page that is already there stays, and its router follows. */
export function showRoute(window: BrowserWindow, route: string): void {
  load(window, `${PAGE}#${route}`);
}

function load(window: BrowserWindow, address: string): void {
  // A second address before the first has arrived takes its place, which is no fault.
  window.loadURL(address).catch(() => undefined);
}

/** Nothing a page does may lead it elsewhere, or open another window or program. */
export function confine(contents: WebContents): void {
  contents.on('will-navigate', (event) => event.preventDefault());
  contents.on('will-frame-navigate', (event) => event.preventDefault());
  contents.on('will-redirect', (event) => event.preventDefault());
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** Denies every permission: the program needs no camera, place, notification or device. */
export function denyPermissions(): void {
  const { defaultSession } = session;
  defaultSession.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  defaultSession.setPermissionCheckHandler(() => false);
  defaultSession.setDevicePermissionHandler(() => false);
}
