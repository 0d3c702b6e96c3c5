import { randomUUID } from 'node:crypto';
import { readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { CALL_NAMES } from '../../../electron/contract/callNames.ts';
import { blankPractice } from '../../../electron/contract/records/forms.ts';
import { countTries, triesNote, waitAfter } from '../../../electron/service/lock/tries.ts';
import { createService, type Service } from '../../../electron/service/service.ts';
import { FONTS, openOwn, temporaryFolder, testService } from '../support/desk.ts';

const PASSPHRASE = 'eleven geese on a gate';
const OTHER = 'twelve hens in a yard';

/** A service whose clocks the test moves. */
const open: Service[] = [];
afterEach(async () => {
  for (const service of open.splice(0)) await service.close();
});
function clocked(folder: string) {
  const time = { wall: Date.parse('2026-03-02T12:00:00Z'), monotonic: 0 };
  const service = createService({
    folder,
    fontsFolder: FONTS,
    version: '0.0.0-test',
    clock: () => new Date(time.wall),
    monotonicMs: () => time.monotonic,
  });
  open.push(service);
  return {
    service,
    time,
    pass(minutes: number): void {
      time.wall += minutes * 60_000;
      time.monotonic += minutes * 60_000;
    },
    async kind(...[name, input]: Parameters<Service['call']>): Promise<string> {
      const answer = await service.call(name, input);
      return answer.ok ? 'ok' : answer.error.kind;
    },
  };
}

async function lockedFolder(idleMinutes = 5): Promise<string> {
  const folder = temporaryFolder();
  const desk = await openOwn(folder);
  await desk.ok('practice/save', { ...blankPractice(), name: 'Invented practice' });
  await desk.ok('lock/set', { passphrase: PASSPHRASE, present: null, idleMinutes });
  await desk.service.close();
  return folder;
}

describe('a practice with a passphrase', () => {
  test('starts locked and tells nothing until the passphrase is given', async () => {
    const desk = testService(await lockedFolder());
    const status = await desk.ok('app/status', {});
    expect(status.lock).toEqual({ locked: true, idleMinutes: 5 });
    expect(JSON.stringify(status)).not.toContain('Invented practice');
    expect(status.folder).toBe('');
    for (const name of CALL_NAMES) {
      if (['app/status', 'lock/open', 'lock/now', 'work/state', 'work/cancel'].includes(name))
        continue;
      const error = await desk.refused(name, {});
      expect(['locked', 'input'], name).toContain(error.kind);
    }
    expect((await desk.refused('clients/list', { query: '' })).kind).toBe('locked');
    expect((await desk.refused('app/open', { which: 'demo' })).kind).toBe('locked');
    expect(
      (await desk.refused('backup/make', { passphrase: null, workId: randomUUID() })).kind,
    ).toBe('locked');
    const taken = await desk.service.takeIn('a.trotwell', FONTS, 10);
    expect(taken.ok ? '' : taken.error.kind).toBe('locked');

    const opened = await desk.ok('lock/open', { passphrase: PASSPHRASE });
    expect(opened.practice?.name).toBe('Invented practice');
    await desk.ok('clients/list', { query: '' });
    await desk.ok('lock/now', {});
    expect((await desk.refused('clients/list', { query: '' })).kind).toBe('locked');
  });

  test('is told apart from one typed wrong, and gives no way round', async () => {
    const desk = testService(await lockedFolder());
    const wrong = await desk.refused('lock/open', { passphrase: OTHER });
    expect(wrong).toMatchObject({ kind: 'input', fields: [{ path: 'passphrase' }] });
    const change = { passphrase: OTHER, present: null, idleMinutes: 5 };
    expect((await desk.refused('lock/set', change)).kind).toBe('locked');
    expect((await desk.ok('app/status', {})).lock?.locked).toBe(true);
  });

  test('changes and loses its passphrase only with the present one', async () => {
    const desk = testService(await lockedFolder());
    await desk.ok('lock/open', { passphrase: PASSPHRASE });
    const change = { passphrase: OTHER, present: 'not the one', idleMinutes: 9 };
    expect((await desk.refused('lock/set', change)).fields?.[0]?.path).toBe('present');
    const changed = await desk.ok('lock/set', { ...change, present: PASSPHRASE });
    expect(changed.lock).toEqual({ locked: false, idleMinutes: 9 });
    const gone = await desk.ok('lock/set', { passphrase: null, present: OTHER, idleMinutes: 9 });
    expect(gone.lock).toBeNull();
  });

  test('refuses short passphrases and odd times in one sentence', async () => {
    const desk = await openOwn();
    const short = { passphrase: 'ninechars', present: null, idleMinutes: 5 };
    expect((await desk.refused('lock/set', short)).message).toContain('from 10 to 200 characters');
    const odd = { passphrase: PASSPHRASE, present: null, idleMinutes: 0 };
    expect((await desk.refused('lock/set', odd)).message).toContain('from 1 to 240 min');
  });

  test('keeps its lock through a restore, whatever lock the backup had', async () => {
    const folder = temporaryFolder();
    const first = await openOwn(folder);
    await first.ok('practice/save', { ...blankPractice(), name: 'Invented practice' });
    await first.service.close();
    const desk = testService(folder, '2026-03-03');
    await desk.ok('lock/set', { passphrase: PASSPHRASE, present: null, idleMinutes: 5 });
    const { name } = (await desk.ok('backup/status', {})).kept[0]!;
    const input = { source: { name }, passphrase: null, workId: randomUUID() };
    const restored = await desk.ok('backup/restore', input);
    expect(restored.status.lock?.locked).toBe(true);
    await desk.ok('lock/open', { passphrase: PASSPHRASE });
  });
});

describe('nobody at the desk', () => {
  test('locks it after the chosen minutes; only what a person causes puts that off', async () => {
    const { service, pass, kind } = clocked(await lockedFolder());
    await service.call('lock/open', { passphrase: PASSPHRASE });
    pass(4);
    expect(await kind('clients/list', { query: '' })).toBe('ok');
    pass(4);
    expect(await kind('lock/awake', {})).toBe('ok');
    pass(4);
    expect(await kind('backup/status', {})).toBe('ok');
    expect(await kind('work/state', { workId: randomUUID() })).toBe('ok');
    expect(await kind('app/status', {})).toBe('ok');
    pass(1);
    expect(await kind('clients/list', { query: '' })).toBe('locked');
  });

  test('counts the time the computer slept, and a clock set back does not help', async () => {
    const { service, time, kind } = clocked(await lockedFolder());
    await service.call('lock/open', { passphrase: PASSPHRASE });
    time.wall += 6 * 60_000;
    expect(await kind('clients/list', { query: '' })).toBe('locked');
    await service.call('lock/open', { passphrase: PASSPHRASE });
    time.wall -= 60 * 60_000;
    time.monotonic += 6 * 60_000;
    expect(await kind('clients/list', { query: '' })).toBe('locked');
  });
});

describe('wrong passphrases', () => {
  test('make the next try wait, longer each time', () => {
    expect([1, 2, 3, 4, 5, 20].map(waitAfter)).toEqual([0, 0, 2, 4, 8, 300]);
  });

  test('hold even the right one back until the time is over, also after a restart', async () => {
    const folder = await lockedFolder();
    let { service, time } = clocked(folder);
    const message = async (passphrase: string): Promise<string> => {
      const answer = await service.call('lock/open', { passphrase });
      return answer.ok ? 'open' : answer.error.message;
    };
    for (const _ of [1, 2, 3]) expect(await message(OTHER)).toContain('not the passphrase');
    expect(await message(PASSPHRASE)).toContain('wait 2 s');
    time.wall += 60_000; // a clock set forward changes nothing
    expect(await message(PASSPHRASE)).toContain('wait 2 s');
    await service.close();
    ({ service, time } = clocked(folder));
    expect(await message(PASSPHRASE)).toContain('wait 2 s');
    time.monotonic += 2000;
    expect(await message(PASSPHRASE)).toBe('open');
    expect(readdirSync(folder)).not.toContain('lock-tries.json');
  });

  test('count from their beginning, and go on where the last start ended', () => {
    const folder = temporaryFolder();
    const started = () => countTries(() => 0, triesNote(folder));
    const first = started();
    for (let tries = 0; tries < 3; tries++) first.begun();
    expect(first.secondsLeft()).toBe(2);
    const second = started();
    expect(second.secondsLeft()).toBe(2);
    second.begun();
    expect(started().secondsLeft()).toBe(4);
    second.right();
    expect(started().secondsLeft()).toBe(0);
    writeFileSync(join(folder, 'lock-tries.json'), '{"wrongTries":"many"}');
    expect(started().secondsLeft()).toBe(0);
  });
});
