import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { app, dialog, Menu, type BrowserWindow } from 'electron';
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
  app.on('second-instance', (_event, words, workingFolder) => {
    showWindow();
    opening.open(fileAmong(words, workingFolder));
  });
  // macOS hands a file over by this event, also before the start is done; others by the words.
  app.on('open-file', (event, path) => {
    event.preventDefault();
    showWindow();
    opening.open(path);
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
  void app.whenReady().then(() => start(folder));
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
