import { existsSync, readdirSync, truncateSync, writeFileSync } from 'node:fs';
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { describe, expect, test } from 'vitest';
import { FILE_PURPOSES, MEGABYTE, sizeWords } from '../../../electron/contract/files/purposes.ts';
import { createService } from '../../../electron/service/service.ts';
import { freeBytesOf } from '../../../electron/service/files/room.ts';
import { FONTS, openOwn, temporaryFolder, type TestDesk } from '../support/desk.ts';

const { maxBytes } = FILE_PURPOSES.backup;

/** Files that wait in the folder of transfers. */
function waiting(folder: string): string[] {
  const transfers = join(folder, 'transfer');
  if (!existsSync(transfers)) return [];
  return readdirSync(transfers).flatMap((name) => readdirSync(join(transfers, name)));
}

/** A file of zeros that takes no room on most disks. */
function fileOf(bytes: number): string {
  const file = join(temporaryFolder(), 'kept.trotwell');
  writeFileSync(file, '');
  truncateSync(file, bytes);
  return file;
}

/** A service on records that are there, whose disk has as much room left as is said. */
function serviceWithRoom(folder: string, freeBytes: number): TestDesk['service'] {
  return createService({
    folder,
    fontsFolder: FONTS,
    version: '0.0.0-test',
    clock: () => new Date('2026-03-02T12:00:00'),
    freeBytes: () => freeBytes,
  });
}

describe('a backup of more than a gigabyte', () => {
  test('is taken in, piece by piece', async () => {
    const bytes = 1025 * MEGABYTE;
    const file = fileOf(bytes);
    const free = freeBytesOf(temporaryFolder());
    if (free !== null && free < 2 * bytes) {
      console.log('A backup of more than a gigabyte: not tried, this disk has no room for it');
      return;
    }
    const desk = await openOwn();
    const before = process.memoryUsage().rss;
    const taken = await desk.service.takeIn('kept.trotwell', file, maxBytes);
    const grown = process.memoryUsage().rss - before;
    expect(taken).toMatchObject({ ok: true, value: { bytes } });
    expect(grown).toBeLessThan(bytes / 4);
    console.log(`Took in ${sizeWords(bytes)}; memory grew by ${sizeWords(Math.max(0, grown))}`);
  });
});

describe('a file that the disk has no room for', () => {
  const MORE = 200 * MEGABYTE;
  const SENTENCE =
    'There is not enough room where the records lie: 264 MB are needed and 210 MB are free. Make room and try again.';
  const refused = {
    ok: false,
    error: { kind: 'storage', trouble: 'disk full', message: SENTENCE },
  };

  test('is refused before a byte is written, with what is needed and what is there', async () => {
    const folder = temporaryFolder();
    const service = serviceWithRoom(folder, 210 * MEGABYTE);
    expect(await service.takeIn('kept.trotwell', fileOf(MORE), maxBytes)).toMatchObject(refused);
    const stream = Readable.from([Buffer.alloc(10)]);
    expect(await service.takeIn('kept.trotwell', stream, maxBytes, MORE)).toMatchObject(refused);
    expect(stream.readableDidRead).toBe(false);
    expect(waiting(folder)).toEqual([]);
    // One that fits does come in.
    expect(await service.takeIn('kept.trotwell', fileOf(10), maxBytes)).toMatchObject({ ok: true });
    await service.close();
  });

  test('is not unpacked, and the records stay as they are', async () => {
    const desk = await openOwn();
    const { token } = await desk.ok('backup/make', { passphrase: null, workId: randomUUID() });
    const kept = join(temporaryFolder(), 'kept.trotwell');
    expect(await desk.service.writeOut(token, kept)).toEqual({ ok: true, value: null });
    await desk.service.close();
    // As much as the file itself asks for while it comes in, and nothing for what is unpacked of it.
    let free = 1024 * MEGABYTE;
    const service = createService({
      folder: desk.folder,
      fontsFolder: FONTS,
      version: '0.0.0-test',
      clock: () => new Date('2026-03-02T12:00:00'),
      freeBytes: () => free,
    });
    const taken = await service.takeIn('kept.trotwell', kept, maxBytes);
    const source = { token: taken.ok ? taken.value.token : expect.fail('not taken in') };
    free = 1000;
    const input = { source, passphrase: null, workId: randomUUID() };
    expect(await service.call('backup/restore', input)).toMatchObject({
      ok: false,
      error: { kind: 'storage', trouble: 'disk full' },
    });
    expect(existsSync(join(desk.folder, 'restore'))).toBe(false);
    expect(await service.call('clients/list', { query: '' })).toMatchObject({ ok: true });
    free = 1024 * MEGABYTE;
    expect(await service.call('backup/restore', input)).toMatchObject({ ok: true });
    await service.close();
  });

  test('is said to be too large only where no disk would hold it', async () => {
    const desk = await openOwn();
    const stream = Readable.from([Buffer.alloc(10)]);
    const answer = await desk.service.takeIn('kept.trotwell', stream, maxBytes, maxBytes + 1);
    expect(answer).toMatchObject({
      ok: false,
      error: { kind: 'input', message: 'A file may have at most 1,024 GB.' },
    });
  });
});

test('a disk says how much room it has, also for a folder that is not made yet', () => {
  const folder = temporaryFolder();
  const free = freeBytesOf(folder);
  expect(free).toBeGreaterThan(0);
  expect(freeBytesOf(join(folder, 'not', 'yet'))).toBeGreaterThan(0);
});

test.each([
  [1_500_000, '1.4 MB'],
  [20 * MEGABYTE, '20 MB'],
  [1023.9 * MEGABYTE, '1,023 MB'],
  [5.25 * 1024 * MEGABYTE, '5.3 GB'],
])('%i bytes are %s', (bytes, words) => {
  expect(sizeWords(bytes)).toBe(words);
});
