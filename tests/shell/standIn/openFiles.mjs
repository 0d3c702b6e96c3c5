// Boots the built main bundle on the stand-in and opens files from outside: by the words of the start
// command, by the system's event before and after the start, and by a second start. Prints what it saw.
import { execFile } from 'node:child_process';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
const folder = process.env.STAND_IN_FILES;
const early = process.env.STAND_IN_EARLY;
let beReady;
globalThis.standInReady = new Promise((resolve) => (beReady = resolve));
const { app } = await import('electron');
const seen = globalThis.standIn;

await import(new URL('../../../out/main/main.js', import.meta.url));
let prevented = 0;
const openFile = (path) => app.emit('open-file', { preventDefault: () => (prevented += 1) }, path);
if (early !== undefined) openFile(early);
beReady();
while (seen.windows.length === 0) await new Promise((resolve) => setTimeout(resolve, 10));

const window = seen.windows[0];
createRequire(import.meta.url)(window.options.webPreferences.preload);
const { api } = seen.bridge;

/** What the window was led to, or the practitioner told, since the last time. */
const told = { addresses: 0, details: 0 };
async function next() {
  const news = () => seen.addresses.length > told.addresses || seen.details.length > told.details;
  for (let tries = 0; !news() && tries < 500; tries++) {
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
  const found = {
    addresses: seen.addresses.slice(told.addresses),
    details: seen.details.slice(told.details),
  };
  told.addresses = seen.addresses.length;
  told.details = seen.details.length;
  return found;
}

async function lookAt(address) {
  const token = new URLSearchParams(address.split('?')[1]).get('file');
  return api.calls['backup/look']({
    source: { token },
    passphrase: null,
    workId: crypto.randomUUID(),
  });
}

told.addresses = 1;
const first = await next();
const firstLook = await lookAt(first.addresses.at(-1));

await api.calls['app/open']({ which: 'own' });
const made = await api.calls['backup/make']({ passphrase: null, workId: crypto.randomUUID() });
seen.saveTo = join(folder, 'Löwe & Sohn.trotwell');
await api.saveProduced(made.value.token, 'x.trotwell', 'backup');

openFile(seen.saveTo);
const event = await next();
const eventLook = await lookAt(event.addresses.at(-1));

const again = async (words, workingFolder = folder) => {
  app.emit('second-instance', {}, ['/opt/Trotwell', ...words], workingFolder);
  return next();
};
const second = await again(['--flag', 'Löwe & Sohn.trotwell']);
const asAddress = await again([pathToFileURL(seen.saveTo).href]);
// Names no backup: the window only comes to the front, and the next address is that of the next file.
app.emit('second-instance', {}, ['/opt/Trotwell', '--flag=x.trotwell', 'notes.txt'], folder);

/** Starts the browser window's host on the same records, as a process of its own. */
const host = fileURLToPath(new URL('../../../electron/loopback/main.mjs', import.meta.url));
const started = promisify(execFile)(process.execPath, [host, seen.saveTo]);
const byHost = { ...(await next()), ...(await started) };

const refused = {};
for (const name of ['missing.trotwell', 'folder.trotwell', 'huge.trotwell', 'empty.trotwell']) {
  refused[name] = await again([name]);
}
openFile(join(folder, 'notes.txt'));
refused['notes.txt'] = await next();

await api.calls['lock/set']({
  present: null,
  passphrase: 'eleven geese on a gate',
  idleMinutes: 5,
});
await api.calls['lock/now']({});
refused.locked = await again(['Löwe & Sohn.trotwell']);

const result = {
  all: seen.addresses,
  windows: seen.windows.length,
  prevented,
  first,
  firstLook,
  event,
  eventLook,
  second,
  asAddress,
  byHost,
  refused,
};
const quit = new Promise((resolve) => app.once('quit', resolve));
app.quit();
await quit;
openFile(seen.saveTo);
console.log(JSON.stringify({ ...result, afterQuit: seen.windows.length }));
