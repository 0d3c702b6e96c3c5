import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, test } from 'vitest';
import { temporaryFolder, testService } from '../service/support/desk.ts';
import { codeOf, openHost } from './support/openHost.ts';
import { openLine, send } from './support/raw.ts';

const MAIN = fileURLToPath(new URL('../../electron/loopback/main.mjs', import.meta.url));
const ADDRESS = /http:\/\/127\.0\.0\.1:\d+\/open#start=[\w-]+(?=\s)/g;
const children: ChildProcess[] = [];

afterEach(() => {
  for (const child of children.splice(0)) child.kill('SIGKILL');
});

async function until<T>(found: () => T | null | undefined | false): Promise<T> {
  for (;;) {
    const value = found();
    if (value) return value;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}

/** Runs the host as a process of its own and keeps what it prints on both streams. */
function run(args: readonly string[], env: Record<string, string> = {}) {
  const child = spawn(process.execPath, [MAIN, ...args], {
    env: { ...process.env, TROTWELL_DATA: temporaryFolder(), ...env },
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  children.push(child);
  let printed = '';
  let complained = '';
  child.stdout.on('data', (part: Buffer) => (printed += part.toString()));
  child.stderr.on('data', (part: Buffer) => (complained += part.toString()));
  return {
    child,
    printed: () => printed,
    complained: () => complained,
    address: (index: number) => until(() => printed.match(ADDRESS)?.[index]),
  };
}

const post = (origin: string, path: string, body: unknown, key: string) =>
  fetch(origin + path, {
    method: 'POST',
    headers: { 'content-type': 'application/json', authorization: `Bearer ${key}` },
    body: JSON.stringify(body),
  });

describe('what the host prints', () => {
  test('has no key in it, and a start code only in the addresses', async () => {
    const host = run([]);
    const address = await host.address(0);
    const { origin } = new URL(address);
    const entered = await post(origin, '/start', { code: codeOf(address) }, '');
    const { key } = (await entered.json()) as { key: string };
    expect((await post(origin, '/call/app/open', { which: 'demo' }, key)).status).toBe(200);
    // All that could tempt a log: refusals, errors, unknown names, the code and key in odd places.
    await post(origin, '/call/app/open', { which: key }, key);
    await post(origin, `/call/${key}/${codeOf(address)}`, {}, key);
    await post(origin, '/call/dogs/file', { dogId: key }, key);
    await post(origin, '/start', { code: codeOf(address) }, 'nobody');
    await post(origin, '/call/app/status', {}, key);
    await fetch(`${origin}/${key}`);
    host.child.kill('SIGINT');
    await once(host.child, 'close');
    expect(host.complained()).toBe('');
    expect(host.printed()).not.toContain(key);
    const rest = host.printed().replaceAll(address, '');
    expect(rest).not.toContain(codeOf(address));
    expect(rest).toContain('Trotwell is closed.');
  });

  test('is a new address for every Enter, which shuts out the one before', async () => {
    const host = run([]);
    const first = await host.address(0);
    host.child.stdin!.write('\n');
    const second = await host.address(1);
    expect(second).not.toBe(first);
    const { origin } = new URL(first);
    expect((await post(origin, '/start', { code: codeOf(first) }, '')).status).toBe(410);
    expect((await post(origin, '/start', { code: codeOf(second) }, '')).status).toBe(200);
  });

  test('goes on when the terminal it was started from is gone', async () => {
    const host = run([]);
    const address = await host.address(0);
    host.child.stdin!.end();
    const { origin } = new URL(address);
    await new Promise((resolve) => setTimeout(resolve, 200));
    expect((await post(origin, '/start', { code: codeOf(address) }, '')).status).toBe(200);
  });
});

// Every user of a Linux machine can read the words another's program was started with.
describe.skipIf(process.platform !== 'linux')('the words the browser is started with', () => {
  test('are the printed address, which opens nothing more once the window has it', async () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'bin'));
    const opener = join(folder, 'bin', 'xdg-open');
    const seen = join(folder, 'seen');
    writeFileSync(
      opener,
      `#!/bin/sh\nprintf '%s\\n' "$@" > '${seen}.part'; env >> '${seen}.part'\nmv '${seen}.part' '${seen}'\n`,
    );
    chmodSync(opener, 0o755);
    const path = `${join(folder, 'bin')}${delimiter}${process.env['PATH']}`;
    const host = run(['--open'], { PATH: path });
    const address = await host.address(0);
    const words = await until(() => existsSync(seen) && readFileSync(seen, 'utf8'));
    expect(words.split('\n')[0]).toBe(address);
    const { origin } = new URL(address);
    const entered = await post(origin, '/start', { code: codeOf(address) }, '');
    const { key } = (await entered.json()) as { key: string };
    expect(words).not.toContain(key);
    const own = readFileSync(`/proc/${host.child.pid}/cmdline`, 'utf8');
    expect(own).not.toContain(key);
    expect(own).not.toContain(codeOf(address));
    expect((await post(origin, '/start', { code: codeOf(address) }, '')).status).toBe(410);
  });
});

test('the service writes neither key nor code into its log', async () => {
  const desk = testService();
  const { host, key } = await openHost(desk.service);
  const code = codeOf(host.newAddress());
  const ask = (path: string, body: unknown, authorization: string) =>
    send({
      port: host.port,
      method: 'POST',
      path,
      headers: { 'content-type': 'application/json', authorization },
      body: JSON.stringify(body),
    });
  await ask('/call/app/status', { key, code }, `Bearer ${key}`);
  await ask('/call/app/status', {}, `Bearer ${code}`);
  await ask(`/call/${code}/${key}`, {}, `Bearer ${key}`);
  await ask('/start', { code }, '');
  await host.close();
  expect(desk.log.join('\n')).not.toContain(key);
  expect(desk.log.join('\n')).not.toContain(code);
});

test('the host ends at Ctrl-C also after a request that was refused unread', async () => {
  const host = run([]);
  const { port } = new URL(await host.address(0));
  const line = openLine(Number(port));
  line.write(
    `POST /call/app/status HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nContent-Length: 3000000\r\n\r\n{`,
  );
  await line.next();
  expect(line.text()).toMatch(/^HTTP\/1\.1 401/);
  line.end();
  host.child.kill('SIGINT');
  await once(host.child, 'close');
  expect(host.printed()).toContain('Trotwell is closed.');
});
