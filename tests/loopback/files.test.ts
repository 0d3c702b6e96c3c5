import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { FILE_PURPOSES } from '../../electron/contract/files/purposes.ts';
import type { Host } from '../../electron/loopback/host.ts';
import { dogOf, soundVisit } from '../service/support/records.ts';
import { createService } from '../../electron/service/service.ts';
import {
  FONTS,
  openOwn,
  temporaryFolder,
  testService,
  type TestDesk,
} from '../service/support/desk.ts';
import { long } from '../support/form.ts';
import { SMALL_PDF } from '../support/pictures.ts';
import { openHost } from './support/openHost.ts';
import { openLine, send } from './support/raw.ts';

let desk: TestDesk;
let host: Host;
let key: string;

beforeEach(async () => {
  desk = await openOwn();
  const pace = { slowestRequestMs: 300, slowestFileMs: 3_000, silentReaderMs: 900 };
  ({ host, key } = await openHost(desk.service, pace));
});
afterEach(() => host.close());

const base = (): string => `http://127.0.0.1:${host.port}`;
const headersFor = (more: Record<string, string> = {}): Record<string, string> => ({
  authorization: `Bearer ${key}`,
  'content-type': 'application/octet-stream',
  'trotwell-purpose': 'attachment',
  'trotwell-file-name': encodeURIComponent('Röntgen.pdf'),
  ...more,
});
const upload = (body: Buffer, headers = headersFor()): Promise<Response> =>
  fetch(`${base()}/files/in`, { method: 'POST', headers, body: new Uint8Array(body) });
const fetchOut = (token: string, authorization = `Bearer ${key}`): Promise<Response> =>
  fetch(`${base()}/files/out/${token}`, { headers: { authorization } });

/** Files lying in the folder of transfers, of every process. */
function waiting(folder = desk.folder): string[] {
  const transfers = join(folder, 'transfer');
  if (!existsSync(transfers)) return [];
  return readdirSync(transfers).flatMap((name) => readdirSync(join(transfers, name)));
}

async function tokenIn(): Promise<string> {
  const answer = (await (await upload(SMALL_PDF)).json()) as { value: { token: string } };
  return answer.value.token;
}

async function tokenOut(): Promise<string> {
  const { id: dogId } = await dogOf(desk, 'Odette Fenn', 'Bramble');
  const { visit } = await desk.ok('visits/save', {
    id: null,
    visit: soundVisit(dogId, '2026-03-01'),
    plan: null,
    food: null,
  });
  const { id } = await desk.ok('attachments/add', {
    visitId: visit.id,
    token: await tokenIn(),
    kind: 'other',
    name: 'letter.pdf',
    thumbnail: null,
  });
  return (await desk.ok('attachments/open', { id })).token;
}

describe('a file coming in', () => {
  test('is answered with a token, its name and its size', async () => {
    const response = await upload(SMALL_PDF);
    expect(response.status).toBe(200);
    expect(await response.json()).toEqual({
      ok: true,
      value: {
        token: expect.stringMatching(/^[\w-]{32}$/),
        name: 'Röntgen.pdf',
        bytes: SMALL_PDF.length,
      },
    });
    expect(waiting()).toHaveLength(1);
  });

  test('may be larger than a call, and takes its time while something arrives', async () => {
    const line = openLine(host.port);
    const headers = { ...headersFor(), 'content-length': '10' };
    const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`);
    line.write(
      `POST /files/in HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\n${lines.join('')}Connection: close\r\n\r\n`,
    );
    for (let i = 0; i < 10; i++) {
      await new Promise((resolve) => setTimeout(resolve, 100));
      line.write('x');
    }
    await line.ended;
    expect(line.text()).toContain('200 OK');
    expect((await upload(Buffer.alloc(8 * 1024 * 1024, 1))).status).toBe(200);
  });

  test.each([
    ['no key', { authorization: '' }, 401],
    ['another key', { authorization: 'Bearer nobody' }, 401],
    ['another origin', { origin: 'http://elsewhere.example' }, 403],
    ['a form’s type', { 'content-type': 'multipart/form-data' }, 415],
    ['no purpose', { 'trotwell-purpose': '' }, 400],
    ['a purpose of objects', { 'trotwell-purpose': 'constructor' }, 400],
  ])('is refused with %s', async (_what, headers, status) => {
    const reply = await send({
      port: host.port,
      method: 'POST',
      path: '/files/in',
      headers: headersFor(headers),
      body: 'x',
    });
    expect(reply.status).toBe(status);
    expect(waiting()).toEqual([]);
  });

  test('is refused when it says it is too large', async () => {
    const line = openLine(host.port);
    const { maxBytes } = FILE_PURPOSES.backup;
    const headers = {
      ...headersFor({ 'trotwell-purpose': 'backup' }),
      'content-length': String(maxBytes + 1),
    };
    const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`);
    line.write(
      `POST /files/in HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\n${lines.join('')}Connection: close\r\n\r\n`,
    );
    await line.next();
    expect(line.text()).toMatch(/^HTTP\/1\.1 413/);
    expect(waiting()).toEqual([]);
  });

  test('is cut off when it grows too large without saying so, and nothing of it stays', async () => {
    const line = openLine(host.port);
    const lines = Object.entries(headersFor()).map(([name, value]) => `${name}: ${value}\r\n`);
    line.write(
      `POST /files/in HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\n${lines.join('')}Transfer-Encoding: chunked\r\n\r\n`,
    );
    const piece = `100000\r\n${'x'.repeat(0x100000)}\r\n`;
    for (let i = 0; i < 21 && line.open(); i++) line.write(piece);
    await line.ended;
    expect(line.text()).not.toContain('"ok":true');
    await expect.poll(() => waiting()).toEqual([]);
  });

  test('is cut off when it takes too long as a whole, although something always arrives', async () => {
    const line = openLine(host.port);
    const headers = { ...headersFor(), 'content-length': '1000' };
    const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`);
    line.write(`POST /files/in HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\n${lines.join('')}\r\n`);
    const drip = setInterval(() => line.write('x'), 50);
    await line.ended;
    clearInterval(drip);
    expect(line.text()).not.toContain('200 OK');
    await expect.poll(() => waiting()).toEqual([]);
  });

  test('leaves nothing when it ends too soon or falls silent', async () => {
    for (const hangUp of [true, false]) {
      const line = openLine(host.port);
      const headers = { ...headersFor(), 'content-length': '1000' };
      const lines = Object.entries(headers).map(([name, value]) => `${name}: ${value}\r\n`);
      line.write(
        `POST /files/in HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\n${lines.join('')}\r\nhalf`,
      );
      await expect.poll(() => waiting()).toHaveLength(1);
      if (hangUp) line.end();
      await line.ended;
      await expect.poll(() => waiting()).toEqual([]);
    }
  });

  test('that the disk has no room for is answered in words once it has been sent', async () => {
    const folder = temporaryFolder();
    const service = createService({
      folder,
      fontsFolder: FONTS,
      version: '0.0.0-test',
      clock: () => new Date('2026-03-02T12:00:00'),
      freeBytes: () => 9 * 1024 * 1024,
    });
    const full = await openHost(service);
    const response = await fetch(`http://127.0.0.1:${full.host.port}/files/in`, {
      method: 'POST',
      headers: headersFor({
        authorization: `Bearer ${full.key}`,
        'trotwell-purpose': 'backup',
      }),
      body: new Uint8Array(8 * 1024 * 1024),
    });
    expect(await response.json()).toMatchObject({
      ok: false,
      error: { trouble: 'disk full', message: expect.stringContaining('16 MB are needed') },
    });
    expect(waiting(folder)).toEqual([]);
    await full.host.close();
    await service.close();
  });

  test('that is empty is refused', async () => {
    expect(await (await upload(Buffer.alloc(0))).json()).toMatchObject({
      ok: false,
      error: { kind: 'input', message: 'The file is empty.' },
    });
  });
});

/** A backup that no buffer between two ends of a connection holds. */
async function largeBackup(): Promise<string> {
  const { id: dogId } = await dogOf(desk, 'Odette Fenn', 'Bramble');
  for (const fill of [1, 2, 3]) {
    const letter = Buffer.alloc(16 * 1024 * 1024, fill);
    letter.write('%PDF-1.7\n');
    const taken = (await (await upload(letter)).json()) as { value: { token: string } };
    await desk.ok('waiting/add', {
      dogId,
      token: taken.value.token,
      kind: 'other',
      name: `${fill}.pdf`,
      thumbnail: null,
    });
  }
  return (await desk.ok('backup/make', { passphrase: null, workId: randomUUID() })).token;
}

/** Fetches a file, and reads only when told to. */
function slowReader(token: string) {
  const socket = connect(host.port, '127.0.0.1');
  let bytes = 0;
  socket.on('error', () => undefined);
  socket.write(
    `GET /files/out/${token} HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\nAuthorization: Bearer ${key}\r\nConnection: close\r\n\r\n`,
  );
  socket.on('data', (part: Buffer) => {
    bytes += part.length;
    socket.pause();
  });
  return { socket, bytes: () => bytes, closed: once(socket, 'close') };
}

describe('a file going out', () => {
  // In the long form the host keeps the pace it is shipped with, and the reader takes over two minutes.
  const SLOW = long ? { everyMs: 170, atLeastMs: 120_000 } : { everyMs: 2, atLeastMs: 900 };

  test('takes its time while its reader takes some of it', { timeout: 900_000 }, async () => {
    if (long) {
      await host.close();
      ({ host, key } = await openHost(desk.service));
    }
    const token = await largeBackup();
    const began = performance.now();
    const reader = slowReader(token);
    const read = setInterval(() => reader.socket.resume(), SLOW.everyMs);
    await reader.closed;
    clearInterval(read);
    const tookMs = performance.now() - began;
    console.log(`A file went out over ${Math.round(tookMs / 1000)} s, whole`);
    expect(tookMs).toBeGreaterThan(SLOW.atLeastMs);
    expect(reader.bytes()).toBeGreaterThan(48 * 1024 * 1024);
    await expect.poll(() => waiting()).toEqual([]);
  });

  test('is cut off when its reader takes nothing, and stays for another try', async () => {
    const token = await largeBackup();
    const reader = slowReader(token);
    await expect.poll(() => reader.bytes()).toBeGreaterThan(0);
    // A stopped reader hears of the end only when it reads on.
    await new Promise((resolve) => setTimeout(resolve, 2_500));
    reader.socket.removeAllListeners('data');
    reader.socket.resume();
    await reader.closed;
    const again = await fetchOut(token);
    expect(again.status).toBe(200);
    expect((await again.arrayBuffer()).byteLength).toBeGreaterThan(48 * 1024 * 1024);
  });

  test('goes once, as bytes to be saved, and is removed', async () => {
    const token = await tokenOut();
    const response = await fetchOut(token);
    expect(response.status).toBe(200);
    expect(response.headers.get('content-type')).toBe('application/octet-stream');
    expect(response.headers.get('content-disposition')).toBe('attachment');
    expect(response.headers.get('x-content-type-options')).toBe('nosniff');
    expect(Buffer.from(await response.arrayBuffer())).toEqual(SMALL_PDF);
    await expect.poll(() => waiting()).toEqual([]);
    expect((await fetchOut(token)).status).toBe(404);
  });

  test('is not given without the key, and not for a token of another kind', async () => {
    expect((await fetchOut(await tokenOut(), 'Bearer nobody')).status).toBe(401);
    expect((await fetchOut(await tokenIn())).status).toBe(404);
    expect((await fetchOut('..%2f..%2ftrotwell.sqlite')).status).toBe(404);
  });
});

test('what a killed process left is removed at the next start; what a running one holds is not', async () => {
  const folder = temporaryFolder();
  // Larger than any process id Linux, macOS or Windows gives out in practice.
  const killed = join(folder, 'transfer', '999999999-left');
  const running = join(folder, 'transfer', `${process.ppid}-held`);
  for (const left of [killed, running]) {
    mkdirSync(left, { recursive: true });
    writeFileSync(join(left, 'content'), 'half');
  }
  testService(folder);
  expect(existsSync(killed)).toBe(false);
  expect(existsSync(running)).toBe(true);
});
