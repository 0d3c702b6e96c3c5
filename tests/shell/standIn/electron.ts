// What 'electron' resolves to in a child process that boots the built shell: the model of Electron,
// with the built service as a real process of its own.
import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { createElectron } from '../model/electron.ts';
import type { UtilityChild } from '../model/seen.ts';

const late = globalThis as unknown as { standInReady?: Promise<void>; standIn: unknown };
const { electron, seen } = createElectron(
  {
    appPath: fileURLToPath(new URL('../../..', import.meta.url)),
    // A second window gets no lock, however often it asks.
    locks: [process.env['STAND_IN_SECOND'] !== '1'],
    fork(entry, args) {
      const preload = new URL('./parentPort.mjs', import.meta.url).href;
      const child = fork(entry, args, {
        execArgv: ['--import', preload],
        // Bytes cross as they do in a utility process.
        serialization: 'advanced',
      });
      return Object.assign(child, {
        postMessage: (message: unknown) => void child.send(message as object),
      }) as unknown as UtilityChild;
    },
  },
  late.standInReady,
);
late.standIn = seen;

export const {
  app,
  BrowserWindow,
  contextBridge,
  dialog,
  ipcMain,
  ipcRenderer,
  Menu,
  powerMonitor,
  protocol,
  screen,
  session,
  shell,
  utilityProcess,
} = electron;
