import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Host } from '../../electron/loopback/host.ts';
import { testService, type TestDesk } from '../service/support/desk.ts';
import { openHost } from './support/openHost.ts';
import { openLine, send } from './support/raw.ts';

let desk: TestDesk;
let host: Host;
let key: string;

beforeEach(async () => {
  desk = testService();
  ({ host, key } = await openHost(desk.service, { slowestRequestMs: 200 }));
});
afterEach(() => host.close());

const head = (headers: Record<string, string>): string =>
  [
    'POST /call/app/status HTTP/1.1',
    `Host: 127.0.0.1:${host.port}`,
    `Authorization: Bearer ${key}`,
    'Content-Type: application/json',
    ...Object.entries(headers).map(([name, value]) => `${name}: ${value}`),
    '',
    '',
  ].join('\r\n');

const answers = async (): Promise<boolean> =>
  (await send({ port: host.port, path: '/' })).status === 200;

describe('a slow request', () => {
  test('is cut off while its head drips in', async () => {
    const line = openLine(host.port);
    line.write(`GET / HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\n`);
    const drip = setInterval(() => line.write('X-Slow: 1\r\n'), 50);
    await line.ended;
    clearInterval(drip);
    expect(line.text()).not.toContain('200 OK');
    expect(await answers()).toBe(true);
  });

  test('is cut off while its body drips in', async () => {
    const line = openLine(host.port);
    line.write(head({ 'content-length': '1000' }));
    const drip = setInterval(() => line.write('{'), 50);
    await line.ended;
    clearInterval(drip);
    expect(line.text()).not.toContain('200 OK');
    expect(await answers()).toBe(true);
  });

  test('does not hold up the others, a hundred at a time', async () => {
    const lines = Array.from({ length: 100 }, () => openLine(host.port));
    for (const line of lines) line.write('GET / HTTP/1.1\r\n');
    expect(await answers()).toBe(true);
    await Promise.all(lines.map(({ ended }) => ended));
    expect(await answers()).toBe(true);
  });
});

describe('a crowd', () => {
  test('of connections that ask nothing makes room for the window', async () => {
    const patient = await openHost(desk.service);
    const { port } = patient.host;
    const held = openLine(port);
    held.write(`GET /files/out/x HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n`);
    held.write(`Authorization: Bearer ${patient.key}\r\n\r\n`);
    await held.next();
    const lines = Array.from({ length: 300 }, () => openLine(port));
    expect((await send({ port, path: '/' })).status).toBe(200);
    await expect.poll(() => lines.filter((line) => line.open()).length).toBeLessThan(200);
    expect(held.open()).toBe(true);
    for (const line of lines) line.end();
    await patient.host.close();
  });
});

describe('a huge request', () => {
  const MEBIBYTE = 1024 * 1024;

  test('is refused by the length it states', async () => {
    const line = openLine(host.port);
    line.write(head({ 'content-length': String(5 * MEBIBYTE), connection: 'close' }));
    await line.next();
    expect(line.text()).toMatch(/^HTTP\/1\.1 413/);
  });

  test('is refused when it does not state its length', async () => {
    const line = openLine(host.port);
    const piece = 'x'.repeat(64 * 1024);
    line.write(head({ 'transfer-encoding': 'chunked', connection: 'close' }));
    for (let i = 0; i < 80 && line.open(); i++) line.write(`10000\r\n${piece}\r\n`);
    line.write('0\r\n\r\n');
    await line.ended;
    expect(line.text()).toMatch(/^HTTP\/1\.1 413/);
  });

  test('is refused unread when it carries no key', async () => {
    const line = openLine(host.port);
    line.write(head({ 'content-length': '3000000', connection: 'close' }).replace(key, 'nobody'));
    await line.next();
    expect(line.text()).toMatch(/^HTTP\/1\.1 401/);
  });

  test.each([
    ['one long header', { 'X-Long': 'x'.repeat(64 * 1024) }],
    [
      'very many headers',
      Object.fromEntries(Array.from({ length: 3000 }, (_, i) => [`X-${i}`, '1'])),
    ],
  ])('is refused for %s', async (_what, headers) => {
    const line = openLine(host.port);
    line.write(head({ ...headers, 'content-length': '2' }) + '{}');
    await line.ended;
    expect(line.text()).toMatch(/^HTTP\/1\.1 431/);
    expect(await answers()).toBe(true);
  });

  test('is refused for a long address', async () => {
    const line = openLine(host.port);
    line.write(`GET /${'x'.repeat(64 * 1024)} HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\n\r\n`);
    await line.ended;
    expect(line.text()).toMatch(/^HTTP\/1\.1 4\d\d/);
  });

  test.each([
    ['nested too deeply', '['.repeat(100_000)],
    ['of a million parts', `[${'0,'.repeat(1_000_000)}0]`],
  ])('%s is refused before it is read', async (_what, body) => {
    const reply = await send({
      port: host.port,
      method: 'POST',
      path: '/call/app/status',
      headers: { authorization: `Bearer ${key}`, 'content-type': 'application/json' },
      body,
    });
    expect(JSON.parse(reply.body)).toMatchObject({
      error: { kind: 'input', message: 'The request holds more, or deeper, than any call takes.' },
    });
  });

  test.each([
    ['two lengths', 'Content-Length: 2\r\nContent-Length: 20'],
    ['a length and pieces', 'Content-Length: 2\r\nTransfer-Encoding: chunked'],
    ['a length that is no number', 'Content-Length: 2x'],
  ])('that contradicts itself (%s) is refused', async (_what, lines) => {
    const line = openLine(host.port);
    line.write(head({}).replace(/\r\n\r\n$/, `\r\n${lines}\r\n\r\n{}`));
    await line.ended;
    expect(line.text()).toMatch(/^HTTP\/1\.1 400/);
  });
});
