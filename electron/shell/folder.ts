import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { app } from 'electron';
import { dataFolder } from '../service/database/dataFolder.ts';

export type FolderClaim =
  | { readonly kind: 'ours'; readonly folder: string }
  /** Another window of Trotwell holds the lock; as a rule it has been brought to the front. */
  | { readonly kind: 'taken'; readonly folder: string }
  | { readonly kind: 'refused'; readonly sentence: string };

/**
 * Makes the folder of records Electron's own folder and locks it against a second window. Must run
 * before the app is ready. Electron throws on a path that is relative or not there yet.
 */
export function claimFolder(): FolderClaim {
  const folder = resolve(dataFolder());
  // Chromium's own files stay out of the folder of records.
  const chromiumFolder = join(folder, 'window');
  try {
    mkdirSync(chromiumFolder, { recursive: true, mode: 0o700 });
    app.setPath('userData', folder);
    app.setPath('sessionData', chromiumFolder);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    return {
      kind: 'refused',
      sentence: `The folder of records, ${folder}, cannot be made or written (${code ?? 'no reason given'}).`,
    };
  }
  return { kind: app.requestSingleInstanceLock() ? 'ours' : 'taken', folder };
}
