import { copyFileSync, existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import BetterSqlite3 from 'better-sqlite3';
import { beforeAll, describe, expect, test } from 'vitest';
import { blankClient } from '../../electron/contract/blank.ts';
import { MIGRATIONS } from '../../electron/service/migrations/index.ts';
import { openOwn, temporaryFolder, testService } from '../service/desk.ts';
import { chance, faults, lookAt, start, until, wait } from './support/run.ts';

// A process is killed in the middle of its work (SIGKILL: it gets no chance to tidy up), and what it
// left is looked at. That is the end of a program, not of the power: what the disk itself has not
// yet written when the current goes is not simulated here. Against that there are only
// `synchronous=FULL` and the flushing before every rename, which no test on this machine can prove.

const GOLDEN = fileURLToPath(new URL('../migrations/golden/v1.sqlite', import.meta.url));
const KILLS = 100;

interface Tally {
  kills: number;
  acknowledged: number;
  lost: number;
  half: number;
  faulty: number;
}

/** Kills `kills` writers one after the other on one folder, each at another moment. */
async function killWriters(kills: number, seed: number, tally: Tally): Promise<void> {
  const folder = temporaryFolder();
  const random = chance(seed);
  for (let run = 0; run < kills; run++) {
    const writer = start('write', folder, `run ${run}`);
    // Three of four have saved before; the fourth may be killed in its very first visit.
    await writer.said(run % 4 === 0 ? 'ready' : 'saved');
    await wait(random() * 120);
    await writer.kill();
    tally.kills += 1;
    lookAt(folder, (db) => {
      if (faults(db).length > 0) tally.faulty += 1;
      const signs = new Map(
        db
          .prepare(
            `SELECT notes, (SELECT count(*) FROM visit_sign WHERE visit_id = visit.id)
             FROM visit WHERE notes LIKE 'run ${run} visit %'`,
          )
          .raw()
          .all() as [string, number][],
      );
      for (const [notes, count] of signs) {
        const number = Number(notes.split(' ').at(-1));
        if (count !== 1 + (number % 2)) tally.half += 1;
      }
      const numbers = writer.lines.flatMap((line) => /^saved (\d+)$/.exec(line)?.[1] ?? []);
      tally.acknowledged += numbers.length;
      tally.lost += numbers.filter((number) => !signs.has(`run ${run} visit ${number}`)).length;
    });
  }
}

// Only a process that ends by itself leaves what it compiled to the next.
beforeAll(() => start('tryAll', temporaryFolder()).ended(), 60_000);

describe('a process killed while it', () => {
  test(`writes visits, ${KILLS} times, leaves whole records with every save it acknowledged`, async () => {
    const tally: Tally = { kills: 0, acknowledged: 0, lost: 0, half: 0, faulty: 0 };
    await Promise.all([1, 2].map((seed) => killWriters(KILLS / 2, seed, tally)));
    console.log(
      `Killed while writing: ${tally.kills} times; ${tally.acknowledged} acknowledged saves, ` +
        `${tally.lost} lost, ${tally.half} half visits, ${tally.faulty} integrity failures`,
    );
    expect(tally).toMatchObject({ kills: KILLS, lost: 0, half: 0, faulty: 0 });
    expect(tally.acknowledged).toBeGreaterThan(KILLS);
  }, 400_000);

  test('changes an older schema leaves the old one or the new one', async () => {
    const random = chance(3);
    const states = { old: 0, new: 0 };
    for (let run = 0; run < 12; run++) {
      const folder = temporaryFolder();
      copyFileSync(GOLDEN, join(folder, 'trotwell.sqlite'));
      const migrating = start('migrate', folder);
      await migrating.said('ready');
      // Two of three are aimed at what follows the backup that is made before a change.
      if (run % 3 !== 0) await until(() => backupsIn(folder).length > 0);
      await wait(random() * 90);
      await migrating.kill();
      const { version, dogs, extra } = lookAt(folder, (db) => {
        expect(faults(db)).toEqual([]);
        return {
          version: db.pragma('user_version', { simple: true }),
          dogs: db.prepare('SELECT count(*) FROM dog').pluck().get(),
          extra: db
            .prepare("SELECT count(*) FROM sqlite_schema WHERE name = 'weighing'")
            .pluck()
            .get(),
        };
      });
      expect(dogs).toBeGreaterThan(0);
      expect([
        [1, 0],
        [MIGRATIONS.length, 1],
      ]).toContainEqual([version, extra]);
      states[version === 1 ? 'old' : 'new'] += 1;
      const after = testService(folder);
      expect((await after.ok('app/status', {})).trouble).toBeNull();
      await after.service.close();
    }
    console.log(`Killed during migration: ${states.old} old, ${states.new} new, 0 between`);
  }, 60_000);

  test('makes a backup leaves no half backup under a backup’s name', async () => {
    const folder = temporaryFolder();
    copyFileSync(GOLDEN, join(folder, 'trotwell.sqlite'));
    const random = chance(4);
    for (let run = 0; run < 6; run++) {
      const busy = start('backUp', folder);
      await busy.said('ready');
      await wait(random() * 60);
      await busy.kill();
      expect(lookAt(folder, faults)).toEqual([]);
    }
    for (const name of backupsIn(folder)) {
      const db = new BetterSqlite3(join(folder, 'backups', name), { readonly: true });
      expect(faults(db)).toEqual([]);
      db.close();
    }
    const after = testService(folder);
    await after.ok('app/status', {});
    // What the killed ones had begun is swept away at the next start.
    expect(existsSync(join(folder, 'transfer'))).toBe(false);
  }, 60_000);

  test('restores leaves the one state or the other, and the next start completes it', async () => {
    const folder = await twoBackups();
    const names = readdirSync(join(folder, 'backups')).filter((name) =>
      name.startsWith('automatic'),
    );
    expect(names).toHaveLength(2);
    const random = chance(5);
    const restoring = join(folder, 'restore');
    const seen = new Map<string, number>();
    const found = { underWay: 0, committed: 0, moved: 0 };
    const KILLED = 24;
    for (let run = 0; run < KILLED; run++) {
      const busy = start('restore', folder, names.join(','));
      await busy.said('ready');
      await wait(random() * 80);
      // Three of four are aimed at what follows the point of no return, which lasts milliseconds.
      if (run % 4 !== 0) {
        await until(
          () => existsSync(join(restoring, 'ready.json')),
          () => busy.lines.join(),
        );
        if (run % 4 === 1) await wait(random() * 3);
      }
      await busy.kill();
      if (existsSync(restoring)) found.underWay += 1;
      if (existsSync(join(restoring, 'ready.json'))) {
        found.committed += 1;
        if (!existsSync(join(restoring, 'trotwell.sqlite'))) found.moved += 1;
      }
      const after = testService(folder);
      expect((await after.ok('app/status', {})).trouble).toBeNull();
      const state = (await after.ok('clients/list', { query: '' })).map(({ name }) => name).join();
      expect(['Ada', 'Ada,Ben']).toContain(state);
      expect(lookAt(folder, faults)).toEqual([]);
      expect(existsSync(restoring)).toBe(false);
      seen.set(state, (seen.get(state) ?? 0) + 1);
      await after.service.close();
    }
    console.log(
      `Killed during restore: ${KILLED} times; ${[...seen].map(([state, count]) => `${count} × ${state}`).join(', ')}; ` +
        `${found.underWay} under way, of these ${found.committed} past the point of no return, ${found.moved} with the new file moved in; 0 between`,
    );
    expect(found.underWay).toBeGreaterThan(found.committed);
    expect(found.committed).toBeGreaterThanOrEqual(KILLED / 3);
  }, 90_000);
});

/** The finished backups in a folder of records. */
function backupsIn(folder: string): string[] {
  const backups = join(folder, 'backups');
  return existsSync(backups) ? readdirSync(backups).filter((name) => name.endsWith('.sqlite')) : [];
}

/** A folder with one backup that holds one owner, and one that holds two. */
async function twoBackups(): Promise<string> {
  const folder = temporaryFolder();
  mkdirSync(folder, { recursive: true });
  for (const [name, day] of [
    ['Ada', '2026-02-27'],
    ['Ben', '2026-02-28'],
  ] as const) {
    const desk = await openOwn(folder, day);
    await desk.ok('clients/save', { id: null, client: { ...blankClient(), name } });
    await desk.service.close();
  }
  return folder;
}
