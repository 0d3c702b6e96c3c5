import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { blankClient, blankDog, blankPractice } from '../../../electron/contract/records/forms.ts';
import { contentFile } from '../../../electron/service/backup/contents.ts';
import { backedUpContents, presentContents } from '../../../electron/service/backup/folder.ts';
import { openOwn, testService, type TestDesk } from '../support/desk.ts';
import { seenWithPlan, soundVisit } from '../support/records.ts';

const TODAY = '2026-03-02';
const GROUND = 'asked by the owner' as const;

/** Strings found nowhere else, so that one byte of them left behind is found. */
const marks = (who: string) => ({
  owner: `${who} Quillfeather`,
  phone: `${who} 0170 5550`,
  email: `${who.toLowerCase()}@owner.example`,
  address: `${who} Heronry Lane`,
  ownerNotes: `${who} pays at the gate`,
  dog: `${who} Brindlewick`,
  dogNotes: `${who} fears umbrellas`,
  visitNotes: `${who} shortened on the left`,
  amended: `${who} second thoughts`,
  draft: `${who} half typed`,
  sessionNote: `${who} ran in the rain`,
  weighingNote: `${who} at the feed shop`,
  fileName: `${who} letter`,
  content: `${who} says the x-ray is clean`,
});

interface Seeded {
  readonly marks: ReturnType<typeof marks>;
  readonly clientId: string;
  readonly dogId: string;
}

/** An owner with something in every table that can hold personal data. */
async function seedOwner(desk: TestDesk, who: string): Promise<Seeded> {
  const mark = marks(who);
  const dog = await desk.ok('dogs/saveWithOwner', {
    client: {
      ...blankClient(),
      name: mark.owner,
      phone: mark.phone,
      email: mark.email,
      address: mark.address,
      notes: mark.ownerNotes,
    },
    dog: { ...blankDog('female'), name: mark.dog, birthDay: '2021-05-01', notes: mark.dogNotes },
  });
  const { visit } = await seenWithPlan(desk, dog.id, '2026-02-02');
  await desk.ok('visits/save', {
    id: visit.id,
    basedOn: 1,
    reason: mark.amended,
    visit: { ...soundVisit(dog.id, '2026-02-02'), notes: mark.visitNotes },
    plan: null,
    food: null,
  });
  await seenWithPlan(desk, dog.id, '2026-03-01');
  await desk.ok('sessions/save', {
    dogId: dog.id,
    session: {
      day: '2026-02-03',
      outcome: 'done',
      runMinutes: null,
      longestRunMinutes: null,
      runKm: null,
      climbedM: null,
      nextDay: null,
      signs: [],
      note: mark.sessionNote,
    },
  });
  await desk.ok('drafts/put', {
    key: `visit:${dog.id}:new`,
    json: JSON.stringify({ notes: mark.draft }),
  });
  const db = new BetterSqlite3(join(desk.folder, 'trotwell.sqlite'));
  db.prepare(
    `INSERT INTO weighing VALUES (?, ?, '2026-02-20', 23.5, 'same scale', 0.1, 'typed', ?, '', ?, ?, 1)`,
  ).run(crypto.randomUUID(), dog.id, mark.weighingNote, `${TODAY}T00:00:00Z`, `${TODAY}T00:00:00Z`);
  attach(desk, db, visit.id, mark.fileName, mark.content);
  db.close();
  return { marks: mark, clientId: dog.clientId, dogId: dog.id };
}

/** Keeps a file at a visit, in the layout of the store: by content hash. */
function attach(
  desk: TestDesk,
  db: BetterSqlite3.Database,
  visitId: string,
  name: string,
  content: string,
): void {
  const bytes = Buffer.from(`%PDF-1.7\n${content}\n%%EOF\n`);
  const hash = createHash('sha256').update(bytes).digest('hex');
  const file = contentFile(presentContents(desk.folder), hash);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, bytes);
  const at = `${TODAY}T00:00:00Z`;
  db.prepare('INSERT OR IGNORE INTO stored_file VALUES (?, ?, ?, ?)').run(
    hash,
    'application/pdf',
    bytes.length,
    at,
  );
  db.prepare(`INSERT INTO attachment VALUES (?, ?, ?, 'letter of the vet', ?, ?, '', ?, NULL)`).run(
    crypto.randomUUID(),
    visitId,
    hash,
    name,
    Buffer.from(content),
    at,
  );
}

function filesUnder(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesUnder(path) : [path];
  });
}

/** Which of the strings stand in some file of the folder, byte by byte, and in which. */
function traces(folder: string, texts: readonly string[]): string[] {
  return filesUnder(folder).flatMap((path) => {
    const bytes = readFileSync(path);
    return texts.filter((text) => bytes.includes(text)).map((text) => `${text} in ${path}`);
  });
}

const erase = (clientId: string, confirmName: string) => ({
  clientId,
  ground: GROUND,
  confirmName,
  insideRetentionConfirmed: true,
});

describe('erasing an owner', () => {
  test('leaves no byte in the data folder, and everything of the other owner', async () => {
    const desk = await openOwn();
    const gone = await seedOwner(desk, 'Umbra');
    const stays = await seedOwner(desk, 'Solace');
    // A closing makes an automatic backup with both of them in it.
    await desk.service.close();
    const again = testService(desk.folder, '2026-03-03');
    await again.ok('practice/save', { ...blankPractice(), name: 'Heath Road Practice' });
    const goneTexts = Object.values(gone.marks).flatMap((text) => [text, text.toLowerCase()]);
    const staysTexts = Object.values(stays.marks);
    const before = traces(desk.folder, goneTexts);
    expect(readdirSync(join(desk.folder, 'backups')).some((name) => name.endsWith('.sqlite'))).toBe(
      true,
    );
    for (const text of Object.values(gone.marks)) {
      expect(before.some((found) => found.startsWith(`${text} in`))).toBe(true);
    }

    const erased = await again.ok('clients/erase', erase(gone.clientId, gone.marks.owner));
    expect(erased).toEqual({ dogs: 1, visits: 2, files: 1, clean: true, backups: 'replaced' });
    const left = traces(desk.folder, [...goneTexts, gone.clientId, gone.dogId]);
    expect(left).toEqual([]);
    for (const text of staysTexts) {
      const found = traces(desk.folder, [text]);
      expect(found.some((entry) => !entry.includes('backups'))).toBe(true);
      expect(found.some((entry) => entry.includes('backups'))).toBe(true);
    }
    await again.service.close();
    expect(traces(desk.folder, [...goneTexts, gone.clientId, gone.dogId])).toEqual([]);
    console.log(
      `erase: ${before.length} places before, 0 after, in ${filesUnder(desk.folder).length} files`,
    );
  });

  test('reaches what was deleted before removed rows were overwritten', async () => {
    const desk = await openOwn();
    const gone = await seedOwner(desk, 'Umbra');
    const file = join(desk.folder, 'trotwell.sqlite');
    const db = new BetterSqlite3(file);
    db.pragma('secure_delete = OFF');
    db.prepare("INSERT INTO draft VALUES ('settings', ?, '')").run('Umbra leftover '.repeat(800));
    db.prepare("DELETE FROM draft WHERE key = 'settings'").run();
    db.pragma('wal_checkpoint(TRUNCATE)');
    db.close();
    expect(traces(desk.folder, ['Umbra leftover'])).not.toEqual([]);
    await desk.ok('clients/erase', erase(gone.clientId, gone.marks.owner));
    expect(traces(desk.folder, ['Umbra leftover'])).toEqual([]);
  });

  test('keeps a file that another owner has as well', async () => {
    const desk = await openOwn();
    const gone = await seedOwner(desk, 'Umbra');
    const stays = await seedOwner(desk, 'Solace');
    const visit = (await desk.ok('dogs/file', { dogId: stays.dogId })).visits[0]!;
    const db = new BetterSqlite3(join(desk.folder, 'trotwell.sqlite'));
    attach(desk, db, visit.id, 'The same letter', gone.marks.content);
    db.close();
    await desk.ok('clients/erase', erase(gone.clientId, gone.marks.owner));
    const found = traces(presentContents(desk.folder), [gone.marks.content]);
    expect(found).toHaveLength(1);
  });

  test('removes from the backups the contents that no record has any more', async () => {
    const desk = await openOwn();
    const gone = await seedOwner(desk, 'Umbra');
    await desk.service.close();
    const store = backedUpContents(desk.folder);
    expect(traces(store, [gone.marks.content])).toHaveLength(1);
    const again = testService(desk.folder, '2026-03-03');
    await again.ok('clients/erase', erase(gone.clientId, gone.marks.owner));
    expect(traces(store, [gone.marks.content])).toEqual([]);
    expect((await again.ok('erasures/list', {})).olderBackups).toBe(0);
  });

  test('says when another program holds the file, and can be finished afterwards', async () => {
    const desk = await openOwn();
    const gone = await seedOwner(desk, 'Umbra');
    const reader = new BetterSqlite3(join(desk.folder, 'trotwell.sqlite'), { readonly: true });
    reader.exec('BEGIN');
    reader.prepare('SELECT count(*) FROM client').get();
    const erased = await desk.ok('clients/erase', erase(gone.clientId, gone.marks.owner));
    expect(erased.clean).toBe(false);
    reader.exec('COMMIT');
    reader.close();
    expect((await desk.ok('erasures/finish', {})).clean).toBe(true);
    expect(traces(desk.folder, Object.values(gone.marks))).toEqual([]);
  });

  test('needs the name as it stands, and the confirmation inside the retention period', async () => {
    const desk = await openOwn();
    const { clientId, marks: mark } = await seedOwner(desk, 'Umbra');
    const right = erase(clientId, mark.owner);
    const wrongName = await desk.refused('clients/erase', { ...right, confirmName: 'Umbra' });
    expect(wrongName.fields?.[0]?.path).toBe('confirmName');
    const inside = await desk.refused('clients/erase', {
      ...right,
      insideRetentionConfirmed: false,
    });
    expect(inside.fields?.[0]?.path).toBe('insideRetentionConfirmed');
    expect((await desk.ok('clients/list', { query: '' })).length).toBe(1);
    expect((await desk.ok('erasures/list', {})).erasures).toEqual([]);
  });

  test('reaches an owner in the bin too', async () => {
    const desk = await openOwn();
    const { clientId, marks: mark } = await seedOwner(desk, 'Umbra');
    await desk.ok('bin/put', { kind: 'client', id: clientId });
    await desk.ok('clients/erase', erase(clientId, mark.owner));
    expect(await desk.ok('bin/list', {})).toEqual([]);
    expect(traces(desk.folder, Object.values(mark))).toEqual([]);
  });

  test('leaves an erasure without personal data', async () => {
    const desk = await openOwn();
    const { clientId, dogId, marks: mark } = await seedOwner(desk, 'Umbra');
    await desk.ok('clients/erase', erase(clientId, mark.owner));
    const { erasures } = await desk.ok('erasures/list', {});
    expect(erasures).toMatchObject([
      { ground: GROUND, insideRetention: true, dogs: 1, visits: 2, files: 1 },
    ]);
    const text = JSON.stringify(erasures);
    for (const part of [...Object.values(mark), clientId, dogId]) expect(text).not.toContain(part);
  });

  test('leaves the demonstration no backup to replace', async () => {
    const desk = testService();
    await desk.ok('app/open', { which: 'demo' });
    const [client] = await desk.ok('clients/list', { query: '' });
    const erased = await desk.ok('clients/erase', erase(client!.id, client!.name));
    expect(erased).toMatchObject({ clean: true, backups: 'none there' });
    expect(existsSync(join(desk.folder, 'backups'))).toBe(false);
  });
});

describe('the check before erasing', () => {
  test('counts what would go, in the bin or not, and names the dogs', async () => {
    const desk = await openOwn();
    const { clientId, dogId, marks: mark } = await seedOwner(desk, 'Umbra');
    const { visits } = await desk.ok('dogs/file', { dogId });
    await desk.ok('bin/put', { kind: 'visit', id: visits[0]!.id });
    expect(await desk.ok('clients/eraseCheck', { clientId })).toEqual({
      clientId,
      clientName: mark.owner,
      dogNames: [mark.dog],
      dogs: 1,
      visits: 2,
      plans: 2,
      foodDecisions: 2,
      sessions: 1,
      weighings: 1,
      files: 1,
      drafts: 1,
      latestEntryDay: TODAY,
      keepUntil: '2036-03-02',
      insideRetention: true,
    });
  });

  test('follows the retention period of the practice', async () => {
    const desk = await openOwn();
    const { clientId } = await seedOwner(desk, 'Umbra');
    expect(await desk.ok('keeping/get', {})).toEqual({ retentionYears: 10 });
    await desk.ok('keeping/set', { retentionYears: 3 });
    const check = await desk.ok('clients/eraseCheck', { clientId });
    expect(check).toMatchObject({ keepUntil: '2029-03-02', insideRetention: true });
    await desk.ok('keeping/set', { retentionYears: 0 });
    expect((await desk.ok('clients/eraseCheck', { clientId })).insideRetention).toBe(false);
    const refused = await desk.refused('keeping/set', { retentionYears: 51 });
    expect(refused.message).toBe('Retention period must be from 0 to 50 years.');
  });
});

test('an erasure reaches what a first backup had begun, and what was made and not fetched', async () => {
  const desk = await openOwn();
  const { clientId, marks: mark } = await seedOwner(desk, 'Ottoline');
  const workId = crypto.randomUUID();
  const tokens = [
    (await desk.ok('backup/make', { passphrase: null, workId })).token,
    (await desk.ok('export/make', { clientId, workId })).token,
  ];
  // Contents are copied first: so a backup looks that was cut off before it had a name.
  cpSync(presentContents(desk.folder), backedUpContents(desk.folder), { recursive: true });
  writeFileSync(join(desk.folder, 'backups', 'automatic.sqlite.part'), mark.owner);
  await desk.ok('clients/erase', {
    clientId,
    ground: GROUND,
    confirmName: mark.owner,
    insideRetentionConfirmed: true,
  });
  for (const token of tokens) expect(desk.service.giveOut(token).ok).toBe(false);
  const left = readdirSync(desk.folder, { recursive: true, encoding: 'utf8' })
    .map((name) => join(desk.folder, name))
    .filter((path) => statSync(path).isFile());
  for (const path of left) {
    for (const words of Object.values(mark)) {
      expect(readFileSync(path).includes(words), path).toBe(false);
    }
  }
  expect(left.filter((path) => path.includes('transfer'))).toEqual([]);
});
