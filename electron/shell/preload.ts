import { contextBridge, ipcRenderer } from 'electron';
import { CALL_NAMES } from '../contract/callNames.ts';
import { callChannel, SAVE_FILE_CHANNEL } from './channels.ts';

// One function per contract call and nothing else: no channel name crosses the bridge, and no event
// object reaches the page.
const calls = Object.fromEntries(
  CALL_NAMES.map((name) => [
    name,
    (input: unknown): Promise<unknown> => ipcRenderer.invoke(callChannel(name), input),
  ]),
);

contextBridge.exposeInMainWorld('trotwell', {
  calls,
  saveFile: (fileName: unknown, base64: unknown, kind: unknown): Promise<unknown> =>
    ipcRenderer.invoke(SAVE_FILE_CHANNEL, fileName, base64, kind),
});
