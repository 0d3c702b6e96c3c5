import { dialog } from 'electron';
import { takeOpened } from '../service/files/openedFile.ts';
import { showRoute } from './window.ts';
import type { ServiceLink, ShellRoom } from './serviceLink.ts';

/**
 * Leads the window to a backup that was opened from outside. The path comes from the system and goes
 * to the service only; the page gets a token in its address.
 */
export function openingIn(room: ShellRoom) {
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

  /** Opens a backup file; before the start it waits, and the last one counts. */
  function open(path: string | null): void {
    if (path === null) return;
    const service = room.service();
    if (service === null) early = path;
    else void take(path, service);
  }

  return {
    open,
    /** The file that waits for the start. */
    waiting: (): string | null => early,
    /** Opens what has waited. */
    started(): void {
      open(early);
      early = null;
    },
  };
}
