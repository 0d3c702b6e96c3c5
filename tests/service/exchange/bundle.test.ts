import { createHash } from 'node:crypto';
import { buffer } from 'node:stream/consumers';
import { Ajv2020 } from 'ajv/dist/2020.js';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import yauzl from 'yauzl';
import { blankClient, blankDog, blankVisit } from '../../../electron/contract/blank.ts';
import { bundleManifest, bundleRecords } from '../../../electron/contract/bundle.ts';
import { restoredCell } from '../../../electron/contract/csvCells.ts';
import { HOSTILE_NAMES } from '../../support/hostileTexts.ts';
import { openOwn, testService, type TestDesk } from '../desk.ts';

const WORK = '00000000-0000-4000-8000-00000000000b';

async function entriesOf(desk: TestDesk, clientId: string | null): Promise<Map<string, Buffer>> {
  const { token } = await desk.ok('export/make', { clientId, workId: WORK });
  const given = desk.service.giveOut(token);
  if (!given.ok) expect.fail(given.error.message);
  const zip = await yauzl.openPromise(given.value.file);
  const entries = new Map<string, Buffer>();
  for await (const entry of zip.eachEntry()) {
    entries.set(entry.fileName, await buffer(await zip.openReadStreamPromise(entry)));
  }
  given.value.done();
  return entries;
}
const json = (entries: Map<string, Buffer>, name: string): unknown =>
  JSON.parse(entries.get(name)!.toString());

async function addDog(desk: TestDesk, name: string, owner: string, notes = '') {
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: owner, notes },
    dog: { ...blankDog(), name, birthDay: '2022-04-01' },
  });
  const visit = { ...blankVisit(dog.id, '2026-03-02'), weightKg: 24.3, notes };
  await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
  return dog;
}

describe('the open bundle', () => {
  test('of the demonstration practice: hashes, counts, schema and our own check agree', async () => {
    const desk = testService();
    await desk.ok('app/open', { which: 'demo' });
    const entries = await entriesOf(desk, null);
    const manifest = bundleManifest.parse(json(entries, 'manifest.json'));
    const named = manifest.files.map(({ name }) => name);
    expect([...named, 'manifest.json'].sort()).toEqual([...entries.keys()].sort());
    for (const { name, sha256, bytes } of manifest.files) {
      const content = entries.get(name)!;
      expect(content.length).toBe(bytes);
      expect(createHash('sha256').update(content).digest('hex')).toBe(sha256);
    }
    const records = json(entries, 'records.json');
    // The schema is checked by Ajv, a validator of JSON Schema (draft 2020-12) that is not ours.
    const ajv = new Ajv2020({ strict: false, validateFormats: false });
    const valid = ajv.compile(json(entries, 'schema.json') as object);
    expect(valid(records), JSON.stringify(valid.errors?.slice(0, 3))).toBe(true);
    expect(valid({ ...(records as object), dogs: [{ id: 1 }] })).toBe(false);
    // What is written is what the program's own check takes, to the letter.
    expect(bundleRecords.parse(records)).toEqual(records);
    expect(manifest.counts['dogs']).toBeGreaterThan(0);
    expect(manifest.counts['plans']).toBeGreaterThan(0);
  });

  test('hostile names and long notes stand in the tables harmless, and can be told back', async () => {
    const desk = await openOwn();
    const long = 'Ünïcode, "quoted"\n'.repeat(600).trim();
    for (const { typed } of HOSTILE_NAMES) await addDog(desk, typed, typed, long);
    const entries = await entriesOf(desk, null);
    const { owners } = bundleRecords.parse(json(entries, 'records.json'));
    const text = entries.get('tables/owners.csv')!.toString();
    expect(text.startsWith('\uFEFF')).toBe(true);
    // Read by a CSV library (RFC 4180), not by our own import.
    const { data, errors } = Papa.parse<Record<string, string>>(text.slice(1), {
      header: true,
      delimiter: ',',
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    for (const row of data)
      for (const cell of Object.values(row)) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
    expect(data.map(({ name }) => restoredCell(name!))).toEqual(owners.map(({ name }) => name));
    expect(data.map(({ notes }) => restoredCell(notes!))).toEqual(owners.map(({ notes }) => notes));
    expect(owners[0]!.notes).toHaveLength(long.length);
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
    const entries = await entriesOf(desk, bess.clientId);
    const records = bundleRecords.parse(json(entries, 'records.json'));
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
