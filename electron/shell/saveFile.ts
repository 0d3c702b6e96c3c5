import { randomUUID } from 'node:crypto';
import { rm, writeFile } from 'node:fs/promises';
import { ipcMain, type BrowserWindow } from 'electron';
import { FILE_KINDS, isFileKind, type FileKind } from '../contract/files/kinds.ts';
import { putInPlace } from '../service/backup/durable.ts';
import { SAVE_FILE_CHANNEL } from './channels.ts';
import { chosenPlace, notWritten } from './files.ts';
import { fromOurPage } from './sender.ts';

/** Larger than any handout; a page that hands over more is not ours or is broken. */
const MOST_CHARACTERS = 64 * 1024 * 1024;

/**
 * The page hands over bytes, a suggested name and the kind of file, one of a fixed list; where they
 * go is chosen in the system's dialogue. Answers true once the file is written.
 */
export function registerSaveFile(window: () => BrowserWindow | null): void {
  ipcMain.handle(
    SAVE_FILE_CHANNEL,
    async (event, fileName: unknown, base64: unknown, kind: unknown) => {
      const parent = window();
      if (!fromOurPage(event) || parent === null) return false;
      if (typeof fileName !== 'string' || typeof base64 !== 'string') return false;
      if (!isFileKind(kind) || base64.length > MOST_CHARACTERS) return false;
      const { words, extension } = FILE_KINDS[kind];
      const filter = { name: words, extensions: [extension] };
      const filePath = await chosenPlace(parent, plainName(fileName, kind), filter);
      if (filePath === null) return false;
      return write(parent, filePath, Buffer.from(base64, 'base64'));
    },
  );
}

/** A file name and no more: no folders, no leading dots, the letters of every language. */
function plainName(fileName: string, kind: FileKind): string {
  const kept = fileName.normalize('NFC').replace(/[^\p{L}\p{M}\p{N} ._-]/gu, '');
  return kept.replace(/^[. ]+/, '').slice(0, 120) || `trotwell.${FILE_KINDS[kind].extension}`;
}

/** Written beside it first: what lay there under the name stays whole until the new file is. */
async function write(parent: BrowserWindow, filePath: string, bytes: Buffer): Promise<boolean> {
  const temporary = `${filePath}.${randomUUID()}.part`;
  try {
    await writeFile(temporary, bytes, { flag: 'wx' });
    putInPlace(temporary, filePath);
    return true;
  } catch {
    await rm(temporary, { force: true });
    const why = 'Choose another folder, or free some room on the disk, and save again.';
    return notWritten(parent, filePath, why);
  }
}
