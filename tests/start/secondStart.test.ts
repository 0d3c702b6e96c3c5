import { spawn, type ChildProcess } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../service/support/desk.ts';
import { boot } from '../shell/support/boot.ts';

const ENTRY = fileURLToPath(new URL('../../electron/loopback/main.mjs', import.meta.url));
const ADDRESS = /http:\/\/127\.0\.0\.1:\d+\/open#start=\S+/g;
const children: ChildProcess[] = [];

afterEach(() => {
  for (const child of children.splice(0)) child.kill('SIGKILL');
});

interface Run {
  readonly child: ChildProcess;
  readonly ended: Promise<number | null>;
  text(): string;
  /** The addresses it has printed. */
  addresses(): string[];
}

/** A start in a process of its own. */
function start(folder: string, words: readonly string[] = [], env: NodeJS.ProcessEnv = {}): Run {
  const child = spawn(process.execPath, [ENTRY, ...words], {
    env: { ...process.env, ...env, TROTWELL_DATA: folder },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  children.push(child);
  let output = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (part: Buffer) => (output += part.toString()));
  }
  return {
    child,
    ended: new Promise((resolve) => child.once('close', resolve)),
    text: () => output,
    addresses: () => output.match(ADDRESS) ?? [],
  };
}

async function running(...args: Parameters<typeof start>): Promise<Run> {
  const run = start(...args);
  await expect.poll(() => run.text(), { timeout: 30_000 }).toMatch(/Press .*\n/);
  return run;
}

async function enter(address: string): Promise<{ status: number; key: string }> {
  const { origin, hash } = new URL(address);
  const code = /^#start=([^&]+)/.exec(hash)![1];
  const response = await fetch(`${origin}/start`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ code }),
  });
  const { key = '' } = (await response.json()) as { key?: string };
  return { status: response.status, key };
}

/** Every word that lies in the folder where starts leave their requests. */
function lyingIn(folder: string): string {
  const place = join(folder, 'running');
  return readdirSync(place)
    .map((name) => `${name}\n${readFileSync(join(place, name), 'utf8')}`)
    .join('\n');
}

describe('a second start on the same records', () => {
  test('has the first open and print a new address, says so, and ends well', async () => {
    const folder = temporaryFolder();
    const bin = join(folder, 'bin');
    mkdirSync(bin);
    // In the place of the system's own: notes the address it is to open in a browser.
    const opened = join(folder, 'opened');
    writeFileSync(join(bin, 'xdg-open'), `#!/bin/sh\necho "$1" >> "${opened}"\n`);
    chmodSync(join(bin, 'xdg-open'), 0o755);
    const env = { PATH: `${bin}:${process.env['PATH']}` };
    const first = await running(join(folder, 'data'), ['--open'], env);
    const second = start(join(folder, 'data'));
    expect(await second.ended).toBe(0);
    expect(second.text()).toMatch(/already running .* come to the front/);
    await expect.poll(() => first.addresses()).toHaveLength(2);
    const [unused, fresh] = first.addresses();
    expect((await enter(unused!)).status).toBe(410);
    expect((await enter(fresh!)).status).toBe(200);
    if (process.platform === 'linux') {
      await expect.poll(() => readFileSync(opened, 'utf8').split('\n')).toContain(fresh);
    }
    // The one that asks learns nothing, and nothing is left that opens a window.
    expect(second.addresses()).toEqual([]);
    for (const address of first.addresses()) {
      expect(lyingIn(join(folder, 'data'))).not.toContain(/start=([^&]+)/.exec(address)![1]);
    }
    first.child.kill('SIGINT');
    expect(await first.ended).toBe(0);
  });

  test('hands over the file it was to open; so does a first start', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'Löwe & Sohn.trotwell');
    writeFileSync(file, 'no backup');
    const first = await running(join(folder, 'data'), [file]);
    expect(await start(join(folder, 'data'), [file]).ended).toBe(0);
    await expect.poll(() => first.addresses()).toHaveLength(2);
    const { key } = await enter(first.addresses()[1]!);
    const tokens = first.addresses().map((address) => {
      const { origin, hash } = new URL(address);
      const [page, words] = hash.slice(hash.indexOf('&') + 1).split('?');
      const query = new URLSearchParams(words);
      expect([page, query.get('name')]).toEqual(['/restore', 'Löwe & Sohn.trotwell']);
      return { origin, token: query.get('file')! };
    });
    for (const { origin, token } of tokens) {
      const answer = await fetch(`${origin}/call/backup/look`, {
        method: 'POST',
        headers: { 'content-type': 'application/json', authorization: `Bearer ${key}` },
        body: JSON.stringify({
          source: { token },
          passphrase: null,
          workId: crypto.randomUUID(),
        }),
      });
      // Arrived, and looked into.
      expect(await answer.text()).toContain('not a backup of Trotwell');
    }
    expect(first.text()).not.toContain(file);
  });

  test('takes over at once where the first was killed', async () => {
    const folder = temporaryFolder();
    const first = await running(folder);
    first.child.kill('SIGKILL');
    await first.ended;
    const second = await running(folder);
    expect((await enter(second.addresses()[0]!)).status).toBe(200);
  });

  test('of the Electron window gives way to the browser window, which opens a new one', async () => {
    const folder = temporaryFolder();
    const first = await running(folder);
    const seen = boot({ TROTWELL_DATA: folder });
    expect(seen).toMatchObject({
      quit: true,
      windows: 0,
      messages: [expect.stringContaining('already running on these records, in a browser')],
    });
    await expect.poll(() => first.addresses()).toHaveLength(2);
  });
});

test.each([
  ['missing.trotwell', 'missing.trotwell is not there, or may not be read.'],
  ['folder.trotwell', 'folder.trotwell is not a file.'],
])('a start with a file it cannot open says so and ends: %s', async (name, sentence) => {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'folder.trotwell'));
  const run = start(join(folder, 'data'), [join(folder, name)]);
  expect(await run.ended).toBe(1);
  expect(run.text().trim()).toBe(sentence);
  expect(existsSync(join(folder, 'data'))).toBe(false);
});
