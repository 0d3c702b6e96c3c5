import { ipcMain } from 'electron';
import { CALL_NAMES } from '../contract/callNames.ts';
import type { Answer } from '../contract/errors.ts';
import { callChannel } from './channels.ts';
import { fromOurPage } from './sender.ts';
import type { ServiceLink } from './serviceLink.ts';

const STRANGER: Answer<never> = {
  ok: false,
  error: { kind: 'input', message: 'This page may not ask Trotwell for anything.' },
};

/** Registers one handler per contract call, each checking its sender. */
export function registerCalls(service: ServiceLink): void {
  for (const name of CALL_NAMES) {
    ipcMain.handle(callChannel(name), (event, input: unknown) =>
      fromOurPage(event) ? service.call(name, input) : STRANGER,
    );
  }
}
