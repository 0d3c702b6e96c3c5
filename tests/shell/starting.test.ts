import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import { loadPreload, play } from './support/played.ts';

const rolesOf = (menu: { role?: string }[]): (string | undefined)[] => menu.map(({ role }) => role);

// The built main bundle on the model of Electron; only the service process is played.
describe('a start', () => {
  test.each(['linux', 'darwin', 'win32'] as const)('on %s fetches nothing', async (platform) => {
    const { seen, window } = await play({ platform });
    await vi.waitUntil(() => window.visible);
    // Not from our own scheme either: no session has a language to fetch anything for.
    expect(seen.network).toEqual([]);
  });

  test('has the menu of its system: on macOS that of the application comes first', async () => {
    const mac = await play({ platform: 'darwin' });
    expect(rolesOf(mac.seen.menu)[0]).toBe('appMenu');
    const linux = await play({ platform: 'linux' });
    expect(rolesOf(linux.seen.menu)).toEqual(['fileMenu', 'editMenu', undefined, 'windowMenu']);
    for (const { seen } of [mac, linux]) {
      const view = seen.menu.find(({ label }: { label?: string }) => label === 'View');
      expect(rolesOf(view.submenu)).toEqual(
        expect.arrayContaining(['resetZoom', 'zoomIn', 'zoomOut']),
      );
    }
  });

  test.each([
    ['1080 lines at 175 %', { width: 1097, height: 569 }],
    ['1080 lines at 300 %', { width: 640, height: 344 }],
  ])('fits a screen of %s', async (_what, workArea) => {
    const { window } = await play({ workArea });
    const { width, height } = window.options;
    expect(width).toBeLessThanOrEqual(workArea.width);
    expect(height).toBeLessThanOrEqual(workArea.height);
    expect(window.options.minWidth).toBeLessThanOrEqual(workArea.width);
    expect(window.options.minHeight).toBeLessThanOrEqual(workArea.height);
  });

  test('shows its menu at the pointer where something can be cut, copied or pasted', async () => {
    const { seen, window } = await play();
    const editFlags = { canCut: false, canCopy: false, canPaste: true, canSelectAll: true };
    const point = { isEditable: true, selectionText: '', editFlags };
    window.webContents.emit('context-menu', {}, point);
    expect(seen.popups[0]).toEqual([
      { role: 'cut', enabled: false },
      { role: 'copy', enabled: false },
      { role: 'paste', enabled: true },
      { type: 'separator' },
      { role: 'selectAll', enabled: true },
    ]);
    const text = { ...point, isEditable: false, selectionText: 'Bramble' };
    window.webContents.emit('context-menu', {}, text);
    expect(rolesOf(seen.popups[1])).toEqual(['copy']);
    window.webContents.emit('context-menu', {}, { ...text, selectionText: ' ' });
    expect(seen.popups).toHaveLength(2);
  });
});

describe('a start that fails says so in a box, and ends', () => {
  test('with a folder that cannot be made', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'trotwell-refused-'));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    writeFileSync(join(folder, 'file'), '');
    const { seen } = await play({ folder: join(folder, 'file', 'data') });
    await vi.waitUntil(() => seen.exitCode !== null);
    // Not on the terminal, where a program started from the desktop has none.
    expect(seen.stderr).toEqual([]);
    expect(seen.messages).toEqual([expect.stringMatching(/folder of records.*cannot be made/)]);
    expect(seen.exitCode).toBe(1);
  });

  test('with a fault inside', async () => {
    const { seen } = await play({
      fork: () => {
        throw new Error('There is no room for another process.');
      },
    });
    await vi.waitUntil(() => seen.exitCode !== null);
    expect(seen.messages).toEqual([expect.stringContaining('no room for another process')]);
  });

  test('without its sandbox, before anything is touched', async () => {
    const { seen } = await play({ switches: ['no-sandbox'] });
    await vi.waitUntil(() => seen.exitCode !== null);
    expect(seen.messages).toEqual([expect.stringContaining('--no-sandbox')]);
    expect([seen.sandboxed, seen.lockAsked, seen.fork]).toEqual([false, 0, null]);
  });

  test('with a lock that nobody holds and nobody gets', async () => {
    const { seen } = await play({ locks: [false] });
    await vi.waitUntil(() => seen.exitCode !== null);
    expect(seen.messages).toEqual([expect.stringContaining('cannot be taken')]);
  });

  test('but goes on where the other one has just ended', async () => {
    const { seen } = await play({ locks: [false, true] });
    expect(seen.windows).toHaveLength(1);
  });

  test('with a page that does not come', async () => {
    const { seen, window } = await play();
    window.webContents.emit('did-fail-load', {}, -6, 'ERR_FILE_NOT_FOUND', window.url, true);
    await vi.waitUntil(() => seen.exitCode !== null);
    expect(seen.messages).toEqual([expect.stringContaining('ERR_FILE_NOT_FOUND (-6)')]);
  });
});

describe('what breaks later', () => {
  test('a page whose process ended is loaded again, or Trotwell closes, as the user says', async () => {
    const played = await play();
    const { seen, window } = played;
    window.webContents.emit('render-process-gone', {}, { reason: 'crashed', exitCode: 5 });
    await vi.waitUntil(() => window.webContents.reloads === 1);
    expect(seen.details[0]).toContain('crashed');
    seen.pressed = 1;
    loadPreload(played);
    window.webContents.emit('render-process-gone', {}, { reason: 'oom', exitCode: 5 });
    await vi.waitUntil(() => seen.quit, { timeout: 5_000 });
  });

  test('a fault of the service process is heard, and its calls are answered', async () => {
    const { seen, child } = await play();
    const log = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    onTestFinished(() => log.mockRestore());
    child.emit('error', 'FatalError', 'v8::somewhere', '{}');
    child.emit('exit', 6);
    const event = { senderFrame: seen.senderFrame };
    expect(await seen.handlers.get('call:app/status')!(event, {})).toMatchObject({
      ok: false,
      error: { kind: 'unreachable' },
    });
    expect(log.mock.calls.flat().join()).toContain('FatalError (v8::somewhere)');
  });
});
