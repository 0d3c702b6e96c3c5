// Opens Trotwell: builds when needed, then the Electron window, or the browser where there is no
// Electron runtime. Plain JavaScript, so that an old Node can still read the sentence it gets.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..');
const FETCH_LIMIT_MS = 20_000;

const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 22 || (major === 22 && minor < 18)) {
  console.error(
    `Trotwell needs Node 22.18 or newer, but this is Node ${process.versions.node}. ` +
      'Start it with "npm start", which brings its own Node 24.',
  );
  process.exit(1);
}

const browserAsked = process.argv.includes('--browser');

function newest(path) {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return readdirSync(path).reduce((time, name) => Math.max(time, newest(join(path, name))), 0);
}

function buildIfNeeded() {
  const built = join(ROOT, 'out', 'renderer', 'index.html');
  const sources = ['core', 'electron', 'renderer', 'templates', 'electron.vite.config.ts'];
  if (existsSync(built)) {
    const time = statSync(built).mtimeMs;
    if (sources.every((source) => newest(join(ROOT, source)) <= time)) return;
  }
  console.log('Building Trotwell …');
  const cli = join(ROOT, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js');
  const run = spawnSync(process.execPath, [cli, 'build', '--logLevel', 'warn'], {
    cwd: ROOT,
    stdio: 'inherit',
  });
  if (run.status !== 0) {
    console.error('The build failed; see the lines above.');
    process.exit(run.status ?? 1);
  }
}

/** The Electron program, fetched within a bounded time where it is missing; null without one. */
function electronProgram() {
  const folder = join(ROOT, 'node_modules', 'electron');
  const program = () => {
    try {
      const name = process.platform === 'win32' ? 'electron.exe' : 'electron';
      const inside =
        process.platform === 'darwin'
          ? join('Electron.app', 'Contents', 'MacOS', 'Electron')
          : name;
      const path = join(folder, 'dist', inside);
      return existsSync(path) ? path : null;
    } catch {
      return null;
    }
  };
  if (program() === null && existsSync(join(folder, 'install.js'))) {
    spawnSync(process.execPath, [join(folder, 'install.js')], {
      cwd: folder,
      stdio: 'ignore',
      timeout: FETCH_LIMIT_MS,
      killSignal: 'SIGKILL',
    });
  }
  return program();
}

buildIfNeeded();
const hasDisplay =
  process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
const electron = browserAsked || !hasDisplay ? null : electronProgram();

if (electron !== null) {
  const child = spawn(electron, [ROOT], { stdio: 'inherit' });
  child.on('exit', (code) => process.exit(code ?? 0));
} else {
  if (!browserAsked) {
    console.log(
      hasDisplay
        ? 'The Electron runtime is not on this machine and could not be fetched, so Trotwell opens in your browser.'
        : 'There is no display for a window, so Trotwell serves a browser.',
    );
  }
  const host = await import(pathToFileURL(join(ROOT, 'electron', 'loopback', 'main.mjs')).href);
  await host.serve({ openBrowser: hasDisplay });
}
