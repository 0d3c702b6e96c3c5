// Opens Trotwell: builds when needed, then the Electron window, or the browser where there is no
// Electron runtime. Plain JavaScript, so that an old Node can still read the sentence it gets.
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, isBuilt } from './launch/build.mjs';
import { refuseOldNode } from './launch/node.mjs';
import { optionsOrEnd } from './launch/options.mjs';
import { fetchRuntime, findRuntime } from './launch/runtime.mjs';
import { runWindow, whyNotOpened } from './launch/window.mjs';
import { askToEnd, serve } from './loopback/main.mjs';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');
const ELECTRON = join(ROOT, 'node_modules', 'electron');
const FETCHED = join(ROOT, 'node_modules', '.cache', 'trotwell-electron');
const FETCH_SECONDS = 20;

/** Opens the window and ends the process with it; comes back with a sentence where it cannot. */
async function openWindow() {
  let program = findRuntime(ELECTRON);
  if (program === null) {
    console.log(`Fetching the Electron runtime; waiting for it at most ${FETCH_SECONDS} seconds …`);
    const fetched = await fetchRuntime(ELECTRON, FETCHED, FETCH_SECONDS * 1000, console.log);
    if (fetched.program === null) return `${fetched.sentence} Trotwell opens in your browser.`;
    program = fetched.program;
  }
  const words = options.file === undefined ? [ROOT] : [ROOT, options.file];
  const code = await runWindow(program, words, askToEnd);
  if (code !== null) process.exit(code);
  return `${whyNotOpened(process.platform)} Trotwell opens in your browser.`;
}

refuseOldNode();
const options = optionsOrEnd();
if (!isBuilt(ROOT)) {
  console.log('Building Trotwell …');
  if (!build(ROOT)) {
    console.error('The build failed; the lines above say why.');
    process.exit(1);
  }
}
const hasDisplay =
  process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
if (!hasDisplay) {
  console.log('There is no display for an Electron window; open the address below in a browser.');
} else if (!options.browser) {
  console.log(await openWindow());
}
await serve({ ...options, open: hasDisplay });
