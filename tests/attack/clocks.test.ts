import { randomUUID } from 'node:crypto';
import { afterEach, expect, test } from 'vitest';
import { blankClient } from '../../electron/contract/records/forms.ts';
import { createService } from '../../electron/service/service.ts';
import { FONTS, temporaryFolder } from '../service/support/desk.ts';
import { chance } from './support/chance.ts';
import { long } from '../support/form.ts';

// A clock that is set forth and back by minutes to years, and a computer that travels: the zones lie
// up to 26 hours apart and change between winter and summer on different days.

const STEPS = long ? 400 : 40;
const ZONES = ['UTC', 'Pacific/Kiritimati', 'Pacific/Niue', 'Europe/Zurich', 'Australia/Lord_Howe'];
const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;
const LEAPS = [MINUTE, -MINUTE, DAY, -DAY, 40 * DAY, -40 * DAY, 2000 * DAY, -2000 * DAY];

const zone = process.env['TZ'];
afterEach(() => {
  if (zone === undefined) delete process.env['TZ'];
  else process.env['TZ'] = zone;
});

test(`the clock set and the zone changed ${STEPS} times: all is kept, the newest backup has it`, async () => {
  const folder = temporaryFolder();
  const random = chance(33);
  let now = Date.parse('2026-03-28T23:30:00Z');
  const log: string[] = [];
  const opened = () =>
    createService({
      folder,
      fontsFolder: FONTS,
      version: '0.0.0-test',
      clock: () => new Date(now),
      log: (line) => log.push(line),
    });
  let service = opened();
  await service.call('app/open', { which: 'own' });
  for (let step = 1; step <= STEPS; step++) {
    process.env['TZ'] = ZONES[Math.floor(random() * ZONES.length)];
    // The range of days the records know.
    const next = now + LEAPS[Math.floor(random() * LEAPS.length)]!;
    now = Math.min(Math.max(next, Date.parse('2000-01-01')), Date.parse('2090-01-01'));
    const client = { ...blankClient(), name: `Owner ${step}` };
    expect(await service.call('clients/save', { id: null, client })).toMatchObject({ ok: true });
    if (random() < 0.5) {
      await service.close();
      service = opened();
      const status = await service.call('backup/status', {});
      const { kept, failure } = status.ok ? status.value : expect.fail(status.error.message);
      expect(failure).toBeNull();
      const source = { name: kept[0]!.name };
      const look = { source, passphrase: null, workId: randomUUID() };
      expect(await service.call('backup/look', look)).toMatchObject({
        value: { summary: { owners: step }, present: { owners: step } },
      });
    }
  }
  await service.close();
  expect(log).toEqual([]);
}, 300_000);
