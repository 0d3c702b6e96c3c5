import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { blankClient, blankDog, blankVisit } from '../../../electron/contract/records/forms.ts';
import {
  BUNDLE_KINDS,
  bundleManifest,
  bundleRecords,
  type BundleRecords,
} from '../../../electron/contract/exchange/bundle.ts';
import { ATTACHMENT_TYPES } from '../../../electron/contract/files/attachment.ts';
import { csvPieces, jsonPieces } from '../../../electron/service/exchange/bundlePieces.ts';
import { AT_ONCE } from '../../../electron/service/exchange/bundleRecords.ts';
import { restoredCell } from '../../../electron/contract/exchange/csvCells.ts';
import { HOSTILE_NAMES, LONG_NOTES } from '../../support/hostileTexts.ts';
import { SMALL_PDF } from '../../support/pictures.ts';
import { openOwn, testService, type TestDesk } from '../support/desk.ts';
import { exported, jsonOf, recordsOf, WORK } from './support/bundle.ts';
import { attach, fullRecord, SESSION, WEIGHING } from './support/fullRecord.ts';

async function addDog(desk: TestDesk, name: string, owner: string, notes = '') {
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: owner, notes },
    dog: { ...blankDog('female'), name, birthDay: '2022-04-01' },
  });
  const visit = { ...blankVisit(dog.id, '2026-03-02'), weightKg: 24.3, notes };
  await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
  return dog;
}

describe('the open bundle', () => {
  test('of the demonstration practice: hashes, counts, schema and our own check agree', async () => {
    const desk = testService();
    await desk.ok('app/open', { which: 'demo' });
    const entries = await exported(desk, null);
    const manifest = bundleManifest.parse(jsonOf(entries, 'manifest.json'));
    const named = manifest.files.map(({ name }) => name);
    expect([...named, 'manifest.json'].sort()).toEqual([...entries.keys()].sort());
    for (const { name, sha256, bytes } of manifest.files) {
      const content = entries.get(name)!;
      expect(content.length).toBe(bytes);
      expect(createHash('sha256').update(content).digest('hex')).toBe(sha256);
    }
    const records = jsonOf(entries, 'records.json');
    // The schema is checked by Ajv, a validator of JSON Schema (draft 2020-12) that is not ours.
    const ajv = new Ajv2020({ strict: false, validateFormats: false });
    const valid = ajv.compile(jsonOf(entries, 'schema.json') as object);
    expect(valid(records), JSON.stringify(valid.errors?.slice(0, 3))).toBe(true);
    expect(valid({ ...(records as object), dogs: [{ id: 1 }] })).toBe(false);
    // What is written is what the program's own check takes, to the letter.
    expect(bundleRecords.parse(records)).toEqual(records);
    expect(manifest.counts['dogs']).toBeGreaterThan(0);
    expect(manifest.counts['plans']).toBeGreaterThan(0);
  });

  test('hostile names and long notes stand in every table harmless, and can be told back', async () => {
    const desk = await openOwn();
    for (const { typed } of HOSTILE_NAMES) {
      const dog = await addDog(desk, typed, typed, LONG_NOTES);
      const weighing = { ...WEIGHING, note: typed };
      await desk.ok('weighings/save', { dogId: dog.id, weighing });
      await desk.ok('sessions/save', { dogId: dog.id, session: { ...SESSION, note: typed } });
      await desk.ok('bin/put', { kind: 'dog', id: dog.id, reason: typed });
    }
    const entries = await exported(desk, null);
    const records = recordsOf(entries);
    for (const kind of BUNDLE_KINDS) {
      const text = entries.get(`tables/${kind}.csv`)!.toString();
      expect(text.startsWith('\uFEFF')).toBe(true);
      // Read by a CSV library (RFC 4180), not by our own import.
      const { data, errors } = Papa.parse<Record<string, string>>(text.slice(1), {
        header: true,
        delimiter: ',',
        skipEmptyLines: true,
      });
      expect(errors.filter(({ code }) => code !== 'UndetectableDelimiter')).toEqual([]);
      expect(data).toHaveLength(records[kind].length);
      for (const [index, row] of data.entries()) {
        for (const [column, cell] of Object.entries(row)) {
          expect(cell, `${kind} ${column}`).not.toMatch(/^[=+\-@\t\r]/);
          const value = (records[kind][index] as Record<string, unknown>)[column];
          if (typeof value === 'string') expect(restoredCell(cell)).toBe(value);
        }
      }
    }
    expect(records.owners[0]!.notes).toHaveLength(LONG_NOTES.trim().length);
  });

  test('holds each attached file once, under its hash, with an ending that fits', async () => {
    const desk = await openOwn();
    const { visit } = await fullRecord(desk, 'Odette Fenn', 'Bramble');
    const other = await addDog(desk, 'Rusk', 'Ben Sample');
    const [second] = (await desk.ok('dogs/file', { dogId: other.id })).visits;
    await attach(desk, second!.id, SMALL_PDF, '../../letter.pdf');
    await attach(desk, visit.id, SMALL_PDF, '=1+1.pdf');
    const entries = await exported(desk, null);
    const { attachments } = recordsOf(entries);
    expect(attachments).toHaveLength(4);
    const files = [...entries.keys()].filter((name) => name.startsWith('files/'));
    expect(files).toHaveLength(3);
    for (const { hash, mediaType, bytes } of attachments) {
      const name = `files/${hash}.${ATTACHMENT_TYPES[mediaType][0]}`;
      expect(entries.get(name)!.length).toBe(bytes);
      expect(createHash('sha256').update(entries.get(name)!).digest('hex')).toBe(hash);
    }
    expect(jsonOf(entries, 'manifest.json')).toMatchObject({ missing: [] });
  });

  test('keeps no other call waiting, and holds the records as they were when it was asked for', async () => {
    const desk = await openOwn();
    await addDog(desk, 'Bess', 'Ada Sample');
    const order: string[] = [];
    const made = exported(desk).then((entries) => {
      order.push('exported');
      return entries;
    });
    await addDog(desk, 'Finn', 'Later Owner');
    order.push('saved');
    // What it was at when it gave way to another question.
    const gaveWay = new Set<string>();
    while (!order.includes('exported')) {
      const state = await desk.ok('work/state', { workId: WORK });
      if (state !== null) gaveWay.add(state.step);
      await new Promise((resolve) => setImmediate(resolve));
    }
    const steps = ['Reading the records', 'Writing records.json', 'Writing tables/visits.csv'];
    expect([...gaveWay]).toEqual(expect.arrayContaining(steps));
    const names = (records: BundleRecords) => records.owners.map(({ name }) => name).sort();
    expect(names(recordsOf(await made))).toEqual(['Ada Sample']);
    expect(order).toEqual(['saved', 'exported']);
    expect(names(recordsOf(await exported(desk)))).toEqual(['Ada Sample', 'Later Owner']);
  });

  test('gives way to an erasure, which leaves nothing behind', async () => {
    const desk = await openOwn();
    const { clientId } = await addDog(desk, 'Bess', 'Ada Sample');
    const made = desk.service.call('export/make', { clientId: null, workId: WORK });
    const erased = await desk.ok('clients/erase', {
      clientId,
      ground: 'asked by the owner',
      confirmName: 'Ada Sample',
      insideRetentionConfirmed: true,
    });
    expect(erased).toMatchObject({ clean: true });
    expect(await made).toMatchObject({ ok: false, error: { kind: 'cancelled' } });
  });

  test('is written in pieces that come to the JSON and the table of the whole', () => {
    const list = (length: number) =>
      Array.from({ length }, (_, n) => ({
        id: n,
        note: 'two\nlines',
        parts: n % 2 ? [] : [{ n }],
      }));
    for (const length of [0, 1, AT_ONCE, AT_ONCE + 1, 3 * AT_ONCE + 7]) {
      const records = { owners: list(length), dogs: [], visits: list(2) };
      const json = [...jsonPieces(records as unknown as BundleRecords)];
      // Besides the slices: eight pieces of the layout, and the two visits.
      expect(json).toHaveLength(8 + Math.ceil(length / AT_ONCE));
      expect(json.join('')).toBe(`${JSON.stringify(records, null, 1)}\n`);
      const table = [...csvPieces(['id', 'note'], records.owners)].join('').slice(1);
      const { data } = Papa.parse<string[]>(table, { skipEmptyLines: true });
      expect(data).toEqual([
        ['id', 'note'],
        ...records.owners.map(({ id, note }) => [`${id}`, note]),
      ]);
    }
  });

  test('cancelled at any step, it leaves nothing behind', async () => {
    const desk = await openOwn();
    await fullRecord(desk, 'Odette Fenn', 'Bramble');
    let cancelled = 0;
    for (let stopAt = 1; stopAt < 200; stopAt += 2) {
      const running = desk.service.call('export/make', { clientId: null, workId: WORK });
      for (let step = 0; step < stopAt; step++) {
        await new Promise((resolve) => setImmediate(resolve));
      }
      await desk.ok('work/cancel', { workId: WORK });
      const answer = await running;
      if (answer.ok) break;
      expect(answer.error).toMatchObject({ kind: 'cancelled' });
      cancelled += 1;
      const left = readdirSync(join(desk.folder, 'transfer'), { recursive: true });
      expect(left.filter((name) => String(name).includes('/'))).toEqual([]);
    }
    expect(cancelled).toBeGreaterThan(3);
  });

  test('of one owner holds nothing of another, and what is in the bin too', async () => {
    const desk = await openOwn();
    const bess = await addDog(desk, 'Bess', 'Zoë Müller');
    const other = await addDog(desk, 'Other', 'Somebody Else');
    const weighing = {
      day: '2026-03-02',
      weightKg: 24,
      weighingMethod: 'same scale',
      scaleStepKg: 0.1,
      note: '=1+1',
    } as const;
    const { id } = await desk.ok('weighings/save', { dogId: bess.id, weighing });
    await desk.ok('weighings/drop', { id });
    const entries = await exported(desk, bess.clientId);
    const records = bundleRecords.parse(jsonOf(entries, 'records.json'));
    expect(records.owners).toMatchObject([{ name: 'Zoë Müller' }]);
    expect(records.visits).toMatchObject([{ dogId: bess.id, binnedAt: null }]);
    expect(records.history).toMatchObject([{ kind: 'weighing', action: 'removed' }]);
    for (const content of entries.values()) {
      expect(content.includes('Somebody Else')).toBe(false);
      expect(content.includes(other.id)).toBe(false);
    }
    expect(await desk.refused('export/make', { clientId: WORK, workId: WORK })).toMatchObject({
      kind: 'not-found',
    });
  });
});
