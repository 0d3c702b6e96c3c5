import { connect } from 'node:net';
import { request as httpRequest } from 'node:http';
import { networkInterfaces } from 'node:os';
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createDoor } from '../../electron/loopback/door.ts';
import { startHost, type Host } from '../../electron/loopback/host.ts';
import { temporaryFolder, testService, type TestDesk } from '../service/desk.ts';

let host: Host;
/** The key of a window that came in at the door. */
let key: string;
let desk: TestDesk;
let rendererFolder: string;

beforeEach(async () => {
  desk = testService();
  rendererFolder = temporaryFolder();
  mkdirSync(join(rendererFolder, 'assets'));
  writeFileSync(join(rendererFolder, 'index.html'), '<!doctype html><title>Trotwell</title>');
  writeFileSync(join(rendererFolder, 'assets', 'app.js'), 'export {};');
  const outside = temporaryFolder();
  writeFileSync(join(outside, 'secret.html'), 'secret');
  symlinkSync(join(outside, 'secret.html'), join(rendererFolder, 'linked.html'));
  await open();
});
afterEach(() => host.close());

async function open(): Promise<void> {
  const door = createDoor();
  host = await startHost({ service: desk.service, rendererFolder, door });
  const entered = door.exchange(door.newCode());
  key = entered.kind === 'key' ? entered.key : expect.fail('The door is shut.');
}

interface Reply {
  readonly status: number;
  readonly headers: Record<string, string | string[] | undefined>;
  readonly body: string;
}

/** A raw request: unlike fetch it lets a test choose Host and path freely. */
function send(options: {
  method?: string;
  path: string;
  headers?: Record<string, string>;
  body?: string;
}): Promise<Reply> {
  return new Promise((resolve, reject) => {
    const request = httpRequest(
      {
        host: '127.0.0.1',
        port: host.port,
        method: options.method ?? 'GET',
        path: options.path,
        headers: options.headers ?? {},
      },
      (response) => {
        let body = '';
        response.setEncoding('utf8').on('data', (chunk: string) => (body += chunk));
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
        );
      },
    );
    request.on('error', reject);
    request.end(options.body);
  });
}

const call = (headers: Record<string, string> = {}, body = '{}', path = '/call/app/status') =>
  send({
    method: 'POST',
    path,
    headers: { authorization: `Bearer ${key}`, 'content-type': 'application/json', ...headers },
    body,
  });

const codeOf = (address: string): string => new URL(address).hash.slice('#start='.length);

/** Header values that hold the port are known only once the host runs. */
function settled(headers: Record<string, string | (() => string) | undefined>) {
  return Object.fromEntries(
    Object.entries(headers).flatMap(([name, value]) =>
      value === undefined ? [] : [[name, typeof value === 'string' ? value : value()]],
    ),
  );
}

/** The head of a call, for a test that sends the body itself. */
const head = (headers: Record<string, string>, port = host.port): string =>
  [
    'POST /call/app/status HTTP/1.1',
    `Host: 127.0.0.1:${port}`,
    `Authorization: Bearer ${key}`,
    'Content-Type: application/json',
    ...Object.entries(headers).map(([name, value]) => `${name}: ${value}`),
    '',
    '',
  ].join('\r\n');

function reaches(address: string, port = host.port): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect({ host: address, port, timeout: 2_000 });
    const end = (reached: boolean) => {
      socket.destroy();
      resolve(reached);
    };
    socket.once('connect', () => end(true));
    socket.once('error', () => end(false));
    socket.once('timeout', () => end(false));
  });
}

describe('the loopback host', () => {
  test('answers a call that carries the key', async () => {
    const reply = await call();
    expect(reply.status).toBe(200);
    expect(JSON.parse(reply.body)).toMatchObject({ ok: true, value: { open: null } });
  });

  test.each([
    ['no key', { authorization: '' }, 401],
    ['another key', { authorization: 'Bearer nope' }, 401],
    ['a key that only begins so', { authorization: () => `Bearer ${key}x` }, 401],
    ['a start code for a key', { authorization: () => `Bearer ${codeOf(host.newAddress())}` }, 401],
    ['a foreign origin', { origin: 'http://elsewhere.example' }, 403],
    ['the null origin', { origin: 'null' }, 403],
    ['another port as origin', { origin: 'http://127.0.0.1:1' }, 403],
    [
      'an origin that differs from the host',
      { origin: () => `http://localhost:${host.port}` },
      403,
    ],
    ['the right origin over https', { origin: () => `https://127.0.0.1:${host.port}` }, 403],
    ['an address without the port', { host: '127.0.0.1' }, 403],
    ['an address that only begins so', { host: () => `127.0.0.1.example:${host.port}` }, 403],
    ['a cross-site fetch', { 'sec-fetch-site': 'cross-site' }, 403],
    ['a same-site fetch from another port', { 'sec-fetch-site': 'same-site' }, 403],
    ['a rebound host name', { host: 'rebound.example' }, 403],
    ['a form body', { 'content-type': 'application/x-www-form-urlencoded' }, 415],
    ['a text body', { 'content-type': 'text/plain' }, 415],
  ])('refuses a call with %s', async (_what, headers, status) => {
    const reply = await call(settled(headers));
    expect(reply.status).toBe(status);
    expect(reply.body).toBe('');
  });

  test.each([
    ['its own origin', { origin: () => `http://127.0.0.1:${host.port}` }],
    [
      'the name localhost',
      { host: () => `localhost:${host.port}`, origin: () => `http://localhost:${host.port}` },
    ],
    ['a fetch from its own page', { 'sec-fetch-site': 'same-origin' }],
    ['a charset', { 'content-type': 'application/json; charset=utf-8' }],
  ])('answers a call with %s', async (_what, headers) => {
    expect((await call(settled(headers))).status).toBe(200);
  });

  test.each(['GET', 'PUT', 'DELETE', 'OPTIONS', 'PATCH'])('takes no call by %s', async (method) => {
    const reply = await send({
      method,
      path: '/call/app/status',
      headers: { authorization: `Bearer ${key}`, 'content-type': 'application/json' },
    });
    expect(reply.status).toBe(404);
    expect(reply.headers['access-control-allow-origin']).toBeUndefined();
  });

  test('listens on 127.0.0.1 only', async () => {
    const others = Object.values(networkInterfaces())
      .flatMap((entries) => entries ?? [])
      .map(({ address, scopeid }) => (scopeid ? `${address}%${scopeid}` : address))
      .filter((address) => address !== '127.0.0.1');
    for (const address of others) expect(await reaches(address)).toBe(false);
    expect(await reaches('127.0.0.1')).toBe(true);
  });

  test('refuses a body over the limit', async () => {
    const reply = await call({}, JSON.stringify({ key: 'x'.repeat(5 * 1024 * 1024) }));
    expect(reply.status).toBe(413);
  });

  test('refuses a body over the limit that does not say its length', async () => {
    const piece = 'x'.repeat(64 * 1024);
    const socket = connect(host.port, '127.0.0.1');
    socket.on('error', () => undefined);
    let reply = '';
    socket.on('data', (part: Buffer) => (reply += part.toString()));
    const ended = new Promise((resolve) => socket.on('close', resolve));
    socket.write(head({ 'transfer-encoding': 'chunked', connection: 'close' }));
    for (let i = 0; i < 80 && socket.writable; i++) socket.write(`10000\r\n${piece}\r\n`);
    socket.write('0\r\n\r\n');
    await ended;
    expect(reply).toMatch(/^HTTP\/1\.1 413/);
  });

  test('cuts off a request that does not arrive in time', async () => {
    const impatient = await startHost({
      service: desk.service,
      rendererFolder,
      door: createDoor(),
      slowestRequestMs: 200,
    });
    const socket = connect(impatient.port, '127.0.0.1');
    socket.on('error', () => undefined);
    let reply = '';
    socket.on('data', (part: Buffer) => (reply += part.toString()));
    const ended = new Promise((resolve) => socket.on('close', resolve));
    socket.write(head({ 'content-length': '1000' }, impatient.port) + '{');
    await ended;
    expect(reply).not.toContain('200 OK');
    await impatient.close();
  });

  test('lets an answer under way go out when it closes', async () => {
    const { port } = host;
    const socket = connect(port, '127.0.0.1');
    let reply = '';
    socket.on('data', (part: Buffer) => (reply += part.toString()));
    const ended = new Promise((resolve) => socket.on('close', resolve));
    socket.write(head({ 'content-length': '2', expect: '100-continue' }, port));
    await new Promise((resolve) => socket.once('data', resolve));
    const closed = host.close();
    socket.write('{}');
    await Promise.all([ended, closed]);
    expect(reply).toContain('200 OK');
    expect(await reaches('127.0.0.1', port)).toBe(false);
    await open();
  });

  test.each(['/call/nothing/here', '/call/__proto__/x', '/call/constructor/name'])(
    'answers the unknown call %s with an error value',
    async (path) => {
      expect(JSON.parse((await call({}, '{}', path)).body)).toMatchObject({ ok: false });
    },
  );

  test('answers what is not JSON with an error value', async () => {
    expect(JSON.parse((await call({}, '{')).body)).toMatchObject({ ok: false });
  });

  test('serves the front end with strict headers', async () => {
    const reply = await send({ path: '/' });
    expect(reply.status).toBe(200);
    expect(reply.headers['content-security-policy']).toContain("default-src 'none'");
    expect(reply.headers['content-security-policy']).toContain("frame-ancestors 'none'");
    expect(reply.headers['x-content-type-options']).toBe('nosniff');
    expect(reply.headers['cross-origin-opener-policy']).toBe('same-origin');
    expect(reply.headers['cross-origin-resource-policy']).toBe('same-origin');
    expect(reply.headers['cache-control']).toBe('no-store');
    expect(reply.headers['access-control-allow-origin']).toBeUndefined();
  });

  test.each([
    '/../package.json',
    '/assets/../../x',
    '/%2e%2e/x',
    '/linked.html',
    '/assets/',
    '/nope',
  ])('has no file at %s', async (path) => {
    const reply = await send({ path });
    expect(reply.status).toBe(404);
    expect(reply.headers['content-security-policy']).toContain("default-src 'none'");
  });

  test('drops an attempt to open a WebSocket', async () => {
    const socket = connect(host.port, '127.0.0.1');
    const ended = new Promise((resolve) => socket.on('close', resolve));
    socket.on('error', () => undefined);
    socket.write(
      `GET / HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n` +
        'Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\nSec-WebSocket-Version: 13\r\n\r\n',
    );
    await ended;
    expect(socket.destroyed).toBe(true);
  });
});
