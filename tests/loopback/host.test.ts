import { networkInterfaces } from 'node:os';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Host } from '../../electron/loopback/host.ts';
import { testService, type TestDesk } from '../service/support/desk.ts';
import { codeOf, openHost } from './support/openHost.ts';
import { openLine, reaches, send, type Reply } from './support/raw.ts';

let host: Host;
let key: string;
let desk: TestDesk;

beforeEach(async () => {
  desk = testService();
  ({ host, key } = await openHost(desk.service));
});
afterEach(() => host.close());

const JSON_BODY = { 'content-type': 'application/json' };

const call = (headers: Record<string, string> = {}, body = '{}', path = '/call/app/status') =>
  send({
    port: host.port,
    method: 'POST',
    path,
    headers: { authorization: `Bearer ${key}`, ...JSON_BODY, ...headers },
    body,
  });

const start = (body: string, headers: Record<string, string> = {}): Promise<Reply> =>
  send({
    port: host.port,
    method: 'POST',
    path: '/start',
    headers: { ...JSON_BODY, ...headers },
    body,
  });

type Headers = Record<string, string | (() => string)>;

/** Header values that hold the port are known only once the host runs. */
const settled = (headers: Headers): Record<string, string> =>
  Object.fromEntries(
    Object.entries(headers).map(([name, value]) => [
      name,
      typeof value === 'string' ? value : value(),
    ]),
  );

const STRANGERS: [string, Headers][] = [
  ['a foreign origin', { origin: 'http://elsewhere.example' }],
  ['the null origin', { origin: 'null' }],
  ['another port as origin', { origin: 'http://127.0.0.1:1' }],
  ['an origin that differs from the host', { origin: () => `http://localhost:${host.port}` }],
  ['the right origin over https', { origin: () => `https://127.0.0.1:${host.port}` }],
  ['an origin that only begins so', { origin: () => `http://127.0.0.1:${host.port}.example` }],
  ['a host without the port', { host: '127.0.0.1' }],
  ['a host of another port', { host: '127.0.0.1:1' }],
  ['a host that only begins so', { host: () => `127.0.0.1.example:${host.port}` }],
  ['another spelling of the same address', { host: () => `127.1:${host.port}` }],
  ['a rebound host name', { host: 'rebound.example' }],
  ['a cross-site fetch', { 'sec-fetch-site': 'cross-site' }],
  ['a same-site fetch from another port', { 'sec-fetch-site': 'same-site' }],
];
const NOT_JSON: [string, Headers][] = [
  ['a form body', { 'content-type': 'application/x-www-form-urlencoded' }],
  ['a form with files', { 'content-type': 'multipart/form-data; boundary=x' }],
  ['a text body', { 'content-type': 'text/plain' }],
  ['a body of no type', { 'content-type': '' }],
  ['a type that only begins so', { 'content-type': 'application/json-patch' }],
];

describe('a call', () => {
  test('with the key is answered', async () => {
    const reply = await call();
    expect(reply.status).toBe(200);
    expect(JSON.parse(reply.body)).toMatchObject({ ok: true, value: { open: null } });
  });

  test.each<[string, Headers, number]>([
    ['no key', { authorization: '' }, 401],
    ['another key', { authorization: 'Bearer nope' }, 401],
    ['a key that only begins so', { authorization: () => `Bearer ${key}x` }, 401],
    ['a key cut short', { authorization: () => `Bearer ${key.slice(0, -1)}` }, 401],
    ['the key under another scheme', { authorization: () => `Basic ${key}` }, 401],
    ['a start code for a key', { authorization: () => `Bearer ${codeOf(host.newAddress())}` }, 401],
    ...STRANGERS.map(([what, headers]): [string, Headers, number] => [what, headers, 403]),
    ...NOT_JSON.map(([what, headers]): [string, Headers, number] => [what, headers, 415]),
  ])('with %s is refused', async (_what, headers, status) => {
    const reply = await call(settled(headers));
    expect(reply.status).toBe(status);
    expect(reply.body).toBe('');
  });

  test.each<[string, Headers]>([
    ['its own origin', { origin: () => `http://127.0.0.1:${host.port}` }],
    [
      'the name localhost',
      { host: () => `localhost:${host.port}`, origin: () => `http://localhost:${host.port}` },
    ],
    ['a fetch from its own page', { 'sec-fetch-site': 'same-origin' }],
    ['a charset', { 'content-type': 'application/json; charset=utf-8' }],
  ])('with %s is answered', async (_what, headers) => {
    expect((await call(settled(headers))).status).toBe(200);
  });

  test.each(['GET', 'PUT', 'DELETE', 'OPTIONS', 'PATCH'])('by %s is unknown', async (method) => {
    const reply = await send({
      port: host.port,
      method,
      path: '/call/app/status',
      headers: { authorization: `Bearer ${key}`, ...JSON_BODY },
    });
    expect(reply.status).toBe(404);
    expect(reply.headers['access-control-allow-origin']).toBeUndefined();
  });

  test.each(['/call/nothing/here', '/call/__proto__/x', '/call/constructor/name'])(
    'to %s is answered with an error value',
    async (path) => {
      expect(JSON.parse((await call({}, '{}', path)).body)).toMatchObject({ ok: false });
    },
  );

  test('that is not JSON is answered with an error value', async () => {
    expect(JSON.parse((await call({}, '{')).body)).toMatchObject({ ok: false });
  });
});

test.each([
  ['no host, in the old version', 'GET / HTTP/1.0\r\n\r\n'],
  ['no host', 'GET / HTTP/1.1\r\n\r\n'],
  ['an empty host', 'GET / HTTP/1.1\r\nHost:\r\nConnection: close\r\n\r\n'],
  ['two hosts', 'GET / HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nHost: x\r\nConnection: close\r\n\r\n'],
  ['a whole address', 'GET http://x/ HTTP/1.1\r\nHost: x\r\nConnection: close\r\n\r\n'],
  ['a tunnel', 'CONNECT 127.0.0.1:22 HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\n\r\n'],
  [
    'an upgrade to a WebSocket',
    'GET / HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n' +
      'Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\nSec-WebSocket-Version: 13\r\n\r\n',
  ],
])('a request with %s gets no page', async (_what, text) => {
  const line = openLine(host.port);
  line.write(text.replaceAll('PORT', String(host.port)));
  await line.ended;
  expect(line.text()).not.toContain('200 OK');
  expect(line.text()).not.toContain('<title>');
});

describe('the exchange of a start code', () => {
  const code = () => JSON.stringify({ code: codeOf(host.newAddress()) });

  test('gives a key, once', async () => {
    const body = code();
    const reply = await start(body, { origin: `http://127.0.0.1:${host.port}` });
    expect(reply.status).toBe(200);
    const given = (JSON.parse(reply.body) as { key: string }).key;
    expect((await call({ authorization: `Bearer ${given}` })).status).toBe(200);
    const again = await start(body);
    expect(again.status).toBe(410);
    expect(JSON.parse(again.body)).toEqual({ refused: 'used' });
    expect((await call({ authorization: `Bearer ${given}` })).status).toBe(401);
  });

  test('keeps the code out of what browsers send', () => {
    const address = new URL(host.newAddress());
    expect(address.search).toBe('');
    expect(address.pathname).toBe('/open');
    expect(address.username + address.password).toBe('');
  });

  test.each([...STRANGERS, ...NOT_JSON])(
    'is refused with %s, and the code is left',
    async (_what, headers) => {
      const body = code();
      const reply = await start(body, settled(headers));
      expect([403, 415]).toContain(reply.status);
      expect(reply.body).toBe('');
      expect((await start(body)).status).toBe(200);
    },
  );

  test.each(['', '{', 'null', '[]', '"x"', '{}', '{"code":7}', '{"code":["x"]}', '{"code":""}'])(
    'gives nothing for %j',
    async (body) => {
      const reply = await start(body);
      expect(reply.status).toBe(410);
      expect(JSON.parse(reply.body)).toEqual({ refused: 'late' });
    },
  );

  test('reads no long body', async () => {
    expect((await start(JSON.stringify({ code: 'x'.repeat(2_000) }))).status).toBe(413);
  });

  test.each(['GET', 'PUT', 'HEAD', 'OPTIONS'])('is unknown by %s', async (method) => {
    expect((await send({ port: host.port, method, path: '/start' })).status).toBe(404);
  });
});

describe('the front end', () => {
  test('is served', async () => {
    const reply = await send({ port: host.port, path: '/' });
    expect(reply.status).toBe(200);
    expect(reply.headers['content-type']).toBe('text/html; charset=utf-8');
  });

  test('is answered as not found where a start code is handed in: it stays out of histories', async () => {
    const path = new URL(host.newAddress()).pathname;
    const [reply, page] = await Promise.all(
      [path, '/'].map((of) => send({ port: host.port, path: of })),
    );
    expect(reply!.status).toBe(404);
    expect(reply!.body).toBe(page!.body);
  });

  test.each([
    '/../package.json',
    '/assets/../../x',
    '/%2e%2e/x',
    '/..%2f..%2fpackage.json',
    '/assets/..%5c..%5cx',
    '/linked.html',
    '/assets/',
    '/nope',
    '/__proto__',
  ])('has no file at %s', async (path) => {
    expect((await send({ port: host.port, path })).status).toBe(404);
  });
});

// As their specifications spell them (M): CSP 3, Fetch (nosniff, CORP), HTML (COOP), RFC 9111
// (no-store).
describe('the strict headers', () => {
  const REQUESTS: [string, () => Promise<Reply>, number][] = [
    ['the page', () => send({ port: host.port, path: '/' }), 200],
    ['a script', () => send({ port: host.port, path: '/assets/app.js' }), 200],
    ['an answer', () => call(), 200],
    ['a missing file', () => send({ port: host.port, path: '/nope' }), 404],
    ['a call without the key', () => call({ authorization: '' }), 401],
    ['another origin', () => call({ origin: 'http://elsewhere.example' }), 403],
    ['another host', () => send({ port: host.port, path: '/', headers: { host: 'x' } }), 403],
    ['a form', () => call({ 'content-type': 'text/plain' }), 415],
    ['a body over the limit', () => call({ 'content-length': String(5 * 1024 * 1024) }), 413],
    [
      'a file that comes without the key',
      () => send({ port: host.port, method: 'POST', path: '/files/in' }),
      401,
    ],
    [
      'a file that is not there',
      () =>
        send({
          port: host.port,
          path: '/files/out/nothing',
          headers: { authorization: `Bearer ${key}` },
        }),
      404,
    ],
    ['an old start code', () => start('{}'), 410],
  ];

  test.each(REQUESTS)('come with %s', async (_what, ask, status) => {
    const reply = await ask();
    expect(reply.status).toBe(status);
    const policy = String(reply.headers['content-security-policy']).split('; ');
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("connect-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).toContain("form-action 'none'");
    expect(policy).toContain("base-uri 'none'");
    expect(policy.join()).not.toMatch(/unsafe|\*|https?:/);
    expect(reply.headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'referrer-policy': 'no-referrer',
      'cache-control': 'no-store',
    });
    expect(Object.keys(reply.headers).filter((name) => name.startsWith('access-control'))).toEqual(
      [],
    );
    expect(reply.headers['x-powered-by'] ?? reply.headers['server']).toBeUndefined();
  });
});

test('the host listens on 127.0.0.1 only', async () => {
  const others = Object.values(networkInterfaces())
    .flatMap((entries) => entries ?? [])
    .map(({ address, scopeid }) => (scopeid ? `${address}%${scopeid}` : address))
    .filter((address) => address !== '127.0.0.1');
  // The whole of 127.0.0.0/8 leads to this machine on Linux; only one address of it is ours.
  if (process.platform === 'linux') others.push('127.0.0.2', '::1');
  for (const address of others) expect(await reaches(address, host.port)).toBe(false);
  expect(await reaches('127.0.0.1', host.port)).toBe(true);
});

test('an answer under way goes out when the host closes', async () => {
  const { port } = host;
  const line = openLine(port);
  line.write(
    `POST /call/app/status HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nAuthorization: Bearer ${key}\r\n` +
      'Content-Type: application/json\r\nContent-Length: 2\r\nExpect: 100-continue\r\n\r\n',
  );
  await line.next();
  const closed = host.close();
  line.write('{}');
  await Promise.all([line.ended, closed]);
  expect(line.text()).toContain('200 OK');
  expect(await reaches('127.0.0.1', port)).toBe(false);
  ({ host, key } = await openHost(desk.service));
});

test('a file that comes in without end does not keep the host from closing', async () => {
  const { port } = host;
  const line = openLine(port);
  line.write(
    `POST /files/in HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nAuthorization: Bearer ${key}\r\n` +
      'Content-Type: application/octet-stream\r\nTrotwell-Purpose: attachment\r\n' +
      'Trotwell-File-Name: x.pdf\r\nContent-Length: 1000000\r\n\r\nx',
  );
  const drip = setInterval(() => line.write('x'), 100);
  await new Promise((resolve) => setTimeout(resolve, 300));
  await host.close();
  clearInterval(drip);
  ({ host, key } = await openHost(desk.service));
}, 30_000);

test('a request refused before its body was read leaves no timer behind', async () => {
  const timers = (): number =>
    process.getActiveResourcesInfo().filter((name) => name === 'Timeout').length;
  const brief = await openHost(desk.service, { slowestRequestMs: 100 });
  const before = timers();
  for (let i = 0; i < 20; i++) {
    const line = openLine(brief.host.port);
    line.write(`POST /call/app/status HTTP/1.1\r\nHost: 127.0.0.1:${brief.host.port}\r\n`);
    line.write('Content-Length: 3000000\r\n\r\n');
    await line.next();
    line.end();
    await line.ended;
  }
  await brief.host.close();
  await expect.poll(timers).toBeLessThan(before + 10);
});
