import { randomUUID } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Host } from '../../electron/loopback/host.ts';
import { openBrowser } from '../e2e/support/browser.ts';
import { openOwn, type TestDesk } from '../service/support/desk.ts';
import { SMALL_PDF } from '../support/pictures.ts';
import { codeOf, openHost } from './support/openHost.ts';

// A page of another origin, in a real browser, that knows the port, the key and the start code, and
// tries every way a page has to reach another address. Each origin is one a practitioner could meet:
// another port of this machine (the same site, for the browser), its name, and a foreign name that
// leads to 127.0.0.1.
const ORIGINS = [
  ['another port', '127.0.0.1'],
  ['the name of this machine', 'localhost'],
  ['a foreign name', 'elsewhere.example'],
] as const;

let desk: TestDesk;
let host: Host;
let key: string;
let asked: string[];
let other: Server;
let otherPort: number;
let browser: Browser;
let code: string;
/** A file that came in, and one that is ready to go out; a stranger that knows them has stolen them. */
let tokens: { readonly taken: string; readonly made: string };

/** Everything that lies in the folder of transfers. */
const lying = (): string[] =>
  readdirSync(join(desk.folder, 'transfer'), { recursive: true, encoding: 'utf8' }).sort();

beforeEach(async () => {
  desk = await openOwn();
  const taken = await desk.service.takeIn('letter.pdf', Readable.from([SMALL_PDF]), 1e6);
  if (!taken.ok) expect.fail(taken.error.message);
  const made = await desk.ok('backup/make', { passphrase: null, workId: randomUUID() });
  tokens = { taken: taken.value.token, made: made.token };
  asked = [];
  const watched: TestDesk['service'] = {
    ...desk.service,
    call(name, input) {
      asked.push(name);
      return desk.service.call(name, input);
    },
    takeIn(...file) {
      asked.push('files/in');
      return desk.service.takeIn(...file);
    },
    giveOut(token) {
      asked.push('files/out');
      return desk.service.giveOut(token);
    },
  };
  ({ host, key } = await openHost(watched));
  code = codeOf(host.newAddress());
});
afterEach(() => host.close());

beforeAll(async () => {
  other = createServer((_request, response) => {
    response.setHeader('content-type', 'text/html');
    response.end('<!doctype html><title>Elsewhere</title><body></body>');
  });
  await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
  otherPort = (other.address() as AddressInfo).port;
  browser = await openBrowser(['--host-resolver-rules=MAP *.example 127.0.0.1']);
}, 60_000);
afterAll(async () => {
  await browser?.close();
  other?.close();
});

async function pageAt(address: string): Promise<Page> {
  const page = await (await browser.newContext()).newPage();
  page.setDefaultTimeout(10_000);
  await page.goto(address);
  return page;
}

interface Target {
  readonly port: number;
  readonly key: string;
  readonly code: string;
  readonly taken: string;
  readonly made: string;
}

/** Everything a page can send by script, and what it learns from it. */
async function tryAll(target: Target) {
  const base = `http://127.0.0.1:${target.port}`;
  const body = JSON.stringify({ code: target.code });
  const tried = async (path: string, init: RequestInit): Promise<string> => {
    try {
      const response = await fetch(base + path, init);
      return `${response.type} ${response.status} ${await response.text()}`;
    } catch {
      return 'failed';
    }
  };
  const loaded = (tag: 'img' | 'script' | 'link' | 'iframe', path: string): Promise<string> =>
    new Promise((resolve) => {
      const element = document.createElement(tag);
      const where = tag === 'link' ? 'href' : 'src';
      if (tag === 'link') element.setAttribute('rel', 'stylesheet');
      element.setAttribute(where, base + path);
      element.onload = () => resolve('loaded');
      element.onerror = () => resolve('failed');
      document.body.append(element);
    });
  const socket = (path: string): Promise<string> =>
    new Promise((resolve) => {
      const line = new WebSocket(`ws://127.0.0.1:${target.port}${path}`);
      line.onopen = () => resolve('opened');
      line.onerror = () => resolve('failed');
    });
  const events = (): Promise<string> =>
    new Promise((resolve) => {
      const source = new EventSource(`${base}/call/app/status`);
      source.onopen = () => resolve('opened');
      source.onerror = () => resolve('failed');
    });
  const authorization = `Bearer ${target.key}`;
  const out = `/files/out/${target.made}`;
  const bytes = new Blob([body], { type: 'application/octet-stream' });
  const form = new FormData();
  form.append('file', bytes, 'letter.pdf');
  const asFile = {
    authorization,
    'content-type': 'application/octet-stream',
    'trotwell-purpose': 'attachment',
    'trotwell-file-name': 'letter.pdf',
  };
  const sent = (init: RequestInit) => tried('/files/in', { method: 'POST', ...init });
  const json = { 'content-type': 'application/json', authorization };
  return {
    call: await tried('/call/app/status', { method: 'POST', headers: json, body: '{}' }),
    blindCall: await tried('/call/app/status', { method: 'POST', mode: 'no-cors', body: '{}' }),
    start: await tried('/start', { method: 'POST', headers: json, body }),
    blindStart: await tried('/start', { method: 'POST', mode: 'no-cors', body }),
    page: await tried('/', {}),
    blindPage: await tried('/', { mode: 'no-cors' }),
    beacon: String(navigator.sendBeacon(`${base}/start`, body)),
    image: await loaded('img', '/'),
    script: await loaded('script', '/assets/app.js'),
    style: await loaded('link', '/assets/app.js'),
    socket: await socket('/call/app/status'),
    events: await events(),
    fileIn: await sent({ headers: asFile, body: bytes }),
    blindFileIn: await sent({ mode: 'no-cors', body: bytes }),
    // The headers a request without permission may carry are kept; ours are left out by the browser.
    blindFileInWithHeaders: await sent({ mode: 'no-cors', headers: asFile, body: bytes }),
    formIn: await sent({ mode: 'no-cors', body: form }),
    beaconIn: String(navigator.sendBeacon(`${base}/files/in`, form)),
    fileOut: await tried(out, { headers: { authorization } }),
    blindFileOut: await tried(out, { mode: 'no-cors', credentials: 'include' }),
    takenOut: await tried(`/files/out/${target.taken}`, { headers: { authorization } }),
    imageOut: await loaded('img', out),
    scriptOut: await loaded('script', out),
    socketOut: await socket(out),
    title: document.title,
  };
}

describe.each(ORIGINS)('a page of %s', (_what, name) => {
  let page: Page;

  beforeEach(async () => {
    page = await pageAt(`http://${name}:${otherPort}/`);
  });
  afterEach(() => page.context().close());

  test('learns nothing and changes nothing by script, even with key, code and tokens', async () => {
    const before = lying();
    const learned = await page.evaluate(tryAll, { port: host.port, key, code, ...tokens });
    expect(learned).toEqual({
      call: 'failed',
      blindCall: expect.stringMatching(/^(failed|opaque 0 )$/),
      start: 'failed',
      blindStart: expect.stringMatching(/^(failed|opaque 0 )$/),
      page: 'failed',
      blindPage: expect.stringMatching(/^(failed|opaque 0 )$/),
      beacon: expect.any(String),
      image: 'failed',
      script: 'failed',
      style: 'failed',
      socket: 'failed',
      events: 'failed',
      fileIn: 'failed',
      blindFileIn: expect.stringMatching(/^(failed|opaque 0 )$/),
      blindFileInWithHeaders: expect.stringMatching(/^(failed|opaque 0 )$/),
      formIn: expect.stringMatching(/^(failed|opaque 0 )$/),
      beaconIn: expect.any(String),
      fileOut: 'failed',
      blindFileOut: expect.stringMatching(/^(failed|opaque 0 )$/),
      takenOut: 'failed',
      imageOut: 'failed',
      scriptOut: 'failed',
      socketOut: 'failed',
      title: 'Elsewhere',
    });
    expect(asked).toEqual([]);
    expect(lying()).toEqual(before);
  });

  test.each([
    ['/call/app/open', 'text/plain'],
    ['/call/app/open', 'application/x-www-form-urlencoded'],
    ['/call/app/open', 'multipart/form-data'],
    ['/start', 'text/plain'],
    ['/files/in', 'multipart/form-data'],
    ['/files/in', 'text/plain'],
  ])('posts no form to %s as %s', async (path, enctype) => {
    const answered = page.context().waitForEvent('response');
    await page.evaluate(
      ({ action, type, spent }) => {
        const form = document.createElement('form');
        form.method = 'post';
        form.action = action;
        form.enctype = type;
        form.target = '_blank';
        const input = document.createElement('input');
        // In text/plain this body is JSON: {"code":"…","x":"="}.
        input.name = `{"code":"${spent}","which":"own","x":"`;
        input.value = '"}';
        form.append(input);
        document.body.append(form);
        form.submit();
      },
      { action: `http://127.0.0.1:${host.port}${path}`, type: enctype, spent: code },
    );
    expect((await answered).status()).toBe(403);
    expect(asked).toEqual([]);
  });

  test.each(['made', 'taken'] as const)(
    'downloads no file by its stolen token: %s',
    async (kind) => {
      const before = lying();
      const answered = page.context().waitForEvent('response');
      let downloads = 0;
      page.context().on('page', (opened) => opened.on('download', () => (downloads += 1)));
      page.on('download', () => (downloads += 1));
      await page.evaluate((address) => {
        const link = document.createElement('a');
        link.href = address;
        link.target = '_blank';
        link.download = 'stolen';
        document.body.append(link);
        link.click();
      }, `http://127.0.0.1:${host.port}/files/out/${tokens[kind]}`);
      expect((await answered).status()).toBe(403);
      expect(downloads).toBe(0);
      expect(asked).toEqual([]);
      expect(lying()).toEqual(before);
    },
  );

  test('shows no page of ours in a frame or a window it can reach into', async () => {
    const [opened, reached] = await Promise.all([
      page.context().waitForEvent('page'),
      page.evaluate(async (address) => {
        const frame = document.createElement('iframe');
        frame.src = address;
        document.body.append(frame);
        await new Promise((resolve) => (frame.onload = resolve));
        const opened = window.open(address);
        await new Promise((resolve) => setTimeout(resolve, 500));
        const titleOf = (of: Window | null): string => {
          try {
            return of === null ? 'none' : of.document.title;
          } catch {
            return 'out of reach';
          }
        };
        return [titleOf(frame.contentWindow), titleOf(opened)];
      }, `http://127.0.0.1:${host.port}/`),
    ]);
    expect(reached.join()).not.toContain('Trotwell');
    for (const frame of page.frames()) expect(await frame.title()).not.toContain('Trotwell');
    expect(await opened.title()).not.toContain('Trotwell');
    expect(asked).toEqual([]);
  });
});

// Lest the tests above pass because nothing passes.
test('our own page reaches all of it in the same browser, with the code still unused', async () => {
  const page = await pageAt(`http://127.0.0.1:${host.port}/`);
  expect(await page.title()).toBe('Trotwell runs');
  const learned = await page.evaluate(
    async ({ path, body }) => {
      const post = async (to: string, text: string, authorization = '') => {
        const headers = { 'content-type': 'application/json', authorization };
        return (await fetch(to, { method: 'POST', headers, body: text })).json();
      };
      const { key: given } = (await post('/start', body)) as { key: string };
      return post(path, '{}', `Bearer ${given}`) as Promise<unknown>;
    },
    { path: '/call/app/status', body: JSON.stringify({ code }) },
  );
  expect(learned).toMatchObject({ ok: true, value: { open: 'own' } });
  expect(asked).toEqual(['app/status']);
  await page.context().close();
});

// And lest those about files do: the same tokens and headers from our own page.
test('our own page hands a file over and gets one, each once', async () => {
  const page = await pageAt(`http://127.0.0.1:${host.port}/`);
  const learned = await page.evaluate(
    async ({ key: known, made }) => {
      const authorization = `Bearer ${known}`;
      const sent = await fetch('/files/in', {
        method: 'POST',
        headers: {
          authorization,
          'content-type': 'application/octet-stream',
          'trotwell-purpose': 'attachment',
          'trotwell-file-name': 'letter.pdf',
        },
        body: new Blob(['x']),
      });
      const got = [];
      for (let i = 0; i < 2; i++) {
        const response = await fetch(`/files/out/${made}`, { headers: { authorization } });
        got.push((await response.blob()).size > 0 ? response.status : `empty ${response.status}`);
      }
      return { sent: ((await sent.json()) as { ok: boolean }).ok, got };
    },
    { key, made: tokens.made },
  );
  expect(learned).toEqual({ sent: true, got: [200, 'empty 404'] });
  // While the first is still on its way out, the host answers the second by itself.
  expect(asked.slice(0, 2)).toEqual(['files/in', 'files/out']);
  await page.context().close();
});

test('a name that is led to this machine later gets no page and no answer', async () => {
  const page = await (await browser.newContext()).newPage();
  const answered = page.waitForEvent('response');
  // Chromium shows an error page of its own for an answer without a body.
  await page.goto(`http://rebound.example:${host.port}/`).catch(() => undefined);
  expect((await answered).status()).toBe(403);
  expect(await page.title()).not.toContain('Trotwell');
  await page.context().close();
});
