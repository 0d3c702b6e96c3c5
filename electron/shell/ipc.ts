import { ipcMain } from 'electron';
import { CALL_NAMES } from '../contract/callNames.ts';
import { callChannel } from './channels.ts';
import { fromOurPage, STRANGER } from './sender.ts';
import type { ServiceLink } from './serviceLink.ts';

/** Registers one handler per contract call, each checking its sender. */
export function registerCalls(service: ServiceLink): void {
  for (const name of CALL_NAMES) {
    ipcMain.handle(callChannel(name), (event, input: unknown) =>
      fromOurPage(event) ? service.call(name, input) : STRANGER,
    );
  }
}
