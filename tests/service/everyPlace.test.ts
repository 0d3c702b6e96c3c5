import { expect, test } from 'vitest';
import {
  blankClient,
  blankDog,
  blankPlanRequest,
  blankPractice,
} from '../../electron/contract/records/forms.ts';
import type { FieldChange } from '../../electron/contract/history/change.ts';
import type { HandoutKind, VisitFacts } from '../../electron/contract/records.ts';
import { DOG } from '../../electron/contract/records/dog.ts';
import {
  entriesOf,
  type FieldKind,
  type Fields,
  type ValuesOf,
} from '../../electron/contract/records/fieldKinds.ts';
import { VISIT } from '../../electron/contract/records/visit.ts';
import { timelineEntries } from '../../renderer/dogs/timeline/entries.ts';
import { DEFAULT_CHOICES, shownWith } from '../../renderer/units/shown.ts';
import { readPdf } from '../templates/support/readPdf.ts';
import { openOwn, type TestDesk } from './support/desk.ts';
import { exported, recordsOf } from './exchange/support/bundle.ts';
import { soundVisit } from './support/records.ts';

// What an assessment is told, in every place where somebody looks for it: the fields that came with
// that release, taken from the declaration, times the places. A new field stands in the table by itself.

const DAY = '2026-03-02';
const OWN_RUNNING = 25;

/** Tells whether somebody asked, which the sheets say in a sentence of their own where nobody did. */
const ONLY_ASKED: ReadonlySet<string> = new Set(['signsAsked', 'historyAsked']);

/** What stands in the lists, which the declaration does not know. */
const LISTS: Partial<VisitFacts> = {
  injuries: [
    { kind: 'surgery', structure: 'cruciate', side: 'left', day: '2023-04-01', done: 'plated' },
  ],
  lamenessClearances: [
    { vet: 'Dr Fenn', day: '2026-02-27', gait: 'trot', limb: 'leftHind', grade: 1, scope: 'hills' },
  ],
  palpation: { ...soundVisit('', DAY).palpation, neck: 0, 'left hind': 1 },
  questionnaires: [{ name: 'LOAD', day: '2026-03-01', total: 12 }],
  exercises: ['paw-lifts'],
};

/** What each list says, in any order and around any other words. */
const SAID: Readonly<Record<string, readonly string[]>> = {
  injuries: ['surgery, cruciate', 'left', '2023-04-01', 'plated'],
  lamenessClearances: ['at trot, left hind', 'Dr Fenn', '2026-02-27', 'hills'],
  palpation: ['pain on palpation', 'neck 0', 'left hind 1'],
  questionnaires: ['questionnaire LOAD', 'total 12', '2026-03-01'],
  exercises: ['paw lifts'],
};

/** A chip number of a country, twelve digits after it. */
const CHIP = '276098101234567';

/** An answer to a question, the calmest where there is a list of words. */
function answered(name: string, field: FieldKind): unknown {
  switch (field.kind) {
    case 'group':
      return Object.fromEntries(entriesOf(field.of).map(([of, each]) => [of, answered(of, each)]));
    case 'json':
    case 'tables':
      return LISTS[name as keyof VisitFacts];
    case 'word':
      return field.words[0];
    case 'day':
      return `2024-07-0${name.length}`;
    case 'flag':
      return true;
    case 'text':
      return field.as === 'chip' ? CHIP : `told of ${name}`;
    default:
      throw new Error(`${name}: no answer to a ${field.kind} is known here`);
  }
}

/** The words that have to be found wherever the field is told. */
function wordsOf(name: string, field: FieldKind, value: unknown): readonly string[] {
  if (field.kind === 'json' || field.kind === 'tables') return SAID[name]!;
  if (field.kind === 'group') {
    return entriesOf(field.of).flatMap(([of, each]) =>
      wordsOf(of, each, (value as Record<string, unknown>)[of]),
    );
  }
  // Its label may run over two lines of paper; the day is that of no other field.
  if (field.kind === 'day') return [String(value)];
  if (name === 'had') return ['earlier heat illness no'];
  return [`${field.label} ${value === true ? 'yes' : String(value)}`];
}

/** Small letters, a blank for whatever stands between a label and its value. */
const plain = (text: string): string => text.toLowerCase().replaceAll(/[\s:|]+/g, ' ');

const newOf = (fields: Fields) =>
  entriesOf(fields).filter(([name, { since }]) => since === 4 && !ONLY_ASKED.has(name));

function filled<const F extends Fields>(fields: F): Partial<ValuesOf<F>> {
  return Object.fromEntries(
    newOf(fields).map(([name, field]) => [name, answered(name, field)]),
  ) as Partial<ValuesOf<F>>;
}

const TOLD = filled(VISIT);
const ROWS = [
  ...newOf(VISIT).map(([name, field]) => ({
    name,
    words: wordsOf(name, field, TOLD[name as keyof typeof TOLD]),
  })),
  ...newOf(DOG).map(([name]) => ({ name, words: [`chip number ${CHIP}`] })),
];

/** A dog kept without an answer and then told everything, so that its history has all of it too. */
async function toldAll(desk: TestDesk): Promise<{ dogId: string; visitId: string }> {
  const bare = { ...blankDog('female'), name: 'Bess', birthDay: '2021-05-01', adultWeightKg: 22 };
  const client = { ...blankClient(), name: 'Ada Sample' };
  const dog = await desk.ok('dogs/saveWithOwner', { client, dog: bare });
  const { clientId, id: dogId } = dog;
  await desk.ok('dogs/save', {
    id: dogId,
    basedOn: 1,
    dog: { ...bare, ...filled(DOG), clientId },
  });
  const visit = soundVisit(dogId, DAY);
  const first = await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
  const visitId = first.visit.id;
  await desk.ok('visits/save', {
    id: visitId,
    basedOn: 1,
    reason: 'Told later.',
    visit: { ...visit, ...TOLD },
    plan: {
      ...blankPlanRequest(DAY, 'unconditioned' as const),
      goal: { continuousMinutes: 20 },
      ownerMinutes: OWN_RUNNING,
    },
    food: null,
  });
  return { dogId, visitId };
}

async function sheet(desk: TestDesk, kind: HandoutKind, dogId: string): Promise<string> {
  const { base64 } = await desk.ok('handouts/render', { kind, dogId, paper: null });
  return (await readPdf(Buffer.from(base64, 'base64'))).text;
}

/** All that the history says of the dog and its visit. */
async function history(desk: TestDesk, dogId: string, visitId: string): Promise<string> {
  const of = [
    ...(await desk.ok('history/list', { kind: 'dog', recordId: dogId })),
    ...(await desk.ok('history/list', { kind: 'visit', recordId: visitId })),
  ];
  const said = ({ label, after }: FieldChange) => `${label} ${after === true ? 'yes' : after}`;
  return of.flatMap(({ changes }) => changes.map(said)).join('\n');
}

async function timeline(desk: TestDesk, dogId: string): Promise<string> {
  const file = await desk.ok('dogs/file', { dogId });
  const deeds = await desk.ok('dogs/deeds', { dogId });
  const entries = timelineEntries({ file, files: [], deeds }, shownWith(DEFAULT_CHOICES));
  return entries.flatMap(({ title, lines }) => [title, ...lines]).join('\n');
}

test('each field of an assessment stands in every place where it is looked for', async () => {
  const desk = await openOwn(undefined, DAY);
  await desk.ok('practice/save', { ...blankPractice(), name: 'Practice of the test' });
  const { dogId, visitId } = await toldAll(desk);

  // Records and bundle, to the letter.
  const file = await desk.ok('dogs/file', { dogId });
  const kept = recordsOf(await exported(desk));
  for (const visit of [file.visits[0], kept.visits[0]]) expect(visit).toMatchObject(TOLD);
  for (const dog of [file.dog, kept.dogs[0]]) expect(dog).toMatchObject(filled(DOG));
  for (const plan of [file.plans[0], kept.plans[0]]) {
    expect(plan!.ramp.request.ownerMinutes).toBe(OWN_RUNNING);
  }

  const running = `the owner runs ${OWN_RUNNING} min without a break`;
  const places: Readonly<Record<string, string>> = {
    history: await history(desk, dogId, visitId),
    'vet letter': await sheet(desk, 'vet-letter', dogId),
    'assessment record': await sheet(desk, 'assessment-record', dogId),
    timeline: await timeline(desk, dogId),
  };
  const holes = Object.entries(places).flatMap(([place, text]) => {
    const here = plain(text);
    // A plan has versions in place of a history.
    const rows = place === 'history' ? ROWS : [...ROWS, { name: 'own running', words: [running] }];
    return rows.flatMap(({ name, words }) =>
      words
        .filter((word) => !here.includes(plain(word)))
        .map((word) => `${place}, ${name}: ${word}`),
    );
  });
  expect(holes).toEqual([]);
  expect(ROWS.length).toBeGreaterThan(15);
});
