import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  blankClient,
  blankDog,
  blankPractice,
  blankVisit,
  blankPlanRequest,
} from '../../electron/contract/records/forms.ts';
import { HANDOUT_KINDS, type VisitFacts } from '../../electron/contract/records.ts';
import { someOf } from '../support/form.ts';
import { HOSTILE_NAMES, INVISIBLE_NAMES, LONG_NOTES } from '../support/hostileTexts.ts';
import { layoutProblems } from '../templates/support/layoutProblems.ts';
import { popplerPages } from '../templates/support/tools.ts';
import { openOwn, serviceOn, type TestDesk } from './support/desk.ts';

const blankFeeding = blankVisit('', '2026-03-02').feeding;
const SOUND = { leftFore: 0, rightFore: 0, leftHind: 0, rightHind: 0 };

/** Every field of a record that takes free text, filled with the same text. */
async function recordOf(desk: TestDesk, text: string, notes = text) {
  await desk.ok('practice/save', {
    ...blankPractice(),
    name: text,
    practitioner: text,
    address: text,
    phone: text,
    email: text,
    registration: text,
    footer: text,
  });
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: {
      ...blankClient(),
      name: text,
      phone: text,
      email: text,
      address: text,
      vetPractice: text,
      vetName: text,
      vetContact: text,
      notes,
    },
    dog: {
      ...blankDog('female'),
      name: text,
      breed: text,
      birthDay: '2021-05-01',
      adultWeightKg: 24,
      notes,
    },
  });
  const visit: VisitFacts = {
    ...blankVisit(dog.id, '2026-03-02'),
    weightKg: 24,
    bcs: 5,
    lamenessWalk: SOUND,
    lamenessTrot: SOUND,
    signsAsked: true,
    historyAsked: true,
    walkBase: 'passed',
    gaitNote: notes,
    diagnosis: notes,
    referral: notes,
    medicine: text,
    injuries: [{ kind: 'injury', structure: text, side: 'left', day: '2023-04-01', done: text }],
    lamenessClearances: [
      { vet: text, day: '2026-02-20', gait: 'trot', limb: 'leftHind', grade: 1, scope: text },
    ],
    questionnaires: [{ name: text, day: '2026-03-01', total: 12 }],
    disease: { joints: 'no', spine: 'no', heart: null, words: text },
    feeding: { ...blankFeeding, fedBy: text, extras: text },
    consent: { given: true, vet: text, day: '2026-02-20', scope: text, expiryDay: null },
    measurements: [{ kind: 'thigh girth', limb: 'leftHind', value: 33, note: text }],
    overrides: [{ code: 'no-such-rule', reason: text }],
    exercises: ['sit-to-stand'],
    diet: [
      {
        name: text,
        treat: false,
        kcalPer100g: 360,
        gramsPerDay: 300,
        gramsPerCup: null,
        fixedGrams: false,
        energyFrom: 'declared',
        label: null,
      },
    ],
    notes,
  };
  await desk.ok('visits/save', {
    id: null,
    visit,
    plan: { ...blankPlanRequest(visit.day, 'unconditioned'), goal: { continuousMinutes: 20 } },
    food: { decision: 'accepted', kcalPerDay: null, foodSwitch: null, note: notes },
  });
  return dog;
}

async function sheet(desk: TestDesk, kind: (typeof HANDOUT_KINDS)[number], dogId: string) {
  const pdf = await desk.ok('handouts/render', { kind, dogId, paper: null });
  const file = join(desk.folder, 'sheet.pdf');
  writeFileSync(file, Buffer.from(pdf.base64, 'base64'));
  return { pdf, pages: popplerPages(file) };
}

const LETTERS_ON_A_LABEL = 5;

// Every sheet is printed at one desk: its reader of fonts starts once.
let printing: TestDesk;
const printingFolder = mkdtempSync(join(tmpdir(), 'trotwell-hostile-'));
beforeAll(async () => {
  printing = serviceOn(printingFolder, '2026-03-02');
  await printing.ok('app/open', { which: 'own' });
});
afterAll(async () => {
  await printing.service.close();
  rmSync(printingFolder, { recursive: true });
});

/** Letters and digits only: paper breaks lines where it likes, and stands in for what it cannot draw. */
const letters = (text: string): string => text.normalize('NFC').replace(/[^A-Za-z0-9]/g, '');

/** In the short form each text is printed on a few kinds of sheet, in each run on others. */
const TEXTS = HOSTILE_NAMES.map((text, index) => ({
  ...text,
  sheets: someOf(HANDOUT_KINDS, 4, index),
}));

describe.each(TEXTS)('$what', ({ typed, kept = typed, sheets }) => {
  test('is kept as text, found again, and changes nothing else', async () => {
    const desk = await openOwn();
    await desk.ok('dogs/saveWithOwner', {
      client: { ...blankClient(), name: 'Kim' },
      dog: { ...blankDog('female'), name: 'Other', birthDay: '2021-05-01' },
    });
    const dog = await recordOf(desk, typed);
    const file = await desk.ok('dogs/file', { dogId: dog.id });
    expect(file.dog.name).toBe(kept);
    expect(file.client.name).toBe(kept);
    expect(file.visits[0]!.diet[0]!.name).toBe(kept);
    expect(file.visits[0]!.consent.scope).toBe(kept);
    const sent = JSON.stringify(file);
    expect(JSON.parse(sent)).toEqual(file);
    expect(sent).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u202a-\u202e\u2066-\u2069]/);
    const found = await desk.ok('dogs/list', { query: kept });
    expect(found.map(({ name }) => name)).toEqual([kept]);
    expect(await desk.ok('dogs/list', { query: '' })).toHaveLength(2);
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });

  test('is printed as text, inside the margins of the sheet', async () => {
    const desk = printing;
    const dog = await recordOf(desk, typed);
    for (const kind of sheets) {
      const { pdf, pages } = await sheet(desk, kind, dog.id);
      const text = pages.flatMap(({ boxes }) => boxes.map((box) => box.text)).join('');
      // A label has room for the beginning of a name.
      const most = kind === 'bowl-labels' ? LETTERS_ON_A_LABEL : Infinity;
      expect(letters(text), kind).toContain(letters(kept).slice(0, most));
      expect(layoutProblems(pages, { labels: kind === 'bowl-labels' }), kind).toEqual([]);
      expect(pdf.fileName).toMatch(/^[^/\\:*?"<>|\u0000-\u001f]+\.pdf$/);
      expect(pdf.fileName.length).toBeLessThanOrEqual(120);
      // No name becomes a link, a script or a file of the document.
      const raw = Buffer.from(pdf.base64, 'base64').toString('latin1');
      expect(raw).not.toMatch(/\/(URI|JavaScript|JS|Launch|EmbeddedFile|AcroForm)\b/);
    }
  });
});

test.each(INVISIBLE_NAMES)('%j is no name', async (typed) => {
  const desk = await openOwn();
  const error = await desk.refused('dogs/saveWithOwner', {
    client: { ...blankClient(), name: 'Kim' },
    dog: { ...blankDog('female'), name: typed, birthDay: '2021-05-01' },
  });
  expect(error.fields).toEqual([{ path: 'dog.name', message: 'Name of the dog is needed.' }]);
});

test('10 000 characters of notes are kept, and break no sheet', async () => {
  const desk = await openOwn();
  expect(LONG_NOTES).toHaveLength(10_000);
  const dog = await recordOf(desk, 'Bella', LONG_NOTES);
  const file = await desk.ok('dogs/file', { dogId: dog.id });
  expect(file.visits[0]!.notes).toBe(LONG_NOTES.trim());
  expect(file.dog.notes).toBe(LONG_NOTES.trim());
  for (const kind of someOf(HANDOUT_KINDS, 2)) {
    const { pages } = await sheet(desk, kind, dog.id);
    expect(layoutProblems(pages, { labels: kind === 'bowl-labels' }), kind).toEqual([]);
  }
});
