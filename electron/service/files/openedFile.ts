import { stat } from 'node:fs/promises';
import { basename, extname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Answer } from '../../contract/errors.ts';
import { FILE_PURPOSES, tooLargeSentence, type TakenFile } from '../../contract/files/purposes.ts';

// A backup can be opened from outside: by a double click, or as a word of the start command. Only
// the hosts see its path; the page gets a token, as for every other file.

const ENDING = `.${FILE_PURPOSES.backup.extensions[0]}`;
const { maxBytes } = FILE_PURPOSES.backup;

/**
 * The backup file among the words of a start command, as an absolute path. Some desktops hand files
 * over as `file:` addresses.
 * @param folder where the command was given
 * @returns null when there is none; the last where there are several
 */
export function fileAmong(words: readonly string[], folder: string): string | null {
  const named = words.findLast((word) => !word.startsWith('-') && endsAsBackup(word));
  if (named === undefined) return null;
  if (!/^file:/i.test(named)) return resolve(folder, named);
  try {
    return fileURLToPath(named);
  } catch {
    return null; // an address on another computer
  }
}

const endsAsBackup = (path: string): boolean => extname(path).toLowerCase() === ENDING;

/** Why a file is not even tried: its name, its kind or its size. Null when it may be taken in. */
export async function whyNotTaken(path: string): Promise<string | null> {
  const name = basename(path);
  if (!endsAsBackup(path)) {
    return `${name} is not opened: Trotwell opens its own backups only, whose names end in ${ENDING}.`;
  }
  // Looked at before it is opened: opening a pipe would wait for its other end.
  const found = await stat(path).catch(() => null);
  if (found === null) return `${name} is not there, or may not be read.`;
  if (!found.isFile()) return `${name} is not a file.`;
  return found.size > maxBytes ? tooLargeSentence(maxBytes) : null;
}

/** Takes in a backup that was opened from outside. @returns where the window is to go */
export async function takeOpened(
  takeIn: (name: string, path: string, maxBytes: number) => Promise<Answer<TakenFile>>,
  path: string,
): Promise<Answer<{ readonly route: string }>> {
  const reason = await whyNotTaken(path);
  if (reason !== null) return { ok: false, error: { kind: 'input', message: reason } };
  const taken = await takeIn(basename(path), path, maxBytes);
  return taken.ok ? { ok: true, value: { route: restoreRoute(taken.value) } } : taken;
}

/** The page that shows what is in a backup, with the token of the file. */
function restoreRoute({ token, name }: TakenFile): string {
  return `/restore?file=${encodeURIComponent(token)}&name=${encodeURIComponent(name)}`;
}
