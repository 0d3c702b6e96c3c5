import { connect } from 'node:net';
import { request as httpRequest } from 'node:http';
import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { startHost, type Host } from '../../electron/loopback/host.ts';
import { temporaryFolder, testService, type TestDesk } from '../service/desk.ts';

const KEY = 'k'.repeat(43);
let host: Host;
let desk: TestDesk;

beforeEach(async () => {
  desk = testService();
  const rendererFolder = temporaryFolder();
  mkdirSync(join(rendererFolder, 'assets'));
  writeFileSync(join(rendererFolder, 'index.html'), '<!doctype html><title>Trotwell</title>');
  writeFileSync(join(rendererFolder, 'assets', 'app.js'), 'export {};');
  const outside = temporaryFolder();
  writeFileSync(join(outside, 'secret.html'), 'secret');
  symlinkSync(join(outside, 'secret.html'), join(rendererFolder, 'linked.html'));
  host = await startHost({ service: desk.service, rendererFolder, key: KEY });
});
afterEach(() => host.close());

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
    headers: { authorization: `Bearer ${KEY}`, 'content-type': 'application/json', ...headers },
    body,
  });

describe('the loopback host', () => {
  test('answers a call that carries the key', async () => {
    const reply = await call();
    expect(reply.status).toBe(200);
    expect(JSON.parse(reply.body)).toMatchObject({ ok: true, value: { open: null } });
  });

  test('puts the key in the fragment, which browsers keep to themselves', () => {
    expect(new URL(host.address).hash).toBe(`#key=${KEY}`);
    expect(new URL(host.address).search).toBe('');
  });

  test.each([
    ['no key', { authorization: '' }, 401],
    ['another key', { authorization: 'Bearer nope' }, 401],
    ['the key of another length', { authorization: `Bearer ${KEY}x` }, 401],
    ['a foreign origin', { origin: 'http://elsewhere.example' }, 403],
    ['the null origin', { origin: 'null' }, 403],
    ['another port as origin', { origin: 'http://127.0.0.1:1' }, 403],
    ['a cross-site fetch', { 'sec-fetch-site': 'cross-site' }, 403],
    ['a same-site fetch from another port', { 'sec-fetch-site': 'same-site' }, 403],
    ['a rebound host name', { host: 'rebound.example' }, 403],
    ['a form body', { 'content-type': 'application/x-www-form-urlencoded' }, 415],
    ['a text body', { 'content-type': 'text/plain' }, 415],
  ])('refuses a call with %s', async (_what, headers, status) => {
    const reply = await call(headers);
    expect(reply.status).toBe(status);
    expect(reply.body).toBe('');
  });

  test('refuses a body over the limit', async () => {
    const reply = await call({}, JSON.stringify({ key: 'x'.repeat(5 * 1024 * 1024) }));
    expect(reply.status).toBe(413);
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

  test('writes no key into the log', async () => {
    await call({ authorization: 'Bearer guess' });
    await call();
    expect(desk.log.join('\n')).not.toContain(KEY);
  });
});
