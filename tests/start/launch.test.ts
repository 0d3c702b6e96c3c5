import { spawn } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import { isBuilt } from '../../electron/launch/build.mjs';
import { tooOld } from '../../electron/launch/node.mjs';
import { readOptions } from '../../electron/launch/options.mjs';
import { fetchRuntime, findRuntime } from '../../electron/launch/runtime.mjs';
import { runWindow, whyNotOpened } from '../../electron/launch/window.mjs';
import {
  askToEnd,
  watchRequests,
  type StartRequest,
} from '../../electron/service/claim/requests.ts';

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
    for (const path of ['main.js', 'loopback.js']) put(`out/main/${path}`, '', at);
    put('out/preload/preload.cjs', '', at);
    put('out/renderer/index.html', '', at);
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

  const place = (): string => join(folder, 'fetched');
  const fetch = (limitMs: number, said: string[] = []) =>
    fetchRuntime(folder, place(), limitMs, (words) => said.push(words));
  const ARRIVES =
    "const fs = require('fs'); fs.mkdirSync('dist'); fs.writeFileSync('dist/electron', ''); fs.writeFileSync('path.txt', 'electron');";

  test('is fetched by the installer of its package, which leaves nothing behind', async () => {
    put('install.js', `require('fs').mkdtempSync(require('os').tmpdir() + '/x-'); ${ARRIVES}`);
    expect(await fetch(20_000)).toEqual({ program: join(folder, 'dist', 'electron') });
    expect(existsSync(place())).toBe(false);
  });

  test('goes on arriving on a slow line, and a later start waits for the same one', async () => {
    const go = join(folder, 'go');
    put(
      'install.js',
      `const fs = require('fs'); fs.appendFileSync('begun', 'x');
       fs.writeFileSync(require('os').tmpdir() + '/part', Buffer.alloc(3e6));
       setInterval(() => { if (fs.existsSync(${JSON.stringify(go)})) { ${ARRIVES} process.exit(); } }, 50);`,
    );
    // So slow a line that this start does not wait for it.
    await vi.waitUntil(async () => {
      const { sentence } = (await fetch(100)) as { sentence: string };
      return /3 MB so far\) and goes on in the background/.test(sentence);
    }, 20_000);
    put('go');
    expect(await fetch(20_000)).toEqual({ program: join(folder, 'dist', 'electron') });
    expect(readFileSync(join(folder, 'begun'), 'utf8')).toBe('x');
  });

  test('that an earlier start died over is fetched anew, and its leftovers go', async () => {
    put('fetched/process', '999999999');
    put('fetched/part/old');
    put('install.js', "throw new Error('no line')");
    const { sentence } = (await fetch(20_000)) as { sentence: string };
    expect(sentence).toMatch(/could not be fetched \(.*no line.*\).*npx install-electron/);
    expect(existsSync(place())).toBe(false);
  });

  test('is given up without the package', async () => {
    expect(await fetch(500)).toMatchObject({ program: null });
  });
});

describe('a window that did not open', () => {
  test('has its reason told where the system grants no sandbox', () => {
    const on = put('restricted', '1\n');
    expect(whyNotOpened('linux', on)).toMatch(/Ubuntu.*sandbox/);
    expect(whyNotOpened('linux', put('free', '0\n'))).not.toMatch(/sandbox/);
    expect(whyNotOpened('darwin', on)).not.toMatch(/sandbox/);
  });
});

describe('the window', () => {
  const unasked = (): Promise<void> => expect.fail('There are signals here.');
  const node = (script: string) => runWindow(process.execPath, ['-e', script], unasked);

  test('ends with its own code', async () => {
    expect(await node('')).toBe(0);
  });
  test('never opened when the program ends with a fault at once', async () => {
    expect(await node('process.exit(127)')).toBeNull();
    expect(await node("process.kill(process.pid, 'SIGKILL')")).toBeNull();
  });
  test('never opened when there is no such program', async () => {
    expect(await runWindow(join(folder, 'nothing'), [], unasked)).toBeNull();
  });
  test('did open when the fault comes later', async () => {
    expect(
      await runWindow(process.execPath, ['-e', 'process.exit(3)'], unasked, { startMs: 0 }),
    ).toBe(3);
  });
  test('is told to end when the start script is, and once only', async () => {
    const before = process.listenerCount('SIGTERM');
    const ready = join(folder, 'ready');
    // Stops listening after the first signal, as Electron does.
    const code = node(
      `process.once('SIGTERM', () => setTimeout(() => process.exit(0), 300));
       setInterval(() => {}, 1000); require('fs').writeFileSync(${JSON.stringify(ready)}, '')`,
    );
    await vi.waitUntil(() => existsSync(ready), { timeout: 20_000 });
    process.emit('SIGTERM', 'SIGTERM');
    process.emit('SIGTERM', 'SIGTERM');
    expect(await code).toBe(0);
    expect(process.listenerCount('SIGTERM')).toBe(before);
  });

  test('is asked by a request where there are no signals', async () => {
    mkdirSync(join(folder, 'running'));
    const asked: StartRequest[] = [];
    const stop = watchRequests(join(folder, 'running'), (request) => asked.push(request));
    onTestFinished(stop);
    const ready = join(folder, 'ready');
    const code = runWindow(
      process.execPath,
      [
        '-e',
        `setInterval(() => {}, 1000); require('fs').writeFileSync(${JSON.stringify(ready)}, String(process.pid))`,
      ],
      async () => askToEnd(folder),
      { platform: 'win32' },
    );
    await vi.waitUntil(() => existsSync(ready), { timeout: 20_000 });
    process.emit('SIGINT', 'SIGINT');
    await vi.waitUntil(() => asked.length > 0, { timeout: 20_000 });
    expect(asked).toEqual([{ file: null, end: true }]);
    process.kill(Number(readFileSync(ready, 'utf8')), 'SIGKILL');
    await code;
  });

  // A terminal sends Ctrl-C to every process of its group: a real one, by the system's `script`.
  test.skipIf(process.platform !== 'linux')('gets one Ctrl-C of a terminal', async () => {
    const backup = join(folder, 'backup');
    const program = put(
      'program.mjs',
      `import { writeFileSync } from 'node:fs';
       process.once('SIGINT', () => setTimeout(() => {
         writeFileSync(${JSON.stringify(backup)}, 'whole');
         process.exit(0);
       }, 500));
       setInterval(() => {}, 1000);
       console.log('listening');`,
    );
    const launch = new URL('../../electron/launch/window.mjs', import.meta.url).href;
    const starter = put(
      'starter.mjs',
      `import { runWindow, whyNotOpened } from ${JSON.stringify(launch)};
       process.exit((await runWindow(process.execPath, [${JSON.stringify(program)}], () => {})) ?? 9);`,
    );
    const terminal = spawn('script', ['-qec', `exec ${process.execPath} ${starter}`, '/dev/null'], {
      stdio: ['pipe', 'pipe', 'ignore'],
    });
    onTestFinished(() => void terminal.kill('SIGKILL'));
    let shown = '';
    terminal.stdout.on('data', (part: Buffer) => (shown += part.toString()));
    await vi.waitUntil(() => shown.includes('listening'), { timeout: 20_000 });
    const ended = new Promise((resolve) => terminal.once('exit', resolve));
    terminal.stdin.write('\x03');
    expect(await ended).toBe(0);
    expect(readFileSync(backup, 'utf8')).toBe('whole');
    expect(shown).toContain('Trotwell closes');
  });
});
