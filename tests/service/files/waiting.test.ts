import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import BetterSqlite3 from 'better-sqlite3';
import { beforeEach, describe, expect, test } from 'vitest';
import { FILE_PURPOSES } from '../../../electron/contract/files/purposes.ts';
import { contentFile, contentsOf } from '../../../electron/service/backup/contents.ts';
import { presentContents } from '../../../electron/service/backup/folder.ts';
import { DATABASE_FILES } from '../../../electron/service/database/open.ts';
import { exifSegment, jpegWith, pngOf, SMALL_PDF } from '../../support/pictures.ts';
import { openOwn, testService, type TestDesk } from '../support/desk.ts';
import { dogOf, soundVisit } from '../support/records.ts';

let desk: TestDesk;
let dogId: string;

beforeEach(async () => {
  desk = await openOwn();
  dogId = (await dogOf(desk, 'Odette Fenn', 'Bramble')).id;
});

async function taken(bytes: Buffer): Promise<string> {
  const { maxBytes } = FILE_PURPOSES.attachment;
  const answer = await desk.service.takeIn('file', Readable.from([bytes]), maxBytes);
  return answer.ok ? answer.value.token : expect.fail(answer.error.message);
}
const waiting = async (bytes: Buffer, name: string) => ({
  dogId,
  token: await taken(bytes),
  kind: 'other' as const,
  name,
  thumbnail: null,
});
const add = async (bytes: Buffer, name: string) =>
  desk.ok('waiting/add', await waiting(bytes, name));
const saveVisit = (day = '2026-03-01') =>
  desk.ok('visits/save', { id: null, visit: soundVisit(dogId, day), plan: null, food: null });
const atVisits = () => desk.ok('attachments/list', { dogId });
const content = (hash: string) => contentFile(presentContents(desk.folder), hash);

describe('files chosen before a visit is saved', () => {
  test('wait, and stand at the visit as soon as it is saved', async () => {
    const small = pngOf(8, 8).toString('base64');
    await desk.ok('waiting/add', {
      ...(await waiting(jpegWith([exifSegment(1, 'N 47.3769 E 8.5417')]), 'stride')),
      kind: 'photo',
      thumbnail: small,
    });
    const list = await add(SMALL_PDF, 'letter.pdf');
    expect(list).toMatchObject([
      { name: 'stride.jpg', kind: 'photo', mediaType: 'image/jpeg', leftOut: false },
      { name: 'letter.pdf', kind: 'other', mediaType: 'application/pdf', thumbnail: null },
    ]);
    expect(list[0]!.thumbnail).toBe(`data:image/png;base64,${small}`);
    expect(await atVisits()).toEqual([]);
    const { visit } = await saveVisit();
    expect(await atVisits()).toMatchObject([
      { visitId: visit.id, name: 'stride.jpg', thumbnail: list[0]!.thumbnail, missing: false },
      { visitId: visit.id, name: 'letter.pdf', missing: false },
    ]);
    expect(await desk.ok('waiting/list', { dogId })).toEqual([]);
  });

  test('outlive the program, a refused save, and the amendment of another visit', async () => {
    const { visit: earlier } = await saveVisit('2026-02-01');
    await add(SMALL_PDF, 'letter.pdf');
    await desk.service.close();
    desk = testService(desk.folder);
    await desk.ok('app/open', { which: 'own' });
    await desk.refused('visits/save', {
      id: null,
      visit: soundVisit(dogId, '2026-03-03'),
      plan: null,
      food: null,
    });
    await desk.ok('visits/save', {
      id: earlier.id,
      basedOn: 1,
      reason: 'x',
      visit: { ...soundVisit(dogId, '2026-02-01'), notes: 'More.' },
      plan: null,
      food: null,
    });
    expect(await atVisits()).toEqual([]);
    expect(await desk.ok('waiting/list', { dogId })).toMatchObject([
      { name: 'letter.pdf', missing: false },
    ]);
    await saveVisit();
    expect(await atVisits()).toMatchObject([{ name: 'letter.pdf' }]);
  });

  test('left out and taken in again: only then at the visit; else gone from the disk', async () => {
    const [letter] = await add(SMALL_PDF, 'letter.pdf');
    const list = await add(pngOf(20, 10), 'scan.png');
    const scan = list[1]!;
    const leave = (hash: string | null, leftOut: boolean) =>
      desk.ok('waiting/leaveOut', { dogId, hash, leftOut });
    await leave(null, true);
    await leave(scan.hash, false);
    expect(existsSync(content(letter!.hash))).toBe(true);
    await saveVisit();
    expect(await atVisits()).toMatchObject([{ name: 'scan.png', missing: false }]);
    expect(existsSync(content(letter!.hash))).toBe(false);
    expect(await desk.ok('waiting/list', { dogId })).toEqual([]);
  });

  test('the same content twice, too many, and a list written by hand are refused', async () => {
    await add(SMALL_PDF, 'letter.pdf');
    const again = await desk.refused('waiting/add', await waiting(SMALL_PDF, 'again.pdf'));
    expect(again).toMatchObject({
      kind: 'conflict',
      message: 'This file waits for the visit already, as “letter.pdf”.',
    });
    for (let width = 1; width < 30; width++) await add(pngOf(width, 1), `scan ${width}.png`);
    const full = await desk.refused('waiting/add', await waiting(pngOf(40, 1), 'more.png'));
    expect(full.message).toBe('A visit may have at most 30 files.');
    const drawn = await desk.refused('drafts/put', { key: `files:${dogId}`, json: '{}' });
    expect(drawn.kind).toBe('input');
    expect(await desk.ok('waiting/list', { dogId })).toHaveLength(30);
  });

  test('one whose content is missing goes on waiting; the visit is saved with the others', async () => {
    const [letter] = await add(SMALL_PDF, 'letter.pdf');
    await add(pngOf(20, 10), 'scan.png');
    rmSync(content(letter!.hash));
    await saveVisit();
    expect(await atVisits()).toMatchObject([{ name: 'scan.png' }]);
    expect(await desk.ok('waiting/list', { dogId })).toMatchObject([
      { name: 'letter.pdf', missing: true },
    ]);
  });

  test('are among what is unfinished, with the visit that was begun or on their own', async () => {
    await add(SMALL_PDF, 'letter.pdf');
    const unfinished = async () =>
      (await desk.ok('drafts/list', {})).map(({ what, dogName }) => [what, dogName]);
    expect(await unfinished()).toEqual([['files', 'Bramble']]);
    await desk.ok('drafts/put', { key: `visit:${dogId}:new`, json: '{}' });
    expect(await unfinished()).toEqual([['new visit', 'Bramble']]);
    await desk.ok('drafts/drop', { key: `visit:${dogId}:new` });
    await desk.ok('waiting/leaveOut', { dogId, hash: null, leftOut: true });
    expect(await unfinished()).toEqual([]);
  });

  test('go with an owner who is erased, and those of another stay', async () => {
    const [letter] = await add(SMALL_PDF, 'letter.pdf');
    const file = await desk.ok('dogs/file', { dogId });
    const other = await dogOf(desk, 'Rosa Holt', 'Juno');
    const hash = (
      await desk.ok('waiting/add', { ...(await waiting(pngOf(9, 9), 'x.png')), dogId: other.id })
    )[0]!.hash;
    await desk.ok('clients/erase', {
      clientId: file.client.id,
      confirmName: 'Odette Fenn',
      ground: 'asked by the owner',
      insideRetentionConfirmed: true,
    });
    expect(existsSync(content(letter!.hash))).toBe(false);
    expect(existsSync(content(hash))).toBe(true);
    expect(await desk.ok('waiting/list', { dogId: other.id })).toMatchObject([
      { name: 'x.png', missing: false },
    ]);
  });

  test('are among the contents a backup takes along', async () => {
    const [letter] = await add(SMALL_PDF, 'letter.pdf');
    const db = new BetterSqlite3(join(desk.folder, DATABASE_FILES.own), { readonly: true });
    expect(contentsOf(db)).toEqual([letter!.hash]);
    db.close();
  });
});
