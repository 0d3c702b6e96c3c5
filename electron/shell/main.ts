import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { app, dialog, Menu, type BrowserWindow } from 'electron';
import { claimFolder as claimRecords } from '../service/claim/claim.ts';
import { fileAmong } from '../service/openedFile.ts';
import { declareScheme, serveFrontEnd } from './appProtocol.ts';
import { claimFolder } from './folder.ts';
import { registerFiles } from './files.ts';
import { registerCalls } from './ipc.ts';
import { openingIn } from './opening.ts';
import { registerSaveFile } from './saveFile.ts';
import { startService, type ServiceLink } from './serviceLink.ts';
import { confine, denyPermissions, openWindow } from './window.ts';

const HERE = dirname(fileURLToPath(import.meta.url));

const ANSWERED =
  'It has been asked for a new window there; the address also stands in the terminal it was started from.';
const SILENT =
  'It does not react. End it in the terminal it was started from, then start Trotwell again.';

let window: BrowserWindow | null = null;
let service: ServiceLink | null = null;
const opening = openingIn({ service: () => service, window: () => window });

function fontsFolder(): string {
  return app.isPackaged
    ? join(process.resourcesPath, 'fonts')
    : join(app.getAppPath(), 'templates', 'fonts');
}

function start(folder: string): void {
  // Editing by keyboard needs the edit roles; nothing else of a browser's menu belongs here.
  Menu.setApplicationMenu(
    Menu.buildFromTemplate([{ role: 'fileMenu' }, { role: 'editMenu' }, { role: 'windowMenu' }]),
  );
  denyPermissions();
  serveFrontEnd(join(HERE, '..', 'renderer'));
  service = startService(join(HERE, 'service.js'), {
    folder,
    fontsFolder: fontsFolder(),
    version: app.getVersion(),
  });
  registerCalls(service);
  registerSaveFile(() => window);
  registerFiles(() => window, service);
  showWindow();
  opening.started();
}

/** Brings the window to the front. There is none before the start or once the records are closing. */
function showWindow(): void {
  if (service === null) return;
  if (window !== null) {
    if (window.isMinimized()) window.restore();
    window.focus();
    return;
  }
  window = openWindow(join(HERE, '..', 'preload', 'preload.cjs'));
  window.on('closed', () => {
    window = null;
  });
}

async function closeThenQuit(link: ServiceLink): Promise<void> {
  await link.close();
  app.quit();
}

function watchApp(folder: string): void {
  app.on('second-instance', (_event, words, workingFolder) =>
    bringToFront(fileAmong(words, workingFolder)),
  );
  // macOS hands a file over by this event, also before the start is done; others by the words.
  app.on('open-file', (event, path) => {
    event.preventDefault();
    bringToFront(path);
  });
  opening.open(fileAmong(process.argv.slice(1), process.cwd()));
  app.on('web-contents-created', (_event, contents) => confine(contents));
  app.on('window-all-closed', () => app.quit());
  app.on('activate', showWindow);
  app.on('before-quit', (event) => {
    if (service === null) return;
    event.preventDefault();
    const link = service;
    service = null;
    void closeThenQuit(link);
  });
  void app.whenReady().then(() => claimThenStart(folder));
}

/** Electron's own lock knows other windows of the shell only; a browser window has the other one. */
async function claimThenStart(folder: string): Promise<void> {
  const claimed = await claimRecords(folder, { file: opening.waiting() });
  if (claimed.kind === 'ours') {
    claimed.claim.onLaterStart(({ file }) => bringToFront(file));
    start(folder);
    return;
  }
  await dialog.showMessageBox({
    type: 'info',
    message: 'Trotwell is already running on these records, in a browser.',
    detail: claimed.kind === 'answered' ? ANSWERED : SILENT,
  });
  app.quit();
}

function bringToFront(file: string | null): void {
  showWindow();
  opening.open(file);
}

app.enableSandbox();
declareScheme();
const claim = claimFolder();
if (claim.kind === 'taken') {
  app.quit();
} else if (claim.kind === 'refused') {
  dialog.showErrorBox('Trotwell cannot start', claim.sentence);
  app.exit(1);
} else {
  watchApp(claim.folder);
}
