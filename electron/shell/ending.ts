import { app, ipcMain, powerMonitor, type BrowserWindow } from 'electron';
import { fileAmong } from '../service/files/openedFile.ts';
import { LEAVE_CHANNEL, LEFT_CHANNEL } from './channels.ts';
import { fromOurPage } from './sender.ts';
import type { ShellRoom } from './serviceLink.ts';

/** How long the page may take to hand over what was typed last, in milliseconds. Ours (D). */
const LEAVE_LIMIT_MS = 2_000;

/**
 * The end of the program, by whatever way: the page hands over what was typed last, the window hides,
 * the service closes with its backup, then Electron quits. Must begin once the app is ready.
 */
export function endingOf(room: ShellRoom) {
  let state: 'open' | 'closing' | 'over' = 'open';
  let again: { file: string | null } | null = null;
  const page = pageHandingOver();

  async function finish(): Promise<void> {
    const window = room.window();
    if (window !== null) await page.leave(window);
    // Nothing can be typed any more; a large backup may take a while.
    room.window()?.hide();
    await room.service()?.close();
    state = 'over';
    app.quit();
  }

  function holdUp(event: Electron.Event): void {
    if (state === 'over' || room.service() === null) return;
    event.preventDefault();
    if (state === 'closing') return;
    state = 'closing';
    void finish();
  }

  /** The system ends and waits for nobody: what can still be saved is, and nothing is held up. */
  function cutShort(): void {
    const before = state;
    state = 'over';
    if (before === 'open') void finish();
  }

  app.on('before-quit', holdUp);
  app.on('will-quit', () => {
    if (again !== null) app.relaunch({ args: wordsFor(again.file) });
  });
  powerMonitor.on('shutdown', cutShort);
  return {
    /** Closing the window ends the program, as quitting does. */
    watchWindow(window: BrowserWindow): void {
      window.on('close', holdUp);
      window.on('session-end', cutShort);
    },
    /** True from the moment Trotwell closes. */
    begun: (): boolean => state !== 'open',
    /** Opens Trotwell again once it is closed, with the file that a start during closing brought. */
    openAgain(file: string | null): void {
      again = { file: file ?? again?.file ?? null };
    },
  };
}
export type Ending = ReturnType<typeof endingOf>;

/** The words of this start, with another backup file or none. */
function wordsFor(file: string | null): string[] {
  const words = process.argv.slice(1).filter((word) => fileAmong([word], '/') === null);
  return file === null ? words : [...words, file];
}

/** Asks the page to hand over what it has not yet, and waits for it, for a bounded time. */
function pageHandingOver() {
  let settle = (): void => undefined;
  ipcMain.handle(LEFT_CHANNEL, (event) => {
    if (fromOurPage(event)) settle();
  });
  return {
    leave(window: BrowserWindow): Promise<void> {
      return new Promise((resolve) => {
        // A page that hangs or has crashed does not answer.
        const late = setTimeout(resolve, LEAVE_LIMIT_MS);
        settle = () => {
          clearTimeout(late);
          resolve();
        };
        window.webContents.send(LEAVE_CHANNEL);
      });
    },
  };
}
