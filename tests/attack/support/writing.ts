import { randomUUID } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { expect } from 'vitest';
import { blankClient, blankDog, blankPractice } from '../../../electron/contract/records/forms.ts';
import type { CallName, InputOf } from '../../../electron/contract/contract.ts';
import { clientFactsOf, dogFactsOf } from '../../../electron/contract/records/facts.ts';
import type { Client, Dog } from '../../../electron/contract/records.ts';
import type { WeightMapping } from '../../../electron/contract/exchange/weightImport.ts';
import { SMALL_PDF } from '../../support/pictures.ts';
import { openOwn, type TestDesk } from '../../service/support/desk.ts';
import {
  fullRecord,
  SESSION,
  WEIGHING,
  type FullRecord,
} from '../../service/exchange/support/fullRecord.ts';
import { soundVisit } from '../../service/support/records.ts';

/** Calls that change nothing, or nothing that the answer depends on: what goes home goes without a note. */
export const READING = [
  'app/status',
  'app/diagnostics',
  'practice/year',
  'clients/list',
  'dogs/list',
  'dogs/find',
  'dogs/offCourse',
  'dogs/ofOwner',
  'dogs/due',
  'dogs/file',
  'dogs/deeds',
  'runs/read',
  'runs/leave',
  'runs/table',
  'history/list',
  'history/ofDog',
  'practitioners/list',
  'bin/check',
  'bin/list',
  'keeping/get',
  'clients/eraseCheck',
  'erasures/list',
  'drafts/list',
  'drafts/get',
  'handouts/render',
  'handouts/bundle',
  'handouts/warmUp',
  'goesHome/calendar',
  'goesHome/mail',
  'attachments/list',
  'attachments/look',
  'attachments/show',
  'waiting/list',
  'import/readCsv',
  'import/preview',
  'import/bundleLook',
  'backup/status',
  'backup/look',
  // Its note of wrong tries must not keep the practitioner out.
  'lock/open',
  'lock/now',
  'lock/awake',
  'work/state',
  'work/cancel',
] as const satisfies readonly CallName[];

/** The compiler names a call that is neither read nor given an input below. */
type Writing = Exclude<CallName, (typeof READING)[number]>;

/** What stands in the records to be written over. */
export interface Facts extends FullRecord {
  readonly client: Client;
  readonly dog: Dog;
  readonly planDay: string;
  readonly foodId: string;
  readonly phraseId: string;
  readonly waitingHash: string;
  readonly backup: string;
}

/** What came in while there was room. */
export interface Arrived {
  readonly letters: readonly [string, string];
  readonly run: string;
  readonly table: { readonly token: string; readonly digest: string };
  readonly bundle: { readonly token: string; readonly digest: string };
  /** Of an import that can still be taken back. */
  readonly undoKey: string;
}

const RUN = `<?xml version="1.0"?><gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>${Array.from(
  { length: 600 },
  (_, at) => {
    const time = new Date(Date.parse('2026-02-26T07:00:00Z') + at * 2000).toISOString();
    return `<trkpt lat="${50 + at * 4e-5}" lon="8"><time>${time}</time></trkpt>`;
  },
).join('')}</trkseg></trk></gpx>`;

const mappingFor = (dogId: string): WeightMapping => ({
  separator: ',',
  headed: true,
  dog: { by: 'choice', dogId },
  dayColumn: 0,
  weightColumn: 1,
  dayFormat: 'YYYY-MM-DD',
  unit: 'kg',
  decimalSign: '.',
  weighingMethod: 'same scale',
  scaleStepKg: 0.1,
});

async function takenIn(desk: TestDesk, name: string, bytes: Buffer): Promise<string> {
  const taken = await desk.service.takeIn(name, Readable.from([bytes]), 1e8);
  return taken.ok ? taken.value.token : expect.fail(taken.error.message);
}

/** Puts into the own practice something that every writing call can write over, and closes it. */
export async function prepare(desk: TestDesk): Promise<Facts> {
  await desk.ok('app/open', { which: 'own' });
  const record = await fullRecord(desk, 'Odette Fenn', 'Bramble');
  const { id: dogId } = record.dog;
  const { client: met } = await desk.ok('dogs/file', { dogId });
  const client = await desk.ok('clients/save', {
    id: met.id,
    basedOn: met.revision,
    client: { ...clientFactsOf(met), keepRecordings: true },
  });
  // The first one is at the desk at once.
  await desk.ok('practitioners/save', {
    id: null,
    practitioner: { name: 'Wren Sample', initials: 'WS', active: true },
  });
  const food = { name: 'Dry food of the shelf', kind: 'food', kcalPer100g: 360 } as const;
  const { foods } = await desk.ok('shelf/keepFood', { id: null, food });
  const { phrases } = await desk.ok('shelf/keepPhrase', { id: null, text: 'Walks well.' });
  const [waiting] = await desk.ok('waiting/add', {
    ...{ dogId, token: await takenIn(desk, 'first.pdf', SMALL_PDF), kind: 'other' },
    ...{ name: 'first.pdf', thumbnail: null },
  });
  await desk.ok('drafts/put', { key: 'visit:begun', json: '"begun"' });
  const { plans } = await desk.ok('dogs/file', { dogId });
  await desk.service.close();
  const [backup] = readdirSync(join(desk.folder, 'backups')).filter((name) => /sqlite$/.test(name));
  return {
    ...record,
    client,
    planDay: plans[0]!.ramp.weeks.at(-1)!.sessions.at(-1)!.day,
    foodId: foods[0]!.id,
    phraseId: phrases[0]!.id,
    waitingHash: waiting!.hash,
    backup: backup!,
  };
}

/** A bundle of an owner of another practice. */
export async function strangersBundle(): Promise<Buffer> {
  const other = await openOwn();
  await fullRecord(other, 'Nora Elsewhere', 'Juniper');
  const { token } = await other.ok('export/make', { clientId: null, workId: randomUUID() });
  const given = other.service.giveOut(token);
  return readFileSync(given.ok ? given.value.file : expect.fail(given.error.message));
}

export async function arrive(desk: TestDesk, facts: Facts, bundle: Buffer): Promise<Arrived> {
  const letter = (word: string): Promise<string> =>
    takenIn(desk, `${word}.pdf`, Buffer.concat([SMALL_PDF, Buffer.from(`%${word}\n`)]));
  const mapping = mappingFor(facts.dog.id);
  const tableOf = async (day: string) => {
    const table = Buffer.from(`date,kg\n${day},23.9\n`);
    const token = await takenIn(desk, 'weights.csv', table);
    return { token, digest: (await desk.ok('import/preview', { token, mapping })).digest };
  };
  const run = { ...(await tableOf('2026-02-18')), mapping, workId: randomUUID() };
  const { undoKey } = await desk.ok('import/run', run);
  const came = await takenIn(desk, 'bundle.zip', bundle);
  const look = { token: came, workId: randomUUID() };
  return {
    letters: [await letter('second'), await letter('third')],
    run: await takenIn(desk, 'run.gpx', Buffer.from(RUN)),
    table: await tableOf('2026-02-22'),
    undoKey: undoKey!,
    bundle: { token: came, digest: (await desk.ok('import/bundleLook', look)).digest },
  };
}

/** An input of every writing call that a disk with room would take; those of files only with them. */
export function writingInputs(
  facts: Facts,
  arrived: Arrived | null,
): { readonly [K in Writing]: InputOf<K> | null } {
  const { client, dog, visit } = facts;
  const [dogId, workId, reason] = [dog.id, randomUUID(), 'It was read again.'];
  const { clientId: _clientId, ...dogFacts } = dogFactsOf(dog);
  const changedClient = { ...clientFactsOf(client), notes: 'Rings in the evening.' };
  const other = { kind: 'other', name: 'other.pdf', thumbnail: null } as const;
  const removing = { ground: 'asked by the owner', insideRetentionConfirmed: true } as const;
  return {
    'practice/save': { ...blankPractice(), name: 'Another name' },
    'practice/setLogo': { base64: LOGO },
    'clients/save': { id: null, client: { ...blankClient(), name: 'Eve Sample' } },
    'dogs/save': {
      id: null,
      dog: { ...blankDog('female'), clientId: client.id, name: 'Moss', birthDay: '2022-04-01' },
    },
    'dogs/saveWithOwner': {
      client: { ...blankClient(), name: 'Ida Sample' },
      dog: { ...blankDog('female'), name: 'Sorrel', birthDay: '2022-04-01' },
    },
    'dogs/amendWithOwner': {
      ...{ id: dogId, reason, dog: { ...dogFacts, name: 'Bramble the Elder' } },
      ...{ dogBasedOn: dog.revision, client: changedClient, clientBasedOn: client.revision },
    },
    'visits/save': {
      ...{ id: null, visit: soundVisit(dogId, '2026-03-02') },
      ...{ plan: null, food: null },
    },
    'weighings/save': { dogId, weighing: { ...WEIGHING, day: '2026-02-26' } },
    'weighings/amend': {
      ...{ id: facts.weighingId, basedOn: 1, reason },
      weighing: { ...WEIGHING, weightKg: 23.7 },
    },
    'weighings/drop': { id: facts.weighingId },
    'weighings/restore': { id: facts.droppedId },
    'sessions/save': { dogId, session: { ...SESSION, day: '2026-02-26' } },
    'sessions/drop': { dogId, day: SESSION.day },
    'runs/keep': arrived && { dogId, token: arrived.run },
    'practitioners/save': {
      id: null,
      practitioner: { name: 'Finn Sample', initials: 'FS', active: true },
    },
    'practitioners/atDesk': { practitionerId: null },
    'shelf/keepFood': { id: null, food: { name: 'Treat', kind: 'treat', kcalPer100g: 300 } },
    'shelf/dropFood': { id: facts.foodId },
    'shelf/keepPhrase': { id: null, text: 'Trots well.' },
    'shelf/dropPhrase': { id: facts.phraseId },
    'bin/put': { kind: 'visit', id: visit.id, reason },
    'bin/restore': { kind: 'visit', id: facts.binnedVisitId },
    'bin/empty': { entries: [{ kind: 'visit', id: facts.binnedVisitId }], ...removing },
    'dogs/archive': { id: dogId, archived: true },
    'keeping/set': { retentionYears: 9 },
    'clients/erase': { clientId: client.id, confirmName: client.name, ...removing },
    'erasures/finish': {},
    'plans/review': { dogId, visitId: null, clearedByVetOn: null, note: '' },
    'plans/edit': { dogId, edits: [{ kind: 'remove', day: facts.planDay }], kept: [], note: '' },
    'rules/set': { ruleId: 'smallStepMinutes', value: 1, reason },
    'drafts/put': { key: 'intake:new', json: '"begun"' },
    'drafts/drop': { key: 'visit:begun' },
    'handouts/batch': { dogIds: [dogId], kinds: ['running-plan'], paper: null, workId },
    'attachments/add': arrived && { visitId: visit.id, token: arrived.letters[0], ...other },
    'attachments/open': { id: facts.fileIds[0]! },
    'waiting/add': arrived && { dogId, token: arrived.letters[1], ...other },
    'waiting/leaveOut': { dogId, hash: facts.waitingHash, leftOut: true },
    'export/make': { clientId: null, workId },
    'import/run': arrived && { ...arrived.table, mapping: mappingFor(dogId), workId },
    'import/undo': arrived && { undoKey: arrived.undoKey },
    'import/bundleRun': arrived && {
      ...{ ...arrived.bundle, different: 'theirs', erased: 'leave out', workId },
    },
    'backup/make': { passphrase: null, workId },
    'backup/restore': { source: { name: facts.backup }, passphrase: null, workId },
    'backup/settings': { dailyBackups: 3, weeklyBackups: 2 },
    'lock/set': { passphrase: 'eleven geese on a gate', present: null, idleMinutes: 5 },
    // It leaves the own practice, and so comes last.
    'app/open': { which: 'demo' },
  };
}

const LOGO =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';
