import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { app, dialog, type BrowserWindow } from 'electron';
import { claimFolder as claimRecords } from '../service/claim/claim.ts';
import { fileAmong } from '../service/files/openedFile.ts';
import { declareScheme, serveFrontEnd } from './appProtocol.ts';
import { endingOf, type Ending } from './ending.ts';
import { claimFolder } from './folder.ts';
import { registerFiles } from './files.ts';
import { registerCalls } from './ipc.ts';
import { setMenu } from './menu.ts';
import { openingIn } from './opening.ts';
import { registerSaveFile } from './saveFile.ts';
import { startService, type ServiceLink } from './serviceLink.ts';
import { confineSessions } from './session.ts';
import { confine, openWindow } from './window.ts';

const HERE = dirname(fileURLToPath(import.meta.url));

const ANSWERED =
  'It has been asked for a new window there; the address also stands in the terminal it was started from.';
const SILENT =
  'It does not react. End it in the terminal it was started from, then start Trotwell again.';
const NO_SANDBOX =
  'It was started with --no-sandbox, which would take down the wall between its window and this computer. Start it without that word; where the system grants no sandbox, use the browser ("npm start -- --browser").';

let window: BrowserWindow | null = null;
let service: ServiceLink | null = null;
let ending: Ending | null = null;
const opening = openingIn({ service: () => service, window: () => window });

function fontsFolder(): string {
  return app.isPackaged
    ? join(process.resourcesPath, 'fonts')
    : join(app.getAppPath(), 'templates', 'fonts');
}

function start(folder: string): void {
  setMenu(process.platform);
  serveFrontEnd(join(HERE, '..', 'renderer'));
  ending = endingOf({ service: () => service, window: () => window });
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

/** Brings the window to the front. There is none before the start. */
function showWindow(): void {
  if (ending === null) return;
  if (window !== null) {
    if (window.isMinimized()) window.restore();
    window.focus();
    return;
  }
  window = openWindow(join(HERE, '..', 'preload', 'preload.cjs'), {
    cannotShow: (reason) => void fail(`The window cannot show its page: ${reason}.`),
    pageGone: (gone, reason) => void offerReload(gone, reason),
  });
  ending.watchWindow(window);
  window.on('closed', () => {
    window = null;
  });
}

async function offerReload(gone: BrowserWindow, reason: string): Promise<void> {
  if (ending?.begun()) return;
  const { response } = await dialog.showMessageBox(gone, {
    type: 'error',
    message: 'The page of Trotwell has stopped.',
    detail: `Every saved record is kept, and unsaved input up to its last second. The system says: ${reason}.`,
    buttons: ['Load it again', 'Close Trotwell'],
  });
  if (response === 0) gone.webContents.reload();
  else app.quit();
}

/** Says why there is no window, where the user sees it, and ends. */
async function fail(sentence: string): Promise<void> {
  await app.whenReady(); // before that, Linux shows no box
  dialog.showErrorBox('Trotwell cannot start', sentence);
  await service?.close();
  app.exit(1);
}

const sentenceOf = (error: unknown): string =>
  error instanceof Error ? error.message : 'No reason was given.';

function watchApp(): void {
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
  app.on('activate', () => bringToFront(null));
  confineSessions(app);
}

/** Electron's own lock knows other windows of the shell only; a browser window has the other one. */
async function claimThenStart(folder: string): Promise<void> {
  await app.whenReady();
  const claimed = await claimRecords(folder, { file: opening.waiting() });
  if (claimed.kind === 'ours') {
    claimed.claim.onLaterStart(({ file, end = false }) => (end ? app.quit() : bringToFront(file)));
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

/** Brings a file or the window to the front; while Trotwell closes it waits for the next start. */
function bringToFront(file: string | null): void {
  if (ending?.begun()) {
    ending.openAgain(file);
    return;
  }
  showWindow();
  opening.open(file);
}

/** The lock is another window's. Makes sure that there is one, and that it comes to the front. */
async function giveWay(folder: string): Promise<void> {
  const claimed = await claimRecords(folder, { file: null });
  if (claimed.kind === 'answered') {
    console.log('Trotwell is already running on these records; its window comes to the front.');
    app.quit();
  } else if (claimed.kind === 'silent') {
    await fail(`Trotwell is already running on these records. ${SILENT}`);
  } else {
    // The other one has just ended, or the lock of a crash lies in the way.
    claimed.claim.release();
    if (!app.requestSingleInstanceLock()) {
      await fail(`The lock in the folder of records, ${folder}, cannot be taken.`);
      return;
    }
    await claimThenStart(folder);
  }
}

function begin(): Promise<void> {
  if (app.commandLine.hasSwitch('no-sandbox')) return fail(NO_SANDBOX);
  app.enableSandbox();
  declareScheme();
  const claim = claimFolder();
  if (claim.kind === 'refused') return fail(claim.sentence);
  watchApp();
  return claim.kind === 'ours' ? claimThenStart(claim.folder) : giveWay(claim.folder);
}

begin().catch((error: unknown) => fail(sentenceOf(error)));
