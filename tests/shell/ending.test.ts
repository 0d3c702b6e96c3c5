import { expect, test, vi } from 'vitest';
import { loadPreload, play } from './support/played.ts';

const over = (seen: { quit: boolean }): Promise<boolean> =>
  vi.waitUntil(() => seen.quit, { timeout: 5_000 });

/** A page that still has something typed: it hands it over in a call when it is asked. */
function pageWithDraft(played: Awaited<ReturnType<typeof play>>): void {
  const page = loadPreload(played);
  page.onLeave(() => page.calls['drafts/put']({ key: 'dog:1', json: '{}' }));
}

// The built main bundle and preload on the model of Electron; only the service process is played.
test.each(['linux', 'darwin', 'win32'] as const)(
  'closing the window on %s takes what was typed last, hides, closes the service, then quits',
  async (platform) => {
    const played = await play({ platform });
    const { seen, window, child } = played;
    pageWithDraft(played);
    window.close();
    expect(window.isDestroyed()).toBe(false);
    await over(seen);
    expect(child.told).toEqual([{ kind: 'call', name: 'drafts/put' }, { kind: 'close' }]);
    expect(seen.order).toEqual([
      ...['close', 'hide'],
      ...['before-quit', 'close', 'will-quit', 'quit'],
    ]);
  },
);

test('quitting from the menu does the same; nobody can type while the service closes', async () => {
  const played = await play();
  const { seen, child, electron, window } = played;
  child.endsAtOnce = false;
  pageWithDraft(played);
  electron.app.quit();
  await vi.waitUntil(() => child.told.at(-1)?.kind === 'close');
  expect(window.visible).toBe(false);
  // Again and again changes nothing while it closes.
  electron.app.quit();
  window.close();
  expect(seen.quit).toBe(false);
  child.emit('exit', 0);
  await over(seen);
  expect(child.told.map(({ kind }) => kind)).toEqual(['call', 'close']);
});

test('a page that does not answer holds the end up for a bounded time only', async () => {
  const { seen, window } = await play();
  window.close();
  await over(seen);
});

test.each([
  [
    'a second start',
    (app: NodeJS.EventEmitter) =>
      app.emit('second-instance', {}, ['/opt/x', 'kept.trotwell'], '/home/kim'),
    ['/home/kim/kept.trotwell'],
  ],
  [
    'a second start without a file',
    (app: NodeJS.EventEmitter) => app.emit('second-instance', {}, ['/opt/x'], '/home/kim'),
    [],
  ],
  [
    'a file opened on macOS',
    (app: NodeJS.EventEmitter) =>
      app.emit('open-file', { preventDefault() {} }, '/mnt/kept.trotwell'),
    ['/mnt/kept.trotwell'],
  ],
])('%s during closing is remembered, and opens Trotwell again', async (_what, arrives, words) => {
  const played = await play({ words: ['/first.trotwell'] });
  const { seen, child, window, electron } = played;
  loadPreload(played);
  child.endsAtOnce = false;
  window.close();
  await vi.waitUntil(() => child.told.at(-1)?.kind === 'close', { timeout: 5_000 });
  arrives(electron.app);
  expect(seen.relaunched).toEqual([]);
  child.emit('exit', 0);
  await over(seen);
  expect(seen.windows).toHaveLength(1);
  expect(seen.relaunched).toEqual([{ args: [electron.app.getAppPath(), ...words] }]);
});

test('a system that shuts down is not held up, and what can be saved still is', async () => {
  const played = await play({ platform: 'darwin' });
  const { seen, child, electron } = played;
  child.endsAtOnce = false;
  pageWithDraft(played);
  let heldUp = false;
  electron.powerMonitor.emit('shutdown', { preventDefault: () => (heldUp = true) });
  await vi.waitUntil(() => child.told.at(-1)?.kind === 'close');
  expect(child.told[0]).toEqual({ kind: 'call', name: 'drafts/put' });
  electron.app.quit();
  expect([seen.quit, heldUp]).toEqual([true, false]);
});
