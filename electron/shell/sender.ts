import type { IpcMainInvokeEvent } from 'electron';
import type { Answer } from '../contract/errors.ts';
import { APP_ORIGIN } from './channels.ts';

/** What a page that is not ours is answered. */
export const STRANGER: Answer<never> = {
  ok: false,
  error: { kind: 'input', message: 'This page may not ask Trotwell for anything.' },
};

/** True for our own page in the top frame; frames and foreign addresses get no answer. */
export function fromOurPage(event: IpcMainInvokeEvent): boolean {
  const frame = event.senderFrame;
  return frame !== null && frame.parent === null && isOurAddress(frame.url);
}

/** True for an address of our own front end. */
export function isOurAddress(address: string): boolean {
  try {
    const { protocol, host } = new URL(address);
    return `${protocol}//${host}` === APP_ORIGIN;
  } catch {
    return false;
  }
}
