import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Attachment } from '../../../electron/contract/files/attachment.ts';
import { FILE_PURPOSES } from '../../../electron/contract/files/purposes.ts';
import { contentFile } from '../../../electron/service/backup/contents.ts';
import { presentContents } from '../../../electron/service/backup/folder.ts';
import {
  exifSegment,
  JPEG_16_BY_8,
  jpegSegment,
  jpegWith,
  pngChunk,
  pngOf,
  SMALL_PDF,
} from '../../support/pictures.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { dogOf, soundVisit } from '../support/records.ts';

const PLACE = 'N 47.3769 E 8.5417';
let desk: TestDesk;
let dogId: string;
let visitId: string;

beforeEach(async () => {
  desk = await openOwn();
  dogId = (await dogOf(desk, 'Odette Fenn', 'Bramble')).id;
  const saved = await desk.ok('visits/save', {
    id: null,
    visit: soundVisit(dogId, '2026-03-01'),
    plan: null,
    food: null,
  });
  visitId = saved.visit.id;
});

async function taken(bytes: Buffer, name = 'file'): Promise<string> {
  const { maxBytes } = FILE_PURPOSES.attachment;
  const answer = await desk.service.takeIn(name, Readable.from([bytes]), maxBytes);
  return answer.ok ? answer.value.token : expect.fail(answer.error.message);
}

async function added(bytes: Buffer, name: string, thumbnail: Buffer | null = null) {
  return desk.ok('attachments/add', {
    visitId,
    token: await taken(bytes),
    kind: 'photo',
    name,
    thumbnail: thumbnail?.toString('base64') ?? null,
  });
}

async function refusedFor(bytes: Buffer, name = 'photo.jpg') {
  const token = await taken(bytes);
  return desk.refused('attachments/add', { visitId, token, kind: 'photo', name, thumbnail: null });
}

const list = (): Promise<readonly Attachment[]> => desk.ok('attachments/list', { dogId });

async function contentOf({ id }: Attachment): Promise<Buffer> {
  return Buffer.from((await desk.ok('attachments/show', { id })).base64, 'base64');
}

const lying = (file: Buffer): string =>
  contentFile(presentContents(desk.folder), createHash('sha256').update(file).digest('hex'));

describe('a file at a visit', () => {
  test('is kept under the hash of its content, listed, shown and handed out again', async () => {
    const letter = await added(SMALL_PDF, 'letter.pdf');
    expect(letter).toMatchObject({
      visitId,
      name: 'letter.pdf',
      mediaType: 'application/pdf',
      bytes: SMALL_PDF.length,
      thumbnail: null,
      missing: false,
    });
    expect(readFileSync(lying(SMALL_PDF))).toEqual(SMALL_PDF);
    expect(await list()).toEqual([letter]);
    expect(await contentOf(letter)).toEqual(SMALL_PDF);
    const { token, name } = await desk.ok('attachments/open', { id: letter.id });
    const given = desk.service.giveOut(token);
    if (!given.ok) expect.fail(given.error.message);
    expect(name).toBe('letter.pdf');
    expect(readFileSync(given.value.file)).toEqual(SMALL_PDF);
  });

  test('uses its token up, also when it is refused', async () => {
    const token = await taken(SMALL_PDF);
    const input = { visitId, token, kind: 'other' as const, name: 'a.pdf', thumbnail: null };
    await desk.ok('attachments/add', input);
    expect((await desk.refused('attachments/add', input)).kind).toBe('not-found');
    const wrong = await taken(Buffer.from('MZ executable'));
    await desk.refused('attachments/add', { ...input, token: wrong });
    expect((await desk.refused('attachments/look', { token: wrong })).kind).toBe('not-found');
  });

  test('goes into the bin and comes back as it was', async () => {
    const letter = await added(SMALL_PDF, 'letter.pdf');
    await desk.ok('bin/put', { kind: 'attachment', id: letter.id });
    expect(await list()).toEqual([]);
    expect((await desk.refused('attachments/show', { id: letter.id })).kind).toBe('not-found');
    await desk.ok('bin/restore', { kind: 'attachment', id: letter.id });
    expect(await list()).toEqual([letter]);
  });

  test('loses its content when the bin is emptied, unless another visit names it', async () => {
    const letter = await added(SMALL_PDF, 'letter.pdf');
    await desk.ok('bin/put', { kind: 'attachment', id: letter.id });
    const again = await added(SMALL_PDF, 'again.pdf');
    const empty = (id: string) =>
      desk.ok('bin/empty', {
        entries: [{ kind: 'attachment', id }],
        ground: 'entered by mistake',
        insideRetentionConfirmed: true,
      });
    await empty(letter.id);
    expect(await contentOf(again)).toEqual(SMALL_PDF);
    await desk.ok('bin/put', { kind: 'attachment', id: again.id });
    await empty(again.id);
    expect(() => readFileSync(lying(SMALL_PDF))).toThrow();
  });

  test('is not kept twice at one visit', async () => {
    await added(SMALL_PDF, 'letter.pdf');
    const error = await refusedFor(SMALL_PDF, 'copy.pdf');
    expect(error.kind).toBe('conflict');
    expect(error.message).toContain('letter.pdf');
  });

  test('is told missing or damaged by its name, and nothing else breaks', async () => {
    const letter = await added(SMALL_PDF, 'letter.pdf');
    const photo = await added(pngOf(4, 4), 'photo.png');
    writeFileSync(lying(SMALL_PDF), 'something else');
    expect(await desk.refused('attachments/show', { id: letter.id })).toMatchObject({
      kind: 'storage',
      message: expect.stringContaining('“letter.pdf” is damaged'),
    });
    rmSync(lying(SMALL_PDF));
    expect((await desk.refused('attachments/open', { id: letter.id })).message).toContain(
      '“letter.pdf” is missing',
    );
    expect((await list()).map(({ name, missing }) => [name, missing])).toEqual([
      ['letter.pdf', true],
      ['photo.png', false],
    ]);
    expect(await contentOf(photo)).toEqual(pngOf(4, 4));
  });
});

describe('what is refused', () => {
  test.each([
    ['a program with a picture’s name', Buffer.from('MZ\x90\x00This program')],
    ['an SVG', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>')],
    ['a page', Buffer.from('<!doctype html><script>1</script>')],
  ])('%s', async (_what, bytes) => {
    expect((await refusedFor(bytes)).message).toMatch(/JPEG, PNG or WebP.*PDF/);
    expect(await list()).toEqual([]);
  });

  test.each([
    ['a PNG', pngOf(30, 30)],
    ['a JPEG', JPEG_16_BY_8],
  ])('%s cut off anywhere', async (_what, whole) => {
    for (let length = 12; length < whole.length; length += 23) {
      expect((await refusedFor(whole.subarray(0, length))).message).toContain('cut off');
    }
    expect(await list()).toEqual([]);
  });

  test('more than 20 MB', async () => {
    const { maxBytes } = FILE_PURPOSES.attachment;
    const answer = await desk.service.takeIn(
      'x',
      Readable.from([Buffer.alloc(maxBytes + 1)]),
      maxBytes,
    );
    expect(answer).toMatchObject({
      ok: false,
      error: { message: 'A file may have at most 20 MB.' },
    });
  });

  test('a thirty-first file, until one is removed', async () => {
    const kept = [];
    for (let i = 1; i <= 30; i++) kept.push(await added(pngOf(i, 1), `${i}.png`));
    expect((await refusedFor(pngOf(31, 1))).message).toBe('A visit may have at most 30 files.');
    await desk.ok('bin/put', { kind: 'attachment', id: kept[0]!.id });
    await added(pngOf(31, 1), '31.png');
  });

  test('a small picture that is none', async () => {
    const token = await taken(SMALL_PDF);
    const thumbnail = Buffer.from('<svg/>').toString('base64');
    const input = { visitId, token, kind: 'photo', name: 'a.pdf', thumbnail };
    expect((await desk.refused('attachments/add', input)).message).toContain('PNG or JPEG');
  });

  test('a visit that is not there', async () => {
    const token = await taken(SMALL_PDF);
    const input = { visitId: dogId, token, kind: 'photo', name: 'a.pdf', thumbnail: null };
    expect((await desk.refused('attachments/add', input)).kind).toBe('not-found');
  });
});

describe('the name of a file', () => {
  test.each([
    ['../../etc/passwd', 'passwd.pdf'],
    ['C:\\Users\\x\\letter.pdf', 'letter.pdf'],
    ['letter\u202efdp.exe', 'letterfdp.exe.pdf'],
    ['.hidden', 'hidden.pdf'],
    ['<img src=x onerror=1>.pdf', 'img src=x onerror=1.pdf'],
    ['Röntgen 犬.PDF', 'Röntgen 犬.PDF'],
    ['a'.repeat(190), `${'a'.repeat(116)}.pdf`],
  ])('%s becomes %s', async (given, kept) => {
    expect((await added(SMALL_PDF, given)).name).toBe(kept);
  });
});

describe('what is noted in a picture', () => {
  test('a JPEG keeps how it is turned, and neither place nor words nor what follows its end', async () => {
    const bytes = jpegWith(
      [
        exifSegment(6, PLACE),
        jpegSegment(0xe1, Buffer.from(`http://ns.adobe.com/xap/1.0/\0${PLACE}`)),
        jpegSegment(0xed, Buffer.from(PLACE)),
        jpegSegment(0xfe, Buffer.from(PLACE)),
      ],
      Buffer.from(PLACE),
    );
    const kept = await contentOf(await added(bytes, 'photo.jpg'));
    expect(kept.includes(PLACE)).toBe(false);
    expect(kept.includes(PLACE.slice(0, 6))).toBe(false);
    // The little that is written for the orientation differs from the file without any.
    expect(kept.length).toBe(JPEG_16_BY_8.length + 36);
  });

  test('a JPEG without notes is kept byte for byte', async () => {
    expect(await contentOf(await added(JPEG_16_BY_8, 'photo.jpg'))).toEqual(JPEG_16_BY_8);
  });

  test('a JPEG loses the small copies of JFIF and its extension (ITU-T T.871; M)', async () => {
    const jfif = (width: number, height: number, copy: Buffer): Buffer => {
      const head = Buffer.from('JFIF\0\x01\x01\0\0\x01\0\x01', 'latin1');
      return jpegSegment(0xe0, Buffer.concat([head, Buffer.from([width, height]), copy]));
    };
    // The picture behind its own head of 18 bytes.
    const rest = JPEG_16_BY_8.subarray(2 + 18);
    const start = Buffer.from([0xff, 0xd8]);
    const small = Buffer.alloc(3 * 4, PLACE);
    const extension = jpegSegment(0xe0, Buffer.from(`JFXX\0\x10${PLACE}`, 'latin1'));
    const other = jpegSegment(0xee, Buffer.from(PLACE));
    const photo = Buffer.concat([start, jfif(2, 2, small), extension, other, rest]);
    const kept = await contentOf(await added(photo, 'photo.jpg'));
    expect(kept).toEqual(Buffer.concat([start, jfif(0, 0, Buffer.alloc(0)), rest]));
  });

  test('a PNG loses texts, Exif, time and what is not known, and keeps what draws it', async () => {
    const gamma = pngChunk('gAMA', Buffer.from([0, 0, 0xb1, 0x8f]));
    const noted = ['tEXt', 'iTXt', 'zTXt', 'eXIf', 'tIME', 'caBX', 'prVt', 'neWt'].map((name) =>
      pngChunk(name, Buffer.from(PLACE)),
    );
    const kept = await contentOf(await added(pngOf(3, 3, [gamma, ...noted]), 'photo.png'));
    expect(kept).toEqual(pngOf(3, 3, [gamma]));
  });

  test('a WebP loses Exif and XMP, and the flags that announce them (RFC 9649, 2.7; S)', async () => {
    const chunk = (name: string, content: Buffer): Buffer => {
      const head = Buffer.alloc(8);
      head.write(name, 0, 'latin1');
      head.writeUInt32LE(content.length, 4);
      return Buffer.concat([head, content, Buffer.alloc(content.length % 2)]);
    };
    const webp = (flags: number, more: readonly Buffer[]): Buffer => {
      const head = Buffer.alloc(10);
      head[0] = flags;
      const body = Buffer.concat([
        Buffer.from('WEBP'),
        chunk('VP8X', head),
        chunk('VP8 ', Buffer.from('odd')),
        ...more,
      ]);
      return chunk('RIFF', body);
    };
    const noted = webp(0x0c | 0x10, [
      chunk('EXIF', Buffer.from(PLACE)),
      chunk('XMP ', Buffer.from(PLACE)),
      chunk('odd ', Buffer.from(PLACE)),
    ]);
    expect(await contentOf(await added(noted, 'photo.webp'))).toEqual(webp(0x10, []));
    const frame = (...more: Buffer[]): Buffer =>
      chunk('ANMF', Buffer.concat([Buffer.alloc(16), chunk('VP8L', Buffer.from('even')), ...more]));
    const moving = webp(0x02, [frame(chunk('XMP ', Buffer.from(PLACE)))]);
    expect(await contentOf(await added(moving, 'moving.webp'))).toEqual(webp(0x02, [frame()]));
  });
});

test('nothing waits in the folder of transfers once the service is closed', async () => {
  await taken(SMALL_PDF);
  expect(readdirSync(desk.folder)).toContain('transfer');
  await desk.service.close();
  expect(readdirSync(desk.folder)).not.toContain('transfer');
  expect(readdirSync(join(desk.folder, '.')).some((name) => name.endsWith('.part'))).toBe(false);
});
