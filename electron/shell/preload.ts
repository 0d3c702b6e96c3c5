import { contextBridge, ipcRenderer } from 'electron';
import { CALL_NAMES } from '../contract/callNames.ts';
import {
  callChannel,
  CHOOSE_FILE_CHANNEL,
  CHOOSE_FILES_CHANNEL,
  DROP_FILE_CHANNEL,
  LEAVE_CHANNEL,
  LEFT_CHANNEL,
  SAVE_FILE_CHANNEL,
  SAVE_PRODUCED_CHANNEL,
} from './channels.ts';

// One function per contract call, those about files, and one about leaving: no channel name crosses
// the bridge, and no event object reaches the page.
const calls = Object.fromEntries(
  CALL_NAMES.map((name) => [
    name,
    (input: unknown): Promise<unknown> => ipcRenderer.invoke(callChannel(name), input),
  ]),
);

let handOver: unknown = null;

/** Has the page hand over what was typed last, and says so to main, whatever came of it. */
async function leave(): Promise<void> {
  try {
    if (typeof handOver === 'function') await handOver();
  } finally {
    await ipcRenderer.invoke(LEFT_CHANNEL);
  }
}

ipcRenderer.on(LEAVE_CHANNEL, () => void leave());

contextBridge.exposeInMainWorld('trotwell', {
  calls,
  saveFile: (fileName: unknown, base64: unknown, kind: unknown): Promise<unknown> =>
    ipcRenderer.invoke(SAVE_FILE_CHANNEL, fileName, base64, kind),
  chooseFile: (purpose: unknown): Promise<unknown> =>
    ipcRenderer.invoke(CHOOSE_FILE_CHANNEL, purpose),
  chooseFiles: (purpose: unknown): Promise<unknown> =>
    ipcRenderer.invoke(CHOOSE_FILES_CHANNEL, purpose),
  dropFile: (name: unknown, bytes: unknown, purpose: unknown): Promise<unknown> =>
    ipcRenderer.invoke(DROP_FILE_CHANNEL, name, bytes, purpose),
  saveProduced: (token: unknown, name: unknown, purpose: unknown): Promise<unknown> =>
    ipcRenderer.invoke(SAVE_PRODUCED_CHANNEL, token, name, purpose),
  onLeave: (callback: unknown): void => {
    handOver = callback;
  },
});
