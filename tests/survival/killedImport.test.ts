import { cpSync, existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { expect, test } from 'vitest';
import { contentFile, contentsOf, listContents } from '../../electron/service/backup/contents.ts';
import { presentContents } from '../../electron/service/backup/folder.ts';
import { openOwn, temporaryFolder, testService } from '../service/support/desk.ts';
import { exported, imported, zipped } from '../service/exchange/support/bundle.ts';
import { manyOf } from '../service/exchange/support/manyOf.ts';
import { fullRecord } from '../service/exchange/support/fullRecord.ts';
import { dogOf, soundVisit } from '../service/support/records.ts';
import { faults, lookAt, start, wait } from './support/run.ts';
import { chance } from '../attack/support/chance.ts';
import { long } from '../support/form.ts';

// An import is killed (SIGKILL) at moments spread over the whole of it; see killed.test.ts for what
// that shows and what not.

/** How long an import takes when nobody kills it, ms; the kills are spread over so much. */
async function undisturbed(what: string, folder: string, file: string): Promise<number> {
  const run = start(what, folder, file);
  await run.said('ready');
  const from = performance.now();
  await run.said('done');
  const took = performance.now() - from;
  await run.kill();
  return took;
}

/** What there is, in numbers; two states of the records never agree in them by chance. */
const stateOf = (db: Database): string =>
  JSON.stringify(
    [
      'client',
      'dog',
      'visit',
      'visit_sign',
      'diet_item',
      'plan',
      'session_result',
      'food_decision',
      'weighing',
      'stored_file',
      'attachment',
      'history',
    ]
      .map((table) => db.prepare(`SELECT count(*) FROM ${table}`).pluck().get())
      .concat(db.prepare('SELECT round(sum(weight_kg), 3) FROM visit').pluck().get()),
  );

test('an import of a bundle, killed, leaves the old records or the new ones', async () => {
  const from = await openOwn();
  const { dog, visit } = await fullRecord(from, 'Odette Fenn', 'Bramble');
  const before = await exported(from);
  await from.ok('visits/save', {
    id: visit.id,
    basedOn: 2,
    reason: 'Read again.',
    visit: { ...soundVisit(dog.id, '2026-02-16'), weightKg: 25.5, signs: ['cough'] },
    plan: null,
    food: null,
  });
  const bundle = await zipped(manyOf(await exported(from), 40));
  const old = await openOwn();
  await imported(old, before);
  await old.service.close();

  const copy = (): string => {
    const folder = temporaryFolder();
    cpSync(old.folder, folder, { recursive: true });
    return folder;
  };
  const whole = copy();
  const took = await undisturbed('importBundle', whole, bundle);
  const states = { [lookAt(old.folder, stateOf)]: 'old', [lookAt(whole, stateOf)]: 'new' };
  expect(Object.keys(states)).toHaveLength(2);

  const random = chance(7);
  const KILLS = long ? 16 : 4;
  const seen = { old: 0, new: 0, filesBefore: 0, swept: 0 };
  for (let run = 0; run < KILLS; run++) {
    const folder = copy();
    const busy = start('importBundle', folder, bundle);
    await busy.said('ready');
    // The last one is killed right after it was acknowledged.
    if (run === KILLS - 1) await busy.said('done');
    else await wait(((run + random()) / KILLS) * took * 1.1);
    await busy.kill();
    const said = busy.lines.includes('done');
    const state = states[lookAt(folder, (db) => (faults(db).length > 0 ? '' : stateOf(db)))];
    expect(state, `kill ${run}`).toMatch(/^(old|new)$/);
    if (said) expect(state).toBe('new');
    if (state === 'old') seen.old += 1;
    else seen.new += 1;

    const store = presentContents(folder);
    if (existsSync(join(store, 'import-under-way'))) seen.filesBefore += 1;
    const left = listContents(store).length;
    const after = testService(folder);
    expect((await after.ok('app/status', {})).trouble).toBeNull();
    // No record without its file, no file without a record, and no mark of an import.
    const named = new Set(lookAt(folder, contentsOf));
    for (const hash of named) expect(existsSync(contentFile(store, hash))).toBe(true);
    expect(listContents(store).length).toBe(named.size);
    expect(existsSync(join(store, 'import-under-way'))).toBe(false);
    if (left > named.size) seen.swept += 1;
    await after.service.close();
  }
  console.log(
    `Killed during import of a bundle: ${KILLS} times over ${Math.round(took)} ms; ` +
      `${seen.old} old, ${seen.new} new, 0 between; ${seen.filesBefore} under way, ` +
      `of these ${seen.swept} with files of the import swept up at the next start`,
  );
  expect(seen.old).toBeGreaterThan(0);
  expect(seen.new).toBeGreaterThan(0);
}, 120_000);

test('an import of weights, killed, leaves all of them or none', async () => {
  const ROWS = 4000;
  const day = (row: number): string =>
    new Date(Date.UTC(2021, 4, 2) + (row % 1700) * 86_400_000).toISOString().slice(0, 10);
  const table = join(temporaryFolder(), 'weights.csv');
  const lines = Array.from({ length: ROWS }, (_, row) => `${day(row)},${20 + row / 1000}`);
  writeFileSync(table, ['Day,Weight', ...lines].join('\r\n'));
  const old = await openOwn();
  await dogOf(old, 'Odette Fenn', 'Bramble');
  await old.service.close();
  const copy = (): string => {
    const folder = temporaryFolder();
    cpSync(old.folder, folder, { recursive: true });
    return folder;
  };
  const took = await undisturbed('importWeights', copy(), table);
  const random = chance(8);
  const KILLS = long ? 12 : 3;
  const seen = { old: 0, new: 0 };
  for (let run = 0; run < KILLS; run++) {
    const folder = copy();
    const busy = start('importWeights', folder, table);
    await busy.said('ready');
    // The last one is killed right after it was acknowledged.
    if (run === KILLS - 1) await busy.said('done');
    else await wait(((run + random()) / KILLS) * took * 1.1);
    await busy.kill();
    const rows = lookAt(folder, (db) => {
      expect(faults(db)).toEqual([]);
      return db.prepare('SELECT count(*) FROM weighing').pluck().get();
    });
    expect([0, ROWS]).toContain(rows);
    if (busy.lines.includes('done')) expect(rows).toBe(ROWS);
    seen[rows === 0 ? 'old' : 'new'] += 1;
    const after = testService(folder);
    expect((await after.ok('app/status', {})).trouble).toBeNull();
    await after.service.close();
  }
  console.log(
    `Killed during import of weights: ${KILLS} times over ${Math.round(took)} ms; ` +
      `${seen.old} old, ${seen.new} new, 0 between`,
  );
  expect(seen.old).toBeGreaterThan(0);
  expect(seen.new).toBeGreaterThan(0);
}, 90_000);
