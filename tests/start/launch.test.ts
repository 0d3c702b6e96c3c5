import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { isBuilt } from '../../electron/launch/build.mjs';
import { tooOld } from '../../electron/launch/node.mjs';
import { readOptions } from '../../electron/launch/options.mjs';
import { fetchRuntime, findRuntime } from '../../electron/launch/runtime.mjs';
import { runWindow } from '../../electron/launch/window.mjs';

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'trotwell-launch-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function put(path: string, text = '', at?: number): string {
  const file = join(folder, path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
  if (at !== undefined) utimesSync(file, at, at);
  return file;
}

describe('the version of Node', () => {
  test.each(['18.20.0', '20.20.2', '22.17.9', ''])(
    '%j is too old, and the sentence says so',
    (v) => {
      expect(tooOld(v)).toMatch(/needs Node 22\.18 or newer, but this is Node .*npm start/);
    },
  );
  test.each(['22.18.0', '24.0.0', '25.1.0'])('%s will do', (version) => {
    expect(tooOld(version)).toBeNull();
  });
});

describe('the words after npm start', () => {
  test('are a browser and a port', () => {
    expect(readOptions([])).toEqual({ browser: false, open: false });
    expect(readOptions(['--browser', '--port', '4711'])).toEqual({
      browser: true,
      open: false,
      port: 4711,
    });
    expect(readOptions(['--port=0'])).toMatchObject({ port: 0 });
  });
  test('may name a backup, from where the command was given', () => {
    expect(readOptions(['kept.trotwell'], '/home/kim')).toEqual({
      browser: false,
      open: false,
      file: resolve('/home/kim/kept.trotwell'),
    });
    expect(readOptions(['--port=0', '/mnt/Kept.TROTWELL'])).toMatchObject({
      port: 0,
      file: resolve('/mnt/Kept.TROTWELL'),
    });
    expect(() => readOptions(['a.trotwell', 'b.trotwell'])).toThrow(/one backup file/);
    expect(() => readOptions(['practice.zip'])).toThrow(/"practice\.zip".*\.trotwell/);
  });
  test.each([['--port=x'], ['--port=-1'], ['--port=65536'], ['--port=1.5'], ['--nope'], ['x']])(
    '%s is refused',
    (word) => {
      expect(() => readOptions([word])).toThrow(Error);
    },
  );
});

describe('the build', () => {
  const OLD = 1_700_000_000;
  const built = (at: number): void => {
    for (const path of ['main/main.js', 'preload/preload.cjs', 'renderer/index.html']) {
      put(`out/${path}`, '', at);
    }
  };

  test('is missing until every part is there', () => {
    expect(isBuilt(folder)).toBe(false);
    put('out/renderer/index.html');
    expect(isBuilt(folder)).toBe(false);
    built(OLD);
    expect(isBuilt(folder)).toBe(true);
  });

  test('is out of date when a source is younger', () => {
    put('core/deep/er/figure.ts', '', OLD - 100);
    for (const path of ['core/deep/er', 'core/deep', 'core']) {
      utimesSync(join(folder, path), OLD - 100, OLD - 100);
    }
    built(OLD);
    expect(isBuilt(folder)).toBe(true);
    utimesSync(join(folder, 'core/deep/er/figure.ts'), OLD + 1, OLD + 1);
    expect(isBuilt(folder)).toBe(false);
  });

  test('is out of date when a source was removed', () => {
    const file = put('renderer/page.vue', '', OLD - 100);
    utimesSync(dirname(file), OLD - 100, OLD - 100);
    built(OLD);
    rmSync(file);
    expect(isBuilt(folder)).toBe(false);
  });
});

describe('the Electron runtime', () => {
  test('is found where its installer finished', () => {
    put('dist/electron');
    // Cut short: unpacked in part, not yet named.
    expect(findRuntime(folder)).toBeNull();
    put('path.txt', 'electron');
    expect(findRuntime(folder)).toBe(join(folder, 'dist', 'electron'));
  });

  test('is fetched by the installer of its package', () => {
    put(
      'install.js',
      "const fs = require('fs'); fs.mkdirSync('dist'); fs.writeFileSync('dist/electron', ''); fs.writeFileSync('path.txt', 'electron');",
    );
    expect(fetchRuntime(folder, 20_000)).toBe(join(folder, 'dist', 'electron'));
  });

  test.each([
    ['fails', 'process.exit(1)'],
    ['never ends', 'setInterval(() => {}, 1000)'],
  ])('is given up when the installer %s', (_how, script) => {
    put('install.js', script);
    expect(fetchRuntime(folder, 500)).toBeNull();
  });

  test('is given up without the package', () => {
    expect(fetchRuntime(folder, 500)).toBeNull();
  });
});

describe('the window', () => {
  const node = (script: string) => runWindow(process.execPath, ['-e', script]);

  test('ends with its own code', async () => {
    expect(await node('')).toBe(0);
  });
  test('never opened when the program ends with a fault at once', async () => {
    expect(await node('process.exit(127)')).toBeNull();
    expect(await node("process.kill(process.pid, 'SIGKILL')")).toBeNull();
  });
  test('never opened when there is no such program', async () => {
    expect(await runWindow(join(folder, 'nothing'), [])).toBeNull();
  });
  test('did open when the fault comes later', async () => {
    expect(await runWindow(process.execPath, ['-e', 'process.exit(3)'], 0)).toBe(3);
  });
  test('is told to end when the start script is', async () => {
    const before = process.listenerCount('SIGTERM');
    const code = node("process.on('SIGTERM', () => process.exit(0)); setInterval(() => {}, 1000)");
    setTimeout(() => process.emit('SIGTERM', 'SIGTERM'), 500);
    expect(await code).toBe(0);
    expect(process.listenerCount('SIGTERM')).toBe(before);
  });
});
