import { basename } from 'node:path';
import { dialog, ipcMain, type BrowserWindow, type FileFilter } from 'electron';
import type { Answer } from '../contract/errors.ts';
import {
  FILE_PURPOSES,
  isFilePurpose,
  type ChosenFile,
  type FilePurpose,
  type TakenFile,
} from '../contract/files/purposes.ts';
import { plainFileName } from '../contract/files/name.ts';
import {
  CHOOSE_FILE_CHANNEL,
  CHOOSE_FILES_CHANNEL,
  DROP_FILE_CHANNEL,
  SAVE_PRODUCED_CHANNEL,
} from './channels.ts';
import { fromOurPage, STRANGER } from './sender.ts';
import type { ServiceLink } from './serviceLink.ts';

// The page says what a file is for and gets a token. Every path comes from the system's dialogue
// and goes to the service only.

/** A dropped file crosses in one piece, in memory; larger ones come by the dialogue. */
const MOST_DROPPED = Math.max(FILE_PURPOSES.attachment.maxBytes, FILE_PURPOSES.csv.maxBytes);

/** Registers the dialogues of files, and the taking in of a dropped one. */
export function registerFiles(window: () => BrowserWindow | null, service: ServiceLink): void {
  ipcMain.handle(CHOOSE_FILE_CHANNEL, async (event, purpose: unknown) => {
    const parent = window();
    if (!fromOurPage(event) || parent === null || !isFilePurpose(purpose)) return STRANGER;
    return choose(parent, service, purpose);
  });
  ipcMain.handle(CHOOSE_FILES_CHANNEL, async (event, purpose: unknown) => {
    const parent = window();
    if (!fromOurPage(event) || parent === null || !isFilePurpose(purpose)) return STRANGER;
    return { ok: true, value: await chooseSeveral(parent, service, purpose) };
  });
  ipcMain.handle(DROP_FILE_CHANNEL, (event, name: unknown, bytes: unknown, purpose: unknown) => {
    if (!fromOurPage(event) || !isFilePurpose(purpose)) return STRANGER;
    if (typeof name !== 'string' || !(bytes instanceof Uint8Array)) return STRANGER;
    const maxBytes = Math.min(FILE_PURPOSES[purpose].maxBytes, MOST_DROPPED);
    return service.takeIn(name, bytes, maxBytes);
  });
  ipcMain.handle(
    SAVE_PRODUCED_CHANNEL,
    async (event, token: unknown, name: unknown, purpose: unknown) => {
      const parent = window();
      if (!fromOurPage(event) || parent === null || !isFilePurpose(purpose)) return false;
      if (typeof token !== 'string' || typeof name !== 'string') return false;
      return save(parent, service, { token, name, purpose });
    },
  );
}

function filterOf(purpose: FilePurpose): FileFilter {
  const { label, extensions } = FILE_PURPOSES[purpose];
  return { name: label, extensions: [...extensions] };
}

async function chosenPaths(
  parent: BrowserWindow,
  purpose: FilePurpose,
  properties: ('openFile' | 'multiSelections')[],
): Promise<readonly string[]> {
  const { canceled, filePaths } = await dialog.showOpenDialog(parent, {
    properties,
    filters: [filterOf(purpose)],
  });
  return canceled ? [] : filePaths;
}

async function choose(
  parent: BrowserWindow,
  service: ServiceLink,
  purpose: FilePurpose,
): Promise<Answer<TakenFile | null>> {
  const [path] = await chosenPaths(parent, purpose, ['openFile']);
  if (path === undefined) return { ok: true, value: null };
  return service.takeIn(basename(path), path, FILE_PURPOSES[purpose].maxBytes);
}

/** Takes in every file that is chosen, one after the other; one that cannot be read stops no other. */
async function chooseSeveral(
  parent: BrowserWindow,
  service: ServiceLink,
  purpose: FilePurpose,
): Promise<readonly ChosenFile[]> {
  const chosen: ChosenFile[] = [];
  for (const path of await chosenPaths(parent, purpose, ['openFile', 'multiSelections'])) {
    const name = basename(path);
    const taken = await service.takeIn(name, path, FILE_PURPOSES[purpose].maxBytes);
    chosen.push({ name, taken });
  }
  return chosen;
}

interface Produced {
  readonly token: string;
  readonly name: string;
  readonly purpose: FilePurpose;
}

async function save(parent: BrowserWindow, service: ServiceLink, made: Produced): Promise<boolean> {
  const name = plainFileName(made.name, `file.${FILE_PURPOSES[made.purpose].extensions[0]}`);
  const path = await chosenPlace(parent, name, filterOf(made.purpose));
  if (path === null) return false;
  const answer = await service.writeOut(made.token, path);
  return answer.ok || notWritten(parent, path, answer.error.message);
}

/** Where a file is to go; null where the dialogue was left. */
export async function chosenPlace(
  parent: BrowserWindow,
  defaultPath: string,
  filter: FileFilter,
): Promise<string | null> {
  const asked = { defaultPath, filters: [filter] };
  const { canceled, filePath } = await dialog.showSaveDialog(parent, asked);
  return canceled || filePath === '' ? null : filePath;
}

/** Says that and why a file was not written. */
export async function notWritten(parent: BrowserWindow, path: string, why: string): Promise<false> {
  await dialog.showMessageBox(parent, {
    type: 'error',
    message: 'The file could not be written.',
    detail: `${path}\n${why}`,
  });
  return false;
}
