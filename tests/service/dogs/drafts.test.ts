import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { openOwn } from '../support/desk.ts';
import { dogOf, seenWithPlan } from '../support/records.ts';

describe('the list of drafts', () => {
  test('tells what was begun of which dog by the key, and leaves out what is of none', async () => {
    const desk = await openOwn();
    const { id } = await dogOf(desk, 'Ada Sample', 'Bess');
    const { visit } = await seenWithPlan(desk, id, '2026-03-02');
    const keys = [
      `visit:${id}:new`,
      `visit:${id}:${visit.id}`,
      `dog:${id}`,
      `plan:${id}`,
      `session:${id}:2026-03-04`,
    ];
    const ofNone = ['settings', `session:${id}`, `plan:${randomUUID()}`, 'plan:', `${id}:plan`];
    for (const key of [...keys, ...ofNone]) await desk.ok('drafts/put', { key, json: '{}' });
    const drafts = await desk.ok('drafts/list', {});
    const told = new Map(drafts.map(({ key, what, visitId, day }) => [key, [what, visitId, day]]));
    expect([...told.keys()].sort()).toEqual([...keys].sort());
    expect(keys.map((key) => told.get(key))).toEqual([
      ['new visit', null, null],
      ['visit', visit.id, null],
      ['dog', null, null],
      ['plan', null, null],
      ['session', null, '2026-03-04'],
    ]);
    expect(drafts[0]).toMatchObject({ dogId: id, dogName: 'Bess', clientName: 'Ada Sample' });
  });
});
