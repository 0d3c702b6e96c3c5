import { writeFile } from 'node:fs/promises';
import { dialog, ipcMain, type BrowserWindow, type IpcMainInvokeEvent } from 'electron';
import { CALL_NAMES } from '../contract/callNames.ts';
import type { Answer } from '../contract/errors.ts';
import { APP_ORIGIN, callChannel, SAVE_FILE_CHANNEL } from './channels.ts';
import type { ServiceLink } from './serviceLink.ts';

const STRANGER: Answer<never> = {
  ok: false,
  error: { kind: 'input', message: 'This page may not ask Trotwell for anything.' },
};

/** True for our own page in the top frame; frames and foreign addresses get no answer. */
function fromOurPage(event: IpcMainInvokeEvent): boolean {
  const frame = event.senderFrame;
  if (frame === null || frame.parent !== null) return false;
  try {
    const { protocol, host } = new URL(frame.url);
    return `${protocol}//${host}` === APP_ORIGIN;
  } catch {
    return false;
  }
}

/** Registers one handler per contract call, each checking its sender. */
export function registerCalls(service: ServiceLink): void {
  for (const name of CALL_NAMES) {
    ipcMain.handle(callChannel(name), (event, input: unknown) =>
      fromOurPage(event) ? service.call(name, input) : STRANGER,
    );
  }
}

/** The page hands over bytes and a suggested name; where they go is chosen in the system's dialogue. */
export function registerSaveFile(window: () => BrowserWindow | null): void {
  ipcMain.handle(SAVE_FILE_CHANNEL, async (event, fileName: unknown, base64: unknown) => {
    const parent = window();
    if (!fromOurPage(event) || parent === null) return false;
    if (typeof fileName !== 'string' || typeof base64 !== 'string') return false;
    const suggested = fileName.replace(/[^\w .-]/g, '').slice(0, 120);
    const { canceled, filePath } = await dialog.showSaveDialog(parent, {
      defaultPath: suggested,
      filters: [{ name: 'PDF', extensions: ['pdf'] }],
    });
    if (canceled || filePath === '') return false;
    await writeFile(filePath, Buffer.from(base64, 'base64'));
    return true;
  });
}
