import type { IpcMainInvokeEvent } from 'electron';
import { APP_ORIGIN } from './channels.ts';

/** True for our own page in the top frame; frames and foreign addresses get no answer. */
export function fromOurPage(event: IpcMainInvokeEvent): boolean {
  const frame = event.senderFrame;
  if (frame === null || frame.parent !== null) return false;
  try {
    const { protocol, host } = new URL(frame.url);
    return `${protocol}//${host}` === APP_ORIGIN;
  } catch {
    return false;
  }
}
