// Boots the built main bundle on the stand-in, loads the built preload as its page's window would,
// plays that page, and prints what it saw.
import { createRequire } from 'node:module';
import { app, session } from 'electron';

await import(new URL('../../../out/main/main.js', import.meta.url));
const seen = globalThis.standIn;
// A start on records that another Trotwell holds waits for an answer first.
while (seen.windows.length === 0 && !seen.quit && seen.exitCode === null) {
  await new Promise((resolve) => setTimeout(resolve, 10));
}
if (seen.windows.length === 0) {
  const { quit, exitCode, lockAsked, messages } = seen;
  console.log(JSON.stringify({ quit, exitCode, lockAsked, messages, windows: 0 }));
  process.exit(0);
}

const window = seen.windows[0];
const contents = window.webContents;
const { preload } = window.options.webPreferences;
createRequire(import.meta.url)(preload);
const { name: bridgeName, api } = seen.bridge;

/** Plays a page in another frame, then comes back to our own. */
async function from(senderFrame, ask) {
  const own = seen.senderFrame;
  seen.senderFrame = senderFrame;
  const answer = await ask();
  seen.senderFrame = own;
  return answer;
}

function prevented(name) {
  let stopped = false;
  contents.emit(name, { preventDefault: () => (stopped = true), url: 'https://elsewhere.example' });
  return stopped;
}

async function fetched(url) {
  const response = await seen.scheme.handler({ url });
  return {
    status: response.status,
    headers: Object.fromEntries(response.headers),
    body: (await response.text()).slice(0, 60),
  };
}

/** What kinds of values stand in an object, all the way down. */
function kinds(value) {
  if (typeof value !== 'object' || value === null) return typeof value;
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, kinds(inner)]));
}

/** How much of what the page hands to a call crosses the bridge. */
async function crossing() {
  await api.calls['app/status']({}, 'more', { sender: 'main' });
  const call = { ...seen.invoked };
  await api.saveFile(7, 7, 7, '/etc/passwd', { filePath: '/etc/passwd' });
  return { call, saveFile: { ...seen.invoked } };
}

const STRANGERS = [
  { url: 'https://elsewhere.example/', parent: null },
  { url: 'trotwell://other/index.html', parent: null },
  { url: 'trotwell://app.elsewhere.example/', parent: null },
  { url: 'not an address', parent: null },
  { url: 'trotwell://app/index.html', parent: {} },
  null,
];
const pdf = Buffer.from('%PDF-').toString('base64');

async function playPage() {
  const first = await api.calls['app/status']({});
  const answers = {};
  for (const [name, call] of Object.entries(api.calls)) answers[name] = await call({});
  const opened = await api.calls['app/open']({ which: 'own' });
  const strangers = [];
  const savedByStrangers = [];
  for (const frame of STRANGERS) {
    strangers.push(await from(frame, () => api.calls['app/status']({})));
    savedByStrangers.push(await from(frame, () => api.saveFile('x.pdf', pdf, 'pdf')));
  }
  return { first, answers, opened, strangers, savedByStrangers };
}

async function saveFiles() {
  const cancelled = await api.saveFile('plan.pdf', pdf, 'pdf');
  seen.saveTo = process.env.STAND_IN_SAVE;
  const written = await api.saveFile('../../x/Löwe plan.pdf', pdf, 'pdf');
  const notText = await api.saveFile({ path: '/x' }, pdf, 'pdf');
  const otherKinds = [];
  for (const kind of [undefined, 'exe', '../pdf', 'toString', { extension: 'exe' }]) {
    otherKinds.push(await api.saveFile('plan.exe', pdf, kind));
  }
  seen.saveTo = `${process.env.STAND_IN_SAVE}.missing/x.pdf`;
  const refused = await api.saveFile('weight.csv', pdf, 'csv');
  const suggested = [...seen.suggested];
  const filters = [...seen.filters];
  return { cancelled, written, notText, otherKinds, refused, suggested, filters };
}

/** Files chosen, dropped and saved, by our own page and by strangers. */
async function passFiles() {
  const cancelled = await api.chooseFile('csv');
  seen.chosen = process.env.STAND_IN_CHOOSE ?? null;
  const chosen = await api.chooseFile('csv');
  const filters = seen.openFilters;
  const readable = process.env.STAND_IN_CHOOSE ?? 'nothing';
  seen.chosen = [`${readable}.missing`, readable];
  const several = await api.chooseFiles('attachment');
  const noPurpose = await api.chooseFile('/etc/passwd');
  seen.chosen = `${process.env.STAND_IN_CHOOSE}.missing`;
  const missing = await api.chooseFile('csv');
  const dropped = await api.dropFile('../x.pdf', new Uint8Array([1, 2, 3]), 'attachment');
  const path = await api.dropFile('x.pdf', '/etc/passwd', 'attachment');
  const unknown = await api.saveProduced('no-such-token', '../../x.zip', 'bundle');
  const strangers = [];
  for (const frame of STRANGERS) {
    strangers.push(await from(frame, () => api.chooseFile('csv')));
    strangers.push(await from(frame, () => api.chooseFiles('csv')));
    strangers.push(await from(frame, () => api.dropFile('x', new Uint8Array([1]), 'csv')));
    const saved = await from(frame, () => api.saveProduced('token', 'x', 'csv'));
    strangers.push({ ok: saved });
  }
  return {
    cancelled,
    chosen,
    several,
    filters,
    noPurpose,
    missing,
    dropped,
    path,
    unknown,
    strangers,
  };
}

/** How each kind of permission fares for our own page, a frame in it, and a stranger. */
async function permissions() {
  const kinds = ['media', 'geolocation', 'notifications', 'clipboard-read', 'openExternal', 'usb'];
  const ask = (kind, url, isMainFrame) => session.defaultSession.permission(kind, url, isMainFrame);
  const copying = 'clipboard-sanitized-write';
  return {
    others: await Promise.all(kinds.map((kind) => ask(kind, window.url, true))),
    copying: await ask(copying, window.url, true),
    copyingInFrame: await ask(copying, window.url, false),
    copyingElsewhere: await ask(copying, 'https://elsewhere.example/', true),
  };
}

const result = {
  sandboxed: seen.sandboxed,
  paths: seen.paths,
  schemes: seen.schemes,
  url: window.url,
  preferences: window.options.webPreferences,
  bridgeName,
  bridge: { top: Object.keys(api), calls: Object.keys(api.calls) },
  bridgeKinds: kinds(api),
  crossing: await crossing(),
  channels: [...seen.handlers.keys()],
  fork: { service: seen.fork.entry.endsWith('service.js'), options: seen.fork.options },
  menu: seen.menu,
  prevented: Object.fromEntries(
    ['will-navigate', 'will-frame-navigate', 'will-redirect', 'will-attach-webview'].map((name) => [
      name,
      prevented(name),
    ]),
  ),
  windowOpen: [
    'https://elsewhere.example/',
    'http://elsewhere.example/',
    'file:///etc/passwd',
    'javascript:alert(1)',
  ].map((url) => contents.openHandler({ url })),
  openedOutside: seen.opened,
  permissions: await permissions(),
  network: seen.network,
  page: await playPage(),
  saving: await saveFiles(),
  messages: [...seen.messages],
  files: await passFiles(),
  index: await fetched('trotwell://app/index.html'),
  outside: await fetched('trotwell://app/../../package.json'),
  other: await fetched('trotwell://other/index.html'),
};

app.emit('second-instance', {}, ['/opt/Trotwell'], '/');
result.windows = seen.windows.length;
const quit = new Promise((resolve) => app.once('quit', resolve));
app.quit();
await quit;
result.serviceEnded = seen.serviceProcess.exitCode;
result.afterQuit = await api.calls['app/status']({});
console.log(JSON.stringify(result));
