import { copyFileSync, existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import BetterSqlite3 from 'better-sqlite3';
import { beforeAll, describe, expect, test } from 'vitest';
import { blankClient } from '../../electron/contract/records/forms.ts';
import { MIGRATIONS } from '../../electron/service/migrations/index.ts';
import { openOwn, temporaryFolder, testService } from '../service/support/desk.ts';
import { faults, lookAt, start, until, wait } from './support/run.ts';
import { chance } from '../attack/support/chance.ts';
import { long } from '../support/form.ts';

// A process is killed in the middle of its work (SIGKILL: it gets no chance to tidy up), and what it
// left is looked at. Kills while it saves, and cuts of the power, are in `tests/attack/`.

const GOLDEN = fileURLToPath(new URL('../migrations/golden/v1.sqlite', import.meta.url));
// Only a process that ends by itself leaves what it compiled to the next.
beforeAll(() => start('tryAll', temporaryFolder()).ended(), 60_000);

describe('a process killed while it', () => {
  test('changes an older schema leaves a whole one: the old, the new or a finished step between', async () => {
    const random = chance(3);
    const states = { old: 0, between: 0, new: 0 };
    for (let run = 0; run < (long ? 12 : 4); run++) {
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
          version: Number(db.pragma('user_version', { simple: true })),
          dogs: db.prepare('SELECT count(*) FROM dog').pluck().get(),
          extra: db
            .prepare("SELECT count(*) FROM sqlite_schema WHERE name = 'weighing'")
            .pluck()
            .get(),
        };
      });
      expect(dogs).toBeGreaterThan(0);
      // Each migration is one transaction, so a kill leaves what some of them have finished.
      expect(version).toBeLessThanOrEqual(MIGRATIONS.length);
      expect(extra).toBe(version === 1 ? 0 : 1);
      states[version === 1 ? 'old' : version === MIGRATIONS.length ? 'new' : 'between'] += 1;
      const after = testService(folder);
      expect((await after.ok('app/status', {})).trouble).toBeNull();
      await after.service.close();
    }
    console.log(
      `Killed during migration: ${states.old} old, ${states.between} after a step, ${states.new} new`,
    );
  }, 60_000);

  test('makes a backup leaves no half backup under a backup’s name', async () => {
    const folder = temporaryFolder();
    copyFileSync(GOLDEN, join(folder, 'trotwell.sqlite'));
    const random = chance(4);
    for (let run = 0; run < (long ? 6 : 3); run++) {
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
    const KILLED = long ? 24 : 12;
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
