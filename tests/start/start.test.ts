import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { assertRuntime } from '../../electron/service/database/runtime.ts';
import { dataFolder } from '../../electron/service/database/dataFolder.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
let folder: string;
const children: ChildProcess[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'trotwell-start-'));
});
afterEach(() => {
  for (const child of children.splice(0)) child.kill('SIGKILL');
  rmSync(folder, { recursive: true, force: true });
});

/** Runs the start script without a display, and waits for a line that matches. */
async function start(args: readonly string[], until: RegExp) {
  const { DISPLAY: _display, WAYLAND_DISPLAY: _wayland, ...env } = process.env;
  const child = spawn(process.execPath, [join(ROOT, 'electron', 'start.mjs'), ...args], {
    env: { ...env, TROTWELL_DATA: folder },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  children.push(child);
  let output = '';
  await new Promise<void>((resolve, reject) => {
    const read = (part: Buffer): void => {
      output += part.toString();
      if (until.test(output)) resolve();
    };
    child.stdout.on('data', read);
    child.stderr.on('data', read);
    child.once('exit', () => reject(new Error(`The start script ended: ${output}`)));
  });
  return { child, text: () => output };
}

const ended = (child: ChildProcess): Promise<number | null> =>
  new Promise((resolve) => child.once('exit', resolve));

describe('npm start', () => {
  test('serves, prints the address, and closes the database on Ctrl-C', async () => {
    const run = await start(['--browser'], /http:\/\/127\.0\.0\.1:\d+\/open#start=\S+\n/);
    const { origin, hash } = new URL(/http:\S+/.exec(run.text())![0]);
    const post = (path: string, body: unknown, key = '') =>
      fetch(`${origin}${path}`, {
        method: 'POST',
        headers: { authorization: `Bearer ${key}`, 'content-type': 'application/json' },
        body: JSON.stringify(body),
      });
    const entered = await post('/start', { code: hash.slice('#start='.length) });
    const { key } = (await entered.json()) as { key: string };
    const opened = await post('/call/app/open', { which: 'own' }, key);
    expect(await opened.json()).toMatchObject({ ok: true });
    expect(run.text()).not.toContain(key);
    expect(existsSync(join(folder, 'trotwell.sqlite'))).toBe(true);
    const exit = ended(run.child);
    run.child.kill('SIGINT');
    expect(await exit).toBe(0);
    expect(run.text()).toContain('Trotwell is closed.');
    expect(existsSync(join(folder, 'trotwell.sqlite-wal'))).toBe(false);
  });

  test('without a display says so in one sentence and serves all the same', async () => {
    const run = await start([], /#start=/);
    const sentences = run
      .text()
      .split('\n')
      .filter((line) => /display/.test(line));
    expect(sentences).toHaveLength(process.platform === 'linux' ? 1 : 0);
    const exit = ended(run.child);
    run.child.kill('SIGTERM');
    expect(await exit).toBe(0);
  });
});

describe('the loopback host on its own', () => {
  const entry = join(ROOT, 'electron', 'loopback', 'main.mjs');
  const run = (...args: string[]) =>
    spawnSync(process.execPath, [entry, ...args], {
      encoding: 'utf8',
      env: { ...process.env, TROTWELL_DATA: folder },
      timeout: 30_000,
    });

  test('says in one line that its port is taken', async () => {
    const other = createServer();
    await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
    const { port } = other.address() as AddressInfo;
    const { status, stderr, stdout } = run(`--port=${port}`);
    other.close();
    expect(status).toBe(1);
    expect(stderr.trim().split('\n')).toEqual([expect.stringContaining(`Port ${port}`)]);
    expect(stdout).not.toContain('#start=');
  });

  test('says in one line that a word is not known', () => {
    const { status, stderr } = run('--prot=1');
    expect(status).toBe(2);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });
});

describe('the runtime', () => {
  test('is refused with a sentence where the database driver would end the process', () => {
    expect(() => assertRuntime({ node: '20.20.2', napi: '9' })).toThrow(
      /needs Node 22 or newer.*npm start/,
    );
    expect(() => assertRuntime()).not.toThrow();
  });
});

describe('the folder of records', () => {
  const home = '/home/kim';
  test.each([
    ['linux', {}, '/home/kim/.config/Trotwell'],
    ['linux', { XDG_CONFIG_HOME: '/cfg' }, '/cfg/Trotwell'],
    ['darwin', {}, '/home/kim/Library/Application Support/Trotwell'],
    ['linux', { TROTWELL_DATA: '/elsewhere' }, '/elsewhere'],
    ['darwin', { TROTWELL_DATA: '/elsewhere' }, '/elsewhere'],
  ] as const)('on %s with %j is %s', (platform, env, expected) => {
    expect(dataFolder(env, platform, home)).toBe(expected);
  });
});
