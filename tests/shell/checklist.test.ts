import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CALL_NAMES } from '../../electron/contract/callNames.ts';
import { boot, ROOT } from './support/boot.ts';

// Electron's own list for a secure program, docs/tutorial/security.md, in its order (S). The shell is
// looked at as built and booted on a stand-in of the `electron` module; where a point asks for care
// with something this program does not have, its test asserts that it is not there.

let folder: string;
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- a report in JSON, asserted below
let seen: any;
/** What is packed as the main process, its preload, and the page. */
let built: { readonly main: string; readonly preload: string; readonly index: string };
/** The shell's sources, and those of the page. */
let shell: string;
let page: string;

function sources(of: string, ends: RegExp): string {
  return readdirSync(join(ROOT, of), { recursive: true, encoding: 'utf8' })
    .filter((name) => ends.test(name))
    .map((name) => readFileSync(join(ROOT, of, name), 'utf8'))
    .join('\n');
}

const read = (...path: string[]): string => readFileSync(join(ROOT, ...path), 'utf8');

/** The policy as a browser reads it: each directive with its sources. */
function policyOf(reply: { headers: Record<string, string> }): Record<string, string[]> {
  const directives = reply.headers['content-security-policy']!.split(';');
  return Object.fromEntries(
    directives.map((text) => {
      const [name, ...allowed] = text.trim().split(/\s+/);
      return [name, allowed];
    }),
  );
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'trotwell-checklist-'));
  seen = boot({ TROTWELL_DATA: join(folder, 'data'), STAND_IN_SAVE: join(folder, 'saved.pdf') });
  built = {
    // The browser window's host is not packed (tests/packaging/config.test.ts).
    main: sources('out/main', /(?<!loopback)\.js$/),
    preload: read('out', 'preload', 'preload.cjs'),
    index: read('out', 'renderer', 'index.html'),
  };
  shell = sources('electron/shell', /\.ts$/);
  page = sources('renderer', /\.(ts|vue|html|css)$/);
}, 90_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('Electron’s checklist', () => {
  test('1 only secure content is loaded: nothing comes over a network', () => {
    expect(seen.url).toBe('trotwell://app/index.html');
    expect(seen.schemes[0].privileges.secure).toBe(true);
    const addresses = [...built.index.matchAll(/(?:src|href)="([^"]*)"/g)].map(([, to]) => to);
    expect(addresses.length).toBeGreaterThan(0);
    for (const address of addresses) expect(address).toMatch(/^\.\//);
    for (const allowed of Object.values(policyOf(seen.index)).flat()) {
      expect(["'none'", "'self'", 'data:', 'blob:']).toContain(allowed);
    }
    // Nor does the session fetch a dictionary, which it does on its own where nobody keeps it from it.
    expect(seen.network).toEqual([]);
  });

  test('2 no content has Node, least of all remote content', () => {
    expect(seen.preferences).toMatchObject({
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
    });
  });

  test('3 the preload is isolated from the page', () => {
    expect(seen.preferences.contextIsolation).toBe(true);
    expect(built.preload).toContain('exposeInMainWorld');
    expect(built.preload).not.toMatch(/\bwindow\.\w+\s*=[^=]/);
  });

  test('4 every process of a page is in the sandbox', () => {
    expect(seen.sandboxed).toBe(true);
    expect(seen.preferences.sandbox).toBe(true);
    // The switch is named once, to refuse a start with it (tests/shell/starting.test.ts).
    expect(built.main.match(/hasSwitch\(["'`]no-sandbox["'`]\)/g)).toHaveLength(1);
    expect(built.main).not.toMatch(/appendSwitch|disableSandbox/);
  });

  test('5 every permission is denied, asked for or looked up, but that our page copies text', () => {
    const none = { request: false, check: false, device: false };
    const { others, copying, copyingInFrame, copyingElsewhere } = seen.permissions;
    expect(others.length).toBeGreaterThan(3);
    for (const one of [...others, copyingInFrame, copyingElsewhere]) expect(one).toEqual(none);
    expect(copying).toEqual({ ...none, request: true, check: true });
  });

  test('6 the web’s own walls stand', () => {
    expect(seen.preferences.webSecurity).toBe(true);
    expect(seen.schemes[0].privileges.bypassCSP ?? false).toBe(false);
    expect(built.main).not.toContain('disable-web-security');
  });

  test('7 a strict policy comes with every answer, also where there is nothing', () => {
    for (const reply of [seen.index, seen.outside, seen.other]) {
      expect(policyOf(reply)).toMatchObject({
        'default-src': ["'none'"],
        'script-src': ["'self'"],
        'style-src': ["'self'"],
        'connect-src': ["'self'"],
        'base-uri': ["'none'"],
        'form-action': ["'none'"],
        'frame-ancestors': ["'none'"],
      });
    }
    expect(built.index).not.toMatch(/<script(?![^>]*\bsrc=)|<style|\son\w+=/);
  });

  test('8 insecure content is not run', () => {
    expect(seen.preferences.allowRunningInsecureContent).toBe(false);
  });

  test('9 experimental features are off', () => {
    expect(seen.preferences.experimentalFeatures).toBe(false);
    expect(built.main).not.toContain('experimental-web-platform-features');
  });

  test('10 no feature of Blink is switched on', () => {
    expect(seen.preferences.enableBlinkFeatures).toBeUndefined();
    expect(built.main).not.toMatch(/enableBlinkFeatures|enable-blink-features/);
  });

  test('11 webviews open no windows: there are no webviews', () => {
    expect(page).not.toMatch(/<webview|allowpopups/i);
    expect(seen.preferences.webviewTag).toBe(false);
  });

  test('12 no webview can be attached, whatever its options', () => {
    expect(seen.prevented['will-attach-webview']).toBe(true);
  });

  test('13 no navigation leads anywhere, not in a frame and not by a redirect', () => {
    expect(seen.prevented).toMatchObject({
      'will-navigate': true,
      'will-frame-navigate': true,
      'will-redirect': true,
    });
    expect(seen.preferences.navigateOnDragDrop).toBe(false);
  });

  test('14 no page opens a window', () => {
    expect(seen.windowOpen.length).toBeGreaterThan(0);
    for (const answer of seen.windowOpen) expect(answer).toEqual({ action: 'deny' });
  });

  test('15 nothing is handed to the system to open: the shell cannot', () => {
    expect(seen.openedOutside).toEqual([]);
    expect(built.main).not.toMatch(/openExternal|openPath/);
  });

  test('16 the Electron shipped is a release that patches reach and the audit looks at', () => {
    const lock = JSON.parse(read('package-lock.json'));
    const { devDependencies } = JSON.parse(read('package.json'));
    const { version } = createRequire(import.meta.url)('electron/package.json');
    expect(version).toBe(lock.packages['node_modules/electron'].version);
    expect(version).toMatch(/^\d+\.\d+\.\d+$/);
    // 45 is the newest major at the time of writing; an older one would be a step back.
    expect(Number(version.split('.')[0])).toBeGreaterThanOrEqual(45);
    expect(devDependencies.electron).toMatch(/^\^/);
  });

  test('17 the sender of every message is checked: no stranger gets an answer', () => {
    for (const answer of seen.page.strangers) {
      expect(answer).toMatchObject({ ok: false, error: { kind: 'input' } });
      expect(answer.error.message).toContain('may not ask');
    }
    expect(seen.page.strangers).toHaveLength(6);
    expect(seen.page.savedByStrangers).toEqual(Array(6).fill(false));
    const shellOnly = seen.channels.filter((name: string) => !name.startsWith('call:'));
    expect(seen.channels).toHaveLength(CALL_NAMES.length + shellOnly.length);
    for (const name of shellOnly) expect(name).toMatch(/^shell:[a-z-]+$/);
    // Every listener is a `handle` of those channels; none is a bare `on`.
    expect(shell).not.toMatch(/ipcMain\s*\.\s*(on|once|addListener|handleOnce)\b/);
    for (const text of shell.split('ipcMain.handle(').slice(1)) {
      expect(text.slice(0, 300)).toContain('fromOurPage(event)');
    }
  });

  test('18 pages come by a scheme of our own, never by file://', () => {
    expect(seen.schemes.map(({ scheme }: { scheme: string }) => scheme)).toEqual(['trotwell']);
    expect(built.main).not.toMatch(/loadFile|file:\/\/|interceptFileProtocol/);
    expect(seen.outside.status).toBe(404);
    expect(seen.other.status).toBe(404);
  });

  test('19 the fuses are set, and nothing needs what they switch off', () => {
    const config = read('electron-builder.yml');
    for (const [fuse, value] of [
      ['runAsNode', false],
      ['enableNodeOptionsEnvironmentVariable', false],
      ['enableNodeCliInspectArguments', false],
      ['onlyLoadAppFromAsar', true],
      ['enableEmbeddedAsarIntegrityValidation', true],
      ['grantFileProtocolExtraPrivileges', false],
    ] as const) {
      expect(config).toMatch(new RegExp(`^ {2}${fuse}: ${value}$`, 'm'));
    }
    // Without run-as-node there is no child_process.fork; the service is a utility process.
    expect(seen.fork.service).toBe(true);
    expect(built.main).not.toMatch(/child_process/);
  });

  test('20 no part of Electron reaches the page: functions only, and no more words than they take', () => {
    const { calls, ...rest } = seen.bridgeKinds;
    expect(new Set(Object.values(rest))).toEqual(new Set(['function']));
    expect(calls).toEqual(Object.fromEntries(CALL_NAMES.map((name) => [name, 'function'])));
    expect(seen.crossing).toEqual({
      call: { channel: 'call:app/status', words: 1 },
      saveFile: { channel: 'shell:save-file', words: 3 },
    });
    expect(built.preload).not.toMatch(/ipcRenderer\.(once|send|sendSync|postMessage)\b/);
    // Main asks the page to hand over what was typed last; no word comes with it.
    expect(built.preload.match(/ipcRenderer\.on\([^)]*\)/g)).toEqual([
      'ipcRenderer.on(LEAVE_CHANNEL, ()',
    ]);
  });
});
