import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { blankClient, blankDog, blankVisit } from '../../../electron/contract/records/forms.ts';
import { pngOf, SMALL_PDF } from '../../support/pictures.ts';
import { HOSTILE_NAMES, LONG_NOTES } from '../../support/hostileTexts.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { seenWithPlan } from '../support/records.ts';
import { exported, imported, recordsOf, type Entries } from './support/bundle.ts';
import { attach, SESSION, WEIGHING } from './support/fullRecord.ts';
import { holdsAsync } from '../../support/laws.ts';

// Any practice that can be typed: into a bundle, into an empty practice, out again. Both bundles
// hold the same records and the same files.

const visible = (text: string): boolean => /[\p{L}\p{N}\p{P}\p{S}]/u.test(text.slice(0, 200));
const name = fc.oneof(
  fc.constantFrom(...HOSTILE_NAMES.map(({ typed }) => typed)),
  fc.string({ unit: 'binary', minLength: 1, maxLength: 40 }).filter(visible),
);
const notes = fc.oneof(
  fc.constantFrom('', LONG_NOTES, '\u202e=1+1\u2066', '\ud800 half', '"quoted", \r\n next'),
  fc.string({ unit: 'binary', maxLength: 300 }),
);
const kg = fc.integer({ min: 180, max: 320 }).map((tenths) => tenths / 10);

const dog = fc.record({
  name,
  breed: notes.map((text) => text.slice(0, 150)),
  notes,
  visits: fc.array(
    fc.record({
      kg,
      notes,
      withPlan: fc.boolean(),
      grade: fc.integer({ min: 0, max: 5 }),
      file: fc.option(fc.record({ name, picture: fc.boolean(), salt: fc.nat(3) })),
      amended: fc.boolean(),
      binned: fc.boolean(),
    }),
    { maxLength: 3 },
  ),
  weighings: fc.array(fc.record({ kg, dropped: fc.boolean(), note: notes }), { maxLength: 3 }),
  sessions: fc.array(
    fc.record({ minutes: fc.nat(30), amended: fc.boolean(), dropped: fc.boolean(), note: notes }),
    { maxLength: 3 },
  ),
  archived: fc.boolean(),
  binned: fc.boolean(),
});
const practice = fc.array(
  fc.record({ name, notes, phone: name, dogs: fc.array(dog, { maxLength: 2 }) }),
  { minLength: 1, maxLength: 3 },
);
type Owner = typeof practice extends fc.Arbitrary<(infer T)[]> ? T : never;
type DogPart = Owner['dogs'][number];

const dayOf = (index: number): string => `2026-02-${String(10 + index).padStart(2, '0')}`;

async function keepDog(desk: TestDesk, owner: Owner, part: DogPart): Promise<void> {
  const client = { ...blankClient(), name: owner.name, notes: owner.notes, phone: owner.phone };
  const typed = { ...blankDog('female'), name: part.name, breed: part.breed, notes: part.notes };
  const kept = await desk.ok('dogs/saveWithOwner', {
    client,
    dog: { ...typed, birthDay: '2021-05-01', adultWeightKg: 24 },
  });
  for (const [index, each] of part.visits.entries()) {
    await keepVisit(desk, kept.id, dayOf(index), each);
  }
  for (const [index, { kg: weightKg, note, dropped }] of part.weighings.entries()) {
    const weighing = { ...WEIGHING, day: dayOf(index), weightKg: weightKg + 0.05, note };
    const { id } = await desk.ok('weighings/save', { dogId: kept.id, weighing });
    if (dropped) await desk.ok('weighings/drop', { id });
  }
  for (const [index, { minutes, note, amended, dropped }] of part.sessions.entries()) {
    const session = { ...SESSION, day: dayOf(index), runMinutes: minutes, note };
    await desk.ok('sessions/save', { dogId: kept.id, session });
    const second = { ...session, runMinutes: minutes + 1 };
    if (amended) await desk.ok('sessions/save', { dogId: kept.id, session: second });
    if (dropped) await desk.ok('sessions/drop', { dogId: kept.id, day: session.day });
  }
  if (part.archived) await desk.ok('dogs/archive', { id: kept.id, archived: true });
  if (part.binned) await desk.ok('bin/put', { kind: 'dog', id: kept.id, reason: part.name });
}

async function keepVisit(
  desk: TestDesk,
  dogId: string,
  day: string,
  part: DogPart['visits'][number],
): Promise<void> {
  const limbs = { leftFore: part.grade, rightFore: 0, leftHind: null, rightHind: null };
  const visit = {
    ...blankVisit(dogId, day),
    weightKg: part.kg,
    notes: part.notes,
    lamenessWalk: limbs,
    overrides: [{ code: 'no-such-rule', reason: 'ours' }],
  };
  const { id, revision } = part.withPlan
    ? (await seenWithPlan(desk, dogId, day)).visit
    : (await desk.ok('visits/save', { id: null, visit, plan: null, food: null })).visit;
  if (part.file !== null) {
    const { picture, salt } = part.file;
    const bytes = picture
      ? pngOf(4 + salt, 4)
      : Buffer.concat([SMALL_PDF, Buffer.from(`%${salt}`)]);
    await attach(desk, id, bytes, `${part.file.name.slice(0, 190)}.${picture ? 'png' : 'pdf'}`);
  }
  if (part.amended) {
    const changed = { ...visit, weightKg: part.kg + 0.1 };
    const about = { id, basedOn: revision, reason: part.notes.slice(0, 100) || 'Read again.' };
    // What shows nothing is no reason, and is refused.
    await desk.service.call('visits/save', { ...about, visit: changed, plan: null, food: null });
  }
  if (part.binned) await desk.ok('bin/put', { kind: 'visit', id, reason: '' });
}

const filesOf = (entries: Entries): readonly string[] =>
  [...entries]
    .filter(([name]) => name.startsWith('files/'))
    .map(([name, bytes]) => `${name} ${createHash('sha256').update(bytes).digest('hex')}`)
    .sort();

test('any practice comes out of an empty one as it went in', async () => {
  let records = 0;
  let files = 0;
  await holdsAsync(
    fc.asyncProperty(practice, async (owners) => {
      const from = await openOwn();
      for (const owner of owners) for (const each of owner.dogs) await keepDog(from, owner, each);
      const out = await exported(from);
      const to = await openOwn();
      const done = await imported(to, out);
      expect(done).toMatchObject({ kept: 0, replaced: 0, leftOut: 0, filesMissing: 0 });
      const again = await exported(to);
      expect(recordsOf(again)).toEqual(recordsOf(out));
      expect(filesOf(again)).toEqual(filesOf(out));
      await imported(to, again, { different: 'theirs', erased: 'bring back' });
      expect(recordsOf(await exported(to))).toEqual(recordsOf(out));
      records += Object.values(recordsOf(out)).flat().length;
      files += filesOf(out).length;
      await from.service.close();
      await to.service.close();
    }),
    { seed: 1, numRuns: 25 },
  );
  console.log(`Bundles read back in: 25 practices, ${records} records, ${files} files, all equal`);
  expect(records).toBeGreaterThan(400);
  expect(files).toBeGreaterThan(20);
}, 180_000);
