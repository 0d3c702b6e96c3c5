// Boots the built main bundle on the stand-in, plays a page against it, and prints what it saw.
import { readFileSync } from 'node:fs';
import { app } from 'electron';

await import(new URL('../../../out/main/main.js', import.meta.url));
await new Promise((resolve) => setImmediate(resolve));

const seen = globalThis.standIn;
if (seen.quit === true) {
  console.log(
    JSON.stringify({ quit: true, lockAsked: seen.lockAsked, windows: seen.windows.length }),
  );
  process.exit(0);
}
const window = seen.windows[0];
const contents = window.webContents;

const frame = (url, parent = null) => ({ senderFrame: { url, parent } });
const page = frame('trotwell://app/index.html');
const invoke = (channel, event, ...input) => seen.handlers.get(channel)(event, ...input);

function prevented(name) {
  let stopped = false;
  contents.emit(name, { preventDefault: () => (stopped = true), url: 'https://elsewhere.example' });
  return stopped;
}

const answers = {};
for (const channel of seen.handlers.keys()) {
  if (channel.startsWith('call:')) answers[channel.slice(5)] = await invoke(channel, page, {});
}
const opened = await invoke('call:app/open', page, { which: 'own' });
const strangers = [];
for (const event of [
  frame('https://elsewhere.example/'),
  frame('trotwell://other/index.html'),
  frame('trotwell://app.elsewhere.example/'),
  frame('not an address'),
  frame('trotwell://app/index.html', {}),
  { senderFrame: null },
]) {
  strangers.push(await invoke('call:app/status', event, {}));
}
const fetched = async (url) => {
  const response = await seen.scheme.handler({ url });
  return {
    status: response.status,
    headers: Object.fromEntries(response.headers),
    body: (await response.text()).slice(0, 60),
  };
};
const pdf = Buffer.from('%PDF-').toString('base64');
const saved = await invoke('shell:save-file', page, '../../x/Rusk plan.pdf', pdf);
const savedByStranger = await invoke(
  'shell:save-file',
  frame('https://elsewhere.example/'),
  'x.pdf',
  pdf,
);

const result = {
  sandboxed: seen.sandboxed,
  lockAsked: seen.lockAsked,
  paths: seen.paths,
  schemes: seen.schemes,
  url: window.url,
  preferences: window.options.webPreferences,
  preloadExists: readFileSync(window.options.webPreferences.preload, 'utf8').length > 0,
  prevented: Object.fromEntries(
    ['will-navigate', 'will-frame-navigate', 'will-redirect', 'will-attach-webview'].map((name) => [
      name,
      prevented(name),
    ]),
  ),
  windowOpen: ['https://elsewhere.example/', 'file:///etc/passwd', 'javascript:alert(1)'].map(
    (url) => contents.openHandler({ url }),
  ),
  openedOutside: seen.opened,
  permissions: {
    request: await new Promise((resolve) => seen.session.request(null, 'media', resolve)),
    check: seen.session.check(null, 'geolocation'),
    device: seen.session.device({}),
  },
  answers,
  opened,
  strangers,
  saved,
  savedByStranger,
  suggested: seen.saveDialog?.defaultPath,
  index: await fetched('trotwell://app/index.html'),
  outside: await fetched('trotwell://app/../../package.json'),
  other: await fetched('trotwell://other/index.html'),
};

const quit = new Promise((resolve) => app.once('stand-in-quit', resolve));
app.quit();
await quit;
result.serviceEnded = seen.serviceProcess.exitCode;
console.log(JSON.stringify(result));
