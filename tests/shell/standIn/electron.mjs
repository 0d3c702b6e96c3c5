// Stands in for the 'electron' module, whose runtime a test machine may not have: records what the
// shell asks for, and lets the test play the page. The service process it forks is a real one.
import { fork } from 'node:child_process';
import { EventEmitter } from 'node:events';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const seen = {
  handlers: new Map(),
  windows: [],
  /** Every address a window was led to. */
  addresses: [],
  /** Resolves when the app may be ready; a test may put a later one in its place. */
  ready: Promise.resolve(),
  paths: {},
  opened: [],
  scheme: null,
  session: {},
  messages: [],
  details: [],
  suggested: [],
  filters: [],
  /** Where the practitioner "chooses" to save; null for a cancelled dialogue. */
  saveTo: null,
  /** The file the practitioner "chooses"; null for a cancelled dialogue. */
  chosen: null,
  /** The frame that the page's next invocation comes from. */
  senderFrame: { url: 'trotwell://app/index.html', parent: null },
};
globalThis.standIn = seen;

class Contents extends EventEmitter {
  setWindowOpenHandler(handler) {
    this.openHandler = handler;
  }
}

export class BrowserWindow extends EventEmitter {
  constructor(options) {
    super();
    this.options = options;
    this.webContents = new Contents();
    seen.windows.push(this);
    app.emit('web-contents-created', {}, this.webContents);
  }
  loadURL(url) {
    this.url = url;
    seen.addresses.push(url);
    return Promise.resolve();
  }
  show() {}
  focus() {}
  isMinimized() {
    return false;
  }
}

class App extends EventEmitter {
  isPackaged = false;
  getAppPath() {
    return fileURLToPath(new URL('../../..', import.meta.url));
  }
  getVersion() {
    return '0.0.0-stand-in';
  }
  setPath(name, path) {
    // As the documentation has it: a folder that is not there is refused.
    if (!existsSync(path)) throw new Error('Failed to set path');
    seen.paths[name] = path;
  }
  enableSandbox() {
    seen.sandboxed = true;
  }
  requestSingleInstanceLock() {
    seen.lockAsked = true;
    return process.env.STAND_IN_SECOND !== '1';
  }
  whenReady() {
    return seen.ready;
  }
  exit(code) {
    seen.exitCode = code;
  }
  quit() {
    let prevented = false;
    this.emit('before-quit', { preventDefault: () => (prevented = true) });
    if (!prevented) {
      seen.quit = true;
      this.emit('stand-in-quit');
    }
  }
}

export const app = new App();
export const Menu = {
  setApplicationMenu: (menu) => void (seen.menu = menu),
  buildFromTemplate: (template) => template,
};
export const shell = {
  openExternal: async (url) => void seen.opened.push(url),
  openPath: async (path) => void seen.opened.push(path),
};
export const dialog = {
  showSaveDialog: async (_window, options) => {
    seen.suggested.push(options.defaultPath);
    seen.filters.push(options.filters);
    return { canceled: seen.saveTo === null, filePath: seen.saveTo ?? '' };
  },
  showOpenDialog: async (_window, options) => {
    seen.openFilters = options.filters;
    return { canceled: seen.chosen === null, filePaths: seen.chosen === null ? [] : [seen.chosen] };
  },
  showMessageBox: async (...words) => {
    const options = words.at(-1);
    seen.messages.push(options.message);
    seen.details.push(options.detail);
  },
  showErrorBox: (title, content) => void seen.messages.push(`${title}: ${content}`),
};
export const ipcMain = {
  handle: (channel, handler) => void seen.handlers.set(channel, handler),
};
// The page's side: what crosses between the two worlds is copied, as the real bridge does.
export const contextBridge = {
  exposeInMainWorld: (name, api) => void (seen.bridge = { name, api }),
};
export const ipcRenderer = {
  invoke: async (channel, ...args) => {
    const handler = seen.handlers.get(channel);
    if (handler === undefined) throw new Error(`No handler registered for '${channel}'`);
    const event = { senderFrame: seen.senderFrame };
    seen.invoked = { channel, words: args.length };
    return structuredClone(await handler(event, ...structuredClone(args)));
  },
};
export const protocol = {
  registerSchemesAsPrivileged: (schemes) => void (seen.schemes = schemes),
  handle: (scheme, handler) => void (seen.scheme = { name: scheme, handler }),
};
export const session = {
  defaultSession: {
    setPermissionRequestHandler: (handler) => void (seen.session.request = handler),
    setPermissionCheckHandler: (handler) => void (seen.session.check = handler),
    setDevicePermissionHandler: (handler) => void (seen.session.device = handler),
  },
};
export const utilityProcess = {
  fork(entry, args, options) {
    seen.fork = { entry, args, options };
    const preload = new URL('./parentPort.mjs', import.meta.url).href;
    const child = fork(entry, args, {
      execArgv: ['--import', preload],
      // Bytes cross as they do in a utility process.
      serialization: 'advanced',
    });
    child.postMessage = (message) => child.send(message);
    seen.serviceProcess = child;
    return child;
  },
};
