import { describe, expect, test } from 'vitest';
import { blankClient, blankDog } from '../../../electron/contract/records/forms.ts';
import BetterSqlite3 from 'better-sqlite3';
import { join } from 'node:path';
import { openOwn } from '../support/desk.ts';

const PERSONAL = ['Zoltan Personal', 'Quirinella', '0555 123', 'z@owners.example', 'bitten once'];

async function personalDesk() {
  const desk = await openOwn();
  const [name, dog, phone, email, notes] = PERSONAL as [string, string, string, string, string];
  const saved = await desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name, phone, email, notes },
    dog: { ...blankDog('female'), name: dog, birthDay: '2021-05-01', notes },
  });
  return { desk, dogId: saved.id, client: { ...blankClient(), name, phone, email, notes } };
}

describe('what leaves the records for others to read', () => {
  test('is no personal data in a log line, when the program itself is at fault', async () => {
    const { desk, client } = await personalDesk();
    // A table that is gone stands for any fault inside: the statement's error carries its values.
    const other = new BetterSqlite3(join(desk.folder, 'trotwell.sqlite'));
    other.pragma('foreign_keys = OFF');
    other.exec('ALTER TABLE dog RENAME TO dog_away');
    other.exec(
      'CREATE TRIGGER fault BEFORE INSERT ON client BEGIN SELECT no_such_function(new.name); END',
    );
    other.close();
    const error = await desk.refused('clients/save', { id: null, client } as never);
    const list = await desk.refused('dogs/list', { query: PERSONAL[1] });
    expect([error.kind, list.kind]).toContain('internal');
    const told = [...desk.log, JSON.stringify(error), JSON.stringify(list)].join('\n');
    expect(desk.log.length).toBeGreaterThan(0);
    for (const word of PERSONAL) expect(told).not.toContain(word);
  });

  test('is versions, counts and sizes in the diagnostics, and no name', async () => {
    const { desk } = await personalDesk();
    const text = await desk.ok('app/diagnostics', {});
    expect(text).toMatch(/^Node \d+\.\d+\.\d+, SQLite 3\./m);
    expect(text).toMatch(/^Records: own, schema \d+$/m);
    expect(text).toMatch(/^Quick check: ok$/m);
    expect(text).toMatch(/^ {2}dog: 1$/m);
    for (const word of [...PERSONAL, desk.folder]) expect(text).not.toContain(word);
  });
});
