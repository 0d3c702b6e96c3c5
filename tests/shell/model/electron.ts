import { EventEmitter } from 'node:events';
import { App } from './app.ts';
import { bridgeOf } from './bridge.ts';
import { newSeen, type Seen, type Setting } from './seen.ts';
import { sessionsOf } from './session.ts';
import { windowClass } from './window.ts';

// A model of the `electron` module, whose runtime a test machine may not have. It follows Electron's
// documentation (node_modules/electron/electron.d.ts) in what it refuses as well as in what it grants;
// what it cannot show is how Electron's own code behaves beyond that.

/** The roles a menu knows, from `MenuItemConstructorOptions`, as far as this program may want them. */
const ROLES =
  /^(appMenu|fileMenu|editMenu|viewMenu|windowMenu|undo|redo|cut|copy|paste|selectAll|resetZoom|zoomIn|zoomOut|togglefullscreen|quit|close|minimize|about|hide)$/;

/** @param started resolves when the system has the application ready */
export function createElectron(setting: Setting, started: Promise<void> = Promise.resolve()) {
  const seen = newSeen();
  const app = new App(seen, setting, started);
  const toPage = new EventEmitter();
  const sessions = sessionsOf(seen, app, setting.platform ?? process.platform);
  const electron = {
    app,
    BrowserWindow: windowClass(seen, app, toPage, sessions.make),
    ...bridgeOf(seen, toPage),
    ...systemOf(seen, app, setting),
    protocol: {
      registerSchemesAsPrivileged(schemes: unknown[]): void {
        app.demand(false, 'protocol.registerSchemesAsPrivileged');
        seen.schemes = schemes;
      },
      handle(name: string, handler: (request: { url: string }) => unknown): void {
        app.demand(true, 'protocol.handle');
        seen.scheme = { name, handler };
      },
    },
    session: sessions.module,
    powerMonitor: new EventEmitter(),
    utilityProcess: {
      fork(entry: string, args: readonly string[], options: unknown) {
        app.demand(true, 'utilityProcess.fork');
        seen.fork = { entry, args, options };
        return (seen.serviceProcess = setting.fork(entry, args));
      },
    },
  };
  return { electron, seen };
}

/** Menus, dialogues, screen: what the system draws. */
function systemOf(seen: Seen, app: App, setting: Setting) {
  return {
    Menu: {
      setApplicationMenu: (menu: unknown): void => void (seen.menu = menu),
      buildFromTemplate: (template: MenuItem[]) => {
        for (const item of template) refuseWrongItem(item);
        return Object.assign(template, { popup: () => void seen.popups.push([...template]) });
      },
    },
    shell: {
      openExternal: async (url: string): Promise<void> => void seen.opened.push(url),
      openPath: async (path: string): Promise<void> => void seen.opened.push(path),
    },
    screen: {
      getPrimaryDisplay() {
        app.demand(true, 'screen');
        return { workAreaSize: setting.workArea ?? { width: 1920, height: 1040 } };
      },
    },
    dialog: dialogOf(seen, app, setting),
  };
}

interface MenuItem {
  readonly role?: string;
  readonly label?: string;
  readonly type?: string;
  readonly submenu?: readonly MenuItem[];
}

function refuseWrongItem({ role, label, type, submenu = [] }: MenuItem): void {
  if (role === undefined && label === undefined && type === undefined) {
    throw new TypeError(
      'Invalid template for MenuItem: must have at least one of label, role or type',
    );
  }
  if (role !== undefined && !ROLES.test(role)) throw new TypeError(`Unknown role: ${role}`);
  submenu.forEach(refuseWrongItem);
}

function dialogOf(seen: Seen, app: App, setting: Setting) {
  return {
    async showSaveDialog(_window: unknown, options: { defaultPath?: string; filters?: unknown }) {
      app.demand(true, 'dialog');
      seen.suggested.push(options.defaultPath);
      seen.filters.push(options.filters);
      return { canceled: seen.saveTo === null, filePath: seen.saveTo ?? '' };
    },
    async showOpenDialog(_window: unknown, options: { filters?: unknown }) {
      app.demand(true, 'dialog');
      seen.openFilters = options.filters;
      return {
        canceled: seen.chosen === null,
        filePaths: [seen.chosen ?? []].flat(),
      };
    },
    async showMessageBox(...words: { message: string; detail?: string }[]) {
      app.demand(true, 'dialog');
      const { message, detail } = words.at(-1)!;
      seen.messages.push(message);
      seen.details.push(detail);
      return { response: seen.pressed, checkboxChecked: false };
    },
    showErrorBox(title: string, content: string): void {
      const words = `${title}: ${content}`;
      const noBox = !app.ready && (setting.platform ?? process.platform) === 'linux';
      (noBox ? seen.stderr : seen.messages).push(words);
    },
  };
}
