import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { app, Menu, type BrowserWindow } from 'electron';
import { dataFolder } from '../service/dataFolder.ts';
import { declareScheme, serveFrontEnd } from './appProtocol.ts';
import { registerCalls, registerSaveFile } from './ipc.ts';
import { startService, type ServiceLink } from './serviceLink.ts';
import { confine, denyPermissions, openWindow } from './window.ts';

const HERE = dirname(fileURLToPath(import.meta.url));

let window: BrowserWindow | null = null;
let service: ServiceLink | null = null;

function fontsFolder(): string {
  return app.isPackaged
    ? join(process.resourcesPath, 'fonts')
    : join(app.getAppPath(), 'templates', 'fonts');
}

function start(): void {
  // Editing by keyboard needs the edit roles; nothing else of a browser's menu belongs here.
  Menu.setApplicationMenu(
    Menu.buildFromTemplate([{ role: 'fileMenu' }, { role: 'editMenu' }, { role: 'windowMenu' }]),
  );
  denyPermissions();
  serveFrontEnd(join(HERE, '..', 'renderer'));
  service = startService(join(HERE, 'service.js'), {
    folder: dataFolder(),
    fontsFolder: fontsFolder(),
    version: app.getVersion(),
  });
  registerCalls(service);
  registerSaveFile(() => window);
  showWindow();
}

function showWindow(): void {
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

app.setPath('userData', dataFolder());
// Chromium's own files stay out of the folder of records.
app.setPath('sessionData', join(dataFolder(), 'window'));
app.enableSandbox();
declareScheme();

if (!app.requestSingleInstanceLock()) {
  app.quit();
} else {
  app.on('second-instance', showWindow);
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
  void app.whenReady().then(start);
}
