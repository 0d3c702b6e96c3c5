import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Host } from '../../electron/loopback/host.ts';
import { openBrowser } from '../e2e/support/browser.ts';
import { openOwn, type TestDesk } from '../service/desk.ts';
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

beforeEach(async () => {
  desk = await openOwn();
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

/** Everything a page can send by script, and what it learns from it. */
async function tryAll(target: { port: number; key: string; code: string }) {
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
  const socket = (): Promise<string> =>
    new Promise((resolve) => {
      const line = new WebSocket(`ws://127.0.0.1:${target.port}/call/app/status`);
      line.onopen = () => resolve('opened');
      line.onerror = () => resolve('failed');
    });
  const events = (): Promise<string> =>
    new Promise((resolve) => {
      const source = new EventSource(`${base}/call/app/status`);
      source.onopen = () => resolve('opened');
      source.onerror = () => resolve('failed');
    });
  const json = { 'content-type': 'application/json', authorization: `Bearer ${target.key}` };
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
    socket: await socket(),
    events: await events(),
    title: document.title,
  };
}

describe.each(ORIGINS)('a page of %s', (_what, name) => {
  let page: Page;

  beforeEach(async () => {
    page = await pageAt(`http://${name}:${otherPort}/`);
  });
  afterEach(() => page.context().close());

  test('learns nothing and changes nothing by script, even with the key and the code', async () => {
    const learned = await page.evaluate(tryAll, { port: host.port, key, code });
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
      title: 'Elsewhere',
    });
    expect(asked).toEqual([]);
  });

  test.each([
    ['/call/app/open', 'text/plain'],
    ['/call/app/open', 'application/x-www-form-urlencoded'],
    ['/call/app/open', 'multipart/form-data'],
    ['/start', 'text/plain'],
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

test('a name that is led to this machine later gets no page and no answer', async () => {
  const page = await (await browser.newContext()).newPage();
  const answered = page.waitForEvent('response');
  // Chromium shows an error page of its own for an answer without a body.
  await page.goto(`http://rebound.example:${host.port}/`).catch(() => undefined);
  expect((await answered).status()).toBe(403);
  expect(await page.title()).not.toContain('Trotwell');
  await page.context().close();
});
