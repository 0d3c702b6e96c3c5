import { execFileSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankPractice,
  blankVisit,
} from '../../../electron/contract/records/forms.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';

const MAREN = { name: 'Maren Vale', initials: 'MV', active: true };
const TOBY = { name: 'Toby Reed', initials: 'TR', active: true };

const save = (desk: TestDesk, practitioner: typeof MAREN, id: string | null = null) =>
  desk.ok('practitioners/save', { id, practitioner });

async function two(desk: TestDesk) {
  await save(desk, MAREN);
  const { practitioners } = await save(desk, TOBY);
  const idOf = (initials: string) => practitioners.find((one) => one.initials === initials)!.id;
  return { maren: idOf('MV'), toby: idOf('TR') };
}

async function newDog(desk: TestDesk) {
  return desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Dana Owner' },
    dog: { ...blankDog('female'), name: 'Rusk', birthDay: '2021-05-01' },
  });
}

describe('who is at the desk', () => {
  test('nobody where none is set up, and entries stay without initials', async () => {
    const desk = await openOwn();
    expect(await desk.ok('practitioners/list', {})).toEqual({ practitioners: [], atDesk: null });
    const dog = await newDog(desk);
    const visit = blankVisit(dog.id, '2026-03-02');
    const saved = await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
    expect(saved.visit.author).toBe('');
  });

  test('the only one, without being chosen; with two it stays who it was', async () => {
    const desk = await openOwn();
    const first = await save(desk, MAREN);
    expect(first.atDesk).toBe(first.practitioners[0]!.id);
    expect((await save(desk, TOBY)).atDesk).toBe(first.atDesk);
  });

  test('goes to the one who is left when the other leaves, and cannot be someone who left', async () => {
    const desk = await openOwn();
    const { maren, toby } = await two(desk);
    expect((await save(desk, { ...MAREN, active: false }, maren)).atDesk).toBe(toby);
    const error = await desk.refused('practitioners/atDesk', { practitionerId: maren });
    expect(error.message).toBe('Maren Vale no longer works here.');
    expect((await save(desk, { ...TOBY, active: false }, toby)).atDesk).toBeNull();
  });

  test('signs every entry, and an amendment with its own initials', async () => {
    const desk = await openOwn();
    const { maren, toby } = await two(desk);
    const dog = await newDog(desk);
    await desk.ok('practitioners/atDesk', { practitionerId: maren });
    const facts = { ...blankVisit(dog.id, '2026-03-02'), weightKg: 24 };
    const { visit } = await desk.ok('visits/save', {
      id: null,
      visit: facts,
      plan: blankPlanRequest('2026-03-04', 'conditioned'),
      food: null,
    });
    await desk.ok('practitioners/atDesk', { practitionerId: toby });
    await desk.ok('visits/save', {
      id: visit.id,
      basedOn: visit.revision,
      reason: 'Read off wrongly.',
      visit: { ...facts, weightKg: 25 },
      plan: null,
      food: { decision: 'edited', kcalPerDay: 700, foodSwitch: null, note: '' },
    });
    await desk.ok('sessions/save', {
      dogId: dog.id,
      session: {
        day: '2026-03-01',
        outcome: 'done',
        runMinutes: null,
        longestRunMinutes: null,
        runKm: null,
        climbedM: null,
        nextDay: null,
        signs: [],
        note: '',
      },
    });
    const file = await desk.ok('dogs/file', { dogId: dog.id });
    expect(file.visits[0]).toMatchObject({ author: 'MV', weightKg: 25 });
    expect(file.plans[0]!.author).toBe('MV');
    expect(file.foodDecisions.at(-1)!.author).toBe('TR');
    expect(file.sessions[0]!.author).toBe('TR');
    const [entry] = await desk.ok('history/list', { kind: 'visit', recordId: visit.id });
    expect(entry!.author).toBe('TR');
    const late = await desk.refused('visits/save', {
      id: visit.id,
      basedOn: 1,
      reason: 'Late.',
      visit: facts,
      plan: null,
      food: null,
    });
    expect(late.message).toMatch(/was changed by TR after you opened it/);
  });
});

describe('initials', () => {
  test.each(['', ' ', 'ABCDE', 'A1', 'A B', 'A.', 7])('"%s" are refused', async (initials) => {
    const desk = await openOwn();
    const error = await desk.refused('practitioners/save', {
      id: null,
      practitioner: { ...MAREN, initials },
    });
    expect(error.fields).toEqual([
      { path: 'practitioner.initials', message: 'Initials must be 1 to 4 letters.' },
    ]);
  });

  test.each(['M', 'ÉÖ', 'abcd'])('"%s" are taken', async (initials) => {
    const desk = await openOwn();
    expect((await save(desk, { ...MAREN, initials })).practitioners[0]!.initials).toBe(initials);
  });

  test('are unique, whatever their case and whether their owner still works here', async () => {
    const desk = await openOwn();
    const { maren } = await two(desk);
    await save(desk, { ...MAREN, active: false }, maren);
    const error = await desk.refused('practitioners/save', {
      id: null,
      practitioner: { ...TOBY, name: 'Mo Venn', initials: 'mv' },
    });
    expect(error.message).toBe('Initials must be unique: MV is Maren Vale.');
  });

  test('can be put right until they stand on an entry', async () => {
    const desk = await openOwn();
    const { maren } = await two(desk);
    await save(desk, { ...MAREN, initials: 'MVA' }, maren);
    const dog = await newDog(desk);
    const visit = blankVisit(dog.id, '2026-03-02');
    await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
    const error = await desk.refused('practitioners/save', { id: maren, practitioner: MAREN });
    expect(error.message).toMatch(/MVA already stands on entries/);
    const renamed = { ...MAREN, name: 'Maren Vale-Hart', initials: 'MVA' };
    expect((await save(desk, renamed, maren)).practitioners[0]!.name).toBe('Maren Vale-Hart');
  });
});

test('a sheet is signed by who wrote the visit, and tells what was amended', async () => {
  const desk = await openOwn();
  await desk.ok('practice/save', {
    ...blankPractice(),
    name: 'Mill Brook Canine Fitness',
    practitioner: 'The Practice Head',
  });
  const dog = await newDog(desk);
  const text = async () => {
    const pdf = await desk.ok('handouts/render', {
      kind: 'assessment-record',
      dogId: dog.id,
      paper: null,
    });
    const input = Buffer.from(pdf.base64, 'base64');
    return execFileSync('pdftotext', ['-layout', '-', '-'], { input, encoding: 'utf8' });
  };
  const facts = { ...blankVisit(dog.id, '2026-03-01'), weightKg: 24 };
  await desk.ok('visits/save', { id: null, visit: facts, plan: null, food: null });
  const before = await text();
  expect(before).toContain('The Practice Head');
  expect(before).not.toContain('Amendments');

  const { maren, toby } = await two(desk);
  await desk.ok('practitioners/atDesk', { practitionerId: toby });
  const { visit } = await desk.ok('visits/save', {
    id: null,
    visit: { ...facts, kind: 'follow-up', day: '2026-03-02' },
    plan: null,
    food: null,
  });
  await desk.ok('practitioners/atDesk', { practitionerId: maren });
  await desk.ok('visits/save', {
    id: visit.id,
    basedOn: 1,
    reason: 'Scale read off wrongly.',
    visit: { ...facts, kind: 'follow-up', day: '2026-03-02', weightKg: 23.5 },
    plan: null,
    food: null,
  });
  const after = await text();
  expect(after).toContain('Toby Reed');
  expect(after).not.toContain('The Practice Head');
  expect(after).toContain('Amended on 2026-03-02 by Maren Vale: Scale read off wrongly.');
});
