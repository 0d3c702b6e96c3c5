import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { addDays, weekday } from '../../../core/day.ts';
import type { BackupLine } from '../../../electron/contract/calls/backup.ts';
import { dispensable } from '../../../electron/service/backup/keeping.ts';
import { readBackupName, stampOf } from '../../../electron/service/backup/names.ts';
import { holds } from '../../support/laws.ts';

const backup = (
  day: string,
  time = '12:00',
  reason: BackupLine['reason'] = 'automatic',
): BackupLine => {
  const madeAt = new Date(`${day}T${time}:00`).toISOString();
  return { name: `${reason}-${stampOf(madeAt)}.sqlite`, madeAt, reason, bytes: 1 };
};

/** One a day, newest first, ending on a Wednesday. */
const LAST = '2026-03-04';
const days = (count: number): BackupLine[] =>
  Array.from({ length: count }, (_, index) => backup(addDays(LAST, -index)));

function staying(all: readonly BackupLine[], daily: number, weekly: number): string[] {
  const going = new Set(dispensable(all, { daily, weekly }));
  return all.filter((each) => !going.has(each)).map(({ madeAt }) => madeAt.slice(0, 10));
}

describe('old backups', () => {
  test('stay for so many days, and the newest of so many weeks', () => {
    const stay = staying(days(40), 3, 4);
    expect(stay.slice(0, 3)).toEqual(['2026-03-04', '2026-03-03', '2026-03-02']);
    // The week of 2 March is held by its Wednesday; the three before by their Sundays.
    expect(stay.slice(3)).toEqual(['2026-03-01', '2026-02-22', '2026-02-15']);
    expect(stay.slice(3).map((day) => weekday(day))).toEqual(Array(3).fill(weekday('2026-03-01')));
  });

  test('of one day give way to its newest', () => {
    const all = [backup(LAST, '18:00'), backup(LAST, '12:00'), backup(LAST, '09:00')];
    expect(dispensable(all, { daily: 5, weekly: 5 })).toEqual(all.slice(1));
  });

  test('made before a change are counted apart', () => {
    const before = days(8).map(({ madeAt }) =>
      backup(madeAt.slice(0, 10), '08:00', 'before-restore'),
    );
    const all = [...days(2), ...before];
    expect(dispensable(all, { daily: 1, weekly: 0 })).toEqual([all[1], ...before.slice(5)]);
  });

  test('never all go, whatever is chosen and whenever they were made', () => {
    const someDay = fc.integer({ min: 0, max: 3000 }).map((back) => backup(addDays(LAST, -back)));
    holds(
      fc.property(
        fc.array(someDay, { minLength: 1, maxLength: 60 }),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 104 }),
        (some, daily, weekly) => {
          const all = some.sort((a, b) => (a.madeAt < b.madeAt ? 1 : -1));
          const going = dispensable(all, { daily, weekly });
          expect(going).not.toContain(all[0]);
          expect(all.length - going.length).toBeLessThanOrEqual(daily + weekly);
        },
      ),
      { seed: 5, numRuns: 200 },
    );
  });
});

describe('the names of backups', () => {
  test('say why and when', () => {
    const madeAt = '2026-03-02T12:34:56.789Z';
    const stamp = stampOf(madeAt);
    expect(readBackupName(`automatic-${stamp}.sqlite`)).toEqual({
      reason: 'automatic',
      madeAt,
      number: 0,
    });
    expect(readBackupName(`automatic-${stamp}_2.sqlite`)).toEqual({
      reason: 'automatic',
      madeAt,
      number: 0,
    });
    expect(readBackupName(`automatic-${stamp}-n17.sqlite`)?.number).toBe(17);
    expect(readBackupName(`before-schema-12-${stamp}.sqlite`)?.reason).toBe('before-schema');
    expect(readBackupName(`before-restore-${stamp}.sqlite`)?.reason).toBe('before-restore');
  });

  test.each([
    '../trotwell.sqlite',
    'automatic-2026-03-02T12-34-56-789Z.sqlite.part',
    'automatic-2026-13-02T12-34-56-789Z.sqlite',
    'automatic-../2026-03-02T12-34-56-789Z.sqlite',
    'trotwell.sqlite',
    '',
  ])('let no other file pass: %s', (name) => {
    expect(readBackupName(name)).toBeNull();
  });
});
