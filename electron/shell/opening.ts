import { dialog, type BrowserWindow } from 'electron';
import { takeOpened } from '../service/files/openedFile.ts';
import { showRoute } from './window.ts';
import type { ServiceLink } from './serviceLink.ts';

/** What opening a file needs of the shell; there is no service before the start and while closing. */
export interface OpeningRoom {
  service(): ServiceLink | null;
  window(): BrowserWindow | null;
}

export interface Opening {
  /** Opens a backup file; before the start it waits, and the last one counts. */
  open(path: string | null): void;
  /** The file that waits for the start. */
  waiting(): string | null;
  /** Opens what has waited. */
  started(): void;
}

/**
 * Leads the window to a backup that was opened from outside. The path comes from the system and goes
 * to the service only; the page gets a token in its address.
 */
export function openingIn(room: OpeningRoom): Opening {
  let early: string | null = null;

  async function take(path: string, service: ServiceLink): Promise<void> {
    const answer = await takeOpened(service.takeIn, path);
    const window = room.window();
    if (window === null) return;
    if (answer.ok) {
      showRoute(window, answer.value.route);
      return;
    }
    await dialog.showMessageBox(window, {
      type: 'error',
      message: 'The file could not be opened.',
      detail: answer.error.message,
    });
  }

  function open(path: string | null): void {
    if (path === null) return;
    const service = room.service();
    if (service === null) early = path;
    else void take(path, service);
  }

  return {
    open,
    waiting: () => early,
    started() {
      open(early);
      early = null;
    },
  };
}
