import { readdirSync } from 'node:fs';
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { describe, expect, test } from 'vitest';
import yauzl from 'yauzl';
import { addDays } from '../../../core/index.ts';
import { blankPractice } from '../../../electron/contract/records/forms.ts';
import type { BatchPrinted } from '../../../electron/contract/calls/handouts.ts';
import { readPdf } from '../../templates/support/readPdf.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import { dogOf, seenWithPlan, soundVisit } from '../support/records.ts';

const DAY = '2026-03-02';

/** An own practice with a name, which stands on every sheet. */
async function practice(): Promise<TestDesk> {
  const desk = await openOwn(undefined, DAY);
  await desk.ok('practice/save', { ...blankPractice(), name: 'Practice of the test' });
  return desk;
}

/** Every file the service is keeping for a page. */
function waiting({ folder }: TestDesk): string[] {
  const transfers = join(folder, 'transfer');
  try {
    return readdirSync(transfers, { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.includes('/'),
    );
  } catch {
    return [];
  }
}

/** The PDFs of a batch, as a zip reader that is not ours finds them. */
async function pdfsOf(desk: TestDesk, { token }: BatchPrinted): Promise<Map<string, Buffer>> {
  const given = desk.service.giveOut(token!);
  if (!given.ok) expect.fail(given.error.message);
  expect(given.value.mediaType).toBe('application/zip');
  const zip = await yauzl.openPromise(given.value.file);
  const entries = new Map<string, Buffer>();
  for await (const entry of zip.eachEntry()) {
    entries.set(entry.fileName, await buffer(await zip.openReadStreamPromise(entry)));
  }
  given.value.done();
  return entries;
}

const all = { paper: null, language: 'en', workId: randomUUID() } as const;

describe('sheets for several dogs', () => {
  test('come as one archive, a PDF for each sheet, with the pages that were told', async () => {
    const desk = await practice();
    const bess = await dogOf(desk, 'Ada Sample', 'Bess');
    const rusk = await dogOf(desk, 'Ben Sample', 'Rusk');
    for (const { id } of [bess, rusk]) await seenWithPlan(desk, id, DAY);
    const kinds = ['feeding-sheet', 'running-plan'] as const;
    const dogIds = [rusk.id, bess.id];
    const done = await desk.ok('handouts/batch', { ...all, dogIds, kinds: [...kinds] });

    expect(done.dogs.map(({ dogId }) => dogId)).toEqual(dogIds);
    const pdfs = await pdfsOf(desk, done);
    expect([...pdfs.keys()]).toEqual([
      `Rusk, Ben Sample, feeding-sheet ${DAY}.pdf`,
      `Rusk, Ben Sample, running-plan ${DAY}.pdf`,
      `Bess, Ada Sample, feeding-sheet ${DAY}.pdf`,
      `Bess, Ada Sample, running-plan ${DAY}.pdf`,
    ]);
    const told = done.dogs.flatMap(({ sheets }) => sheets);
    expect(told.map(({ problem }) => problem)).toEqual([null, null, null, null]);
    const read = await Promise.all([...pdfs.values()].map((bytes) => readPdf(bytes)));
    expect(read.map(({ pages }) => pages.length)).toEqual(told.map(({ pages }) => pages));
    expect(read[0]!.text).toContain('Rusk');
    expect(read[0]!.text).not.toContain('Bess');
    expect(waiting(desk)).toEqual([]);
  }, 120_000);

  test('are the sheets that are printed for each dog alone', async () => {
    const desk = await practice();
    const { id: dogId } = await dogOf(desk, 'Ada Sample', 'Bess');
    await seenWithPlan(desk, dogId, DAY);
    // Printed later, they carry the visit's day all the same.
    desk.setDay(addDays(DAY, 3));
    const batch = await desk.ok('handouts/batch', {
      ...all,
      dogIds: [dogId],
      kinds: ['heat-card'],
    });
    const alone = await desk.ok('handouts/render', { kind: 'heat-card', dogId, paper: null });
    expect(alone.fileName).toBe(`Bess-heat-card-${DAY}.pdf`);
    const [[name, bytes]] = [...(await pdfsOf(desk, batch))] as [[string, Buffer]];
    expect(name).toBe(`Bess, Ada Sample, heat-card ${DAY}.pdf`);
    expect(bytes!.equals(Buffer.from(alone.base64, 'base64'))).toBe(true);
  }, 120_000);

  test('name every sheet that cannot be printed and why, and print the others', async () => {
    const desk = await practice();
    const planless = await dogOf(desk, 'Ada Sample', 'Bess');
    await desk.ok('visits/save', {
      id: null,
      visit: soundVisit(planless.id, DAY),
      plan: null,
      food: null,
    });
    const unseen = await dogOf(desk, 'Ben Sample', 'Rusk');
    const resting = await dogOf(desk, 'Cay Sample', 'Tilly');
    await desk.ok('visits/save', {
      id: null,
      visit: { ...soundVisit(resting.id, DAY), signs: ['collapse'] },
      plan: null,
      food: null,
    });
    const gone = randomUUID();
    const done = await desk.ok('handouts/batch', {
      ...all,
      dogIds: [planless.id, unseen.id, resting.id, gone],
      kinds: ['running-plan', 'heat-card'],
    });
    const problems = done.dogs.map(({ sheets }) => sheets.map(({ problem }) => problem));
    expect(problems).toEqual([
      ['Bess has no running plan yet: make one at a visit.', null],
      Array(2).fill('There is nothing to print yet: weigh the dog at a visit first.'),
      // The owner of a dog that may not run is told why by the sheet of the running plan.
      [null, null],
      Array(2).fill('The dog is not in the records.'),
    ]);
    for (const { pages, problem } of done.dogs.flatMap(({ sheets }) => sheets)) {
      expect(pages > 0).toBe(problem === null);
    }
    expect([...(await pdfsOf(desk, done)).keys()]).toEqual([
      `Bess, Ada Sample, heat-card ${DAY}.pdf`,
      `Tilly, Cay Sample, running-plan ${DAY}.pdf`,
      `Tilly, Cay Sample, heat-card ${DAY}.pdf`,
    ]);
  }, 120_000);

  test('make no archive where no sheet can be printed', async () => {
    const desk = await practice();
    const { id } = await dogOf(desk, 'Ada Sample', 'Bess');
    const done = await desk.ok('handouts/batch', { ...all, dogIds: [id], kinds: ['kit-sheet'] });
    expect(done.token).toBeNull();
    expect(waiting(desk)).toEqual([]);
  });

  test('of dogs called the same do not write over each other, whatever they are called', async () => {
    const desk = await practice();
    const names = ['Bess', 'bess', '../../Bess', 'Жучка', 'x'.repeat(200)];
    const dogs = [];
    for (const name of names) {
      const dog = await dogOf(desk, 'Ada Sample', name);
      await desk.ok('visits/save', {
        id: null,
        visit: soundVisit(dog.id, DAY),
        plan: null,
        food: null,
      });
      dogs.push(dog.id);
    }
    const done = await desk.ok('handouts/batch', { ...all, dogIds: dogs, kinds: ['kit-sheet'] });
    expect([...(await pdfsOf(desk, done)).keys()]).toEqual([
      `Bess, Ada Sample, kit-sheet ${DAY}.pdf`,
      `bess, Ada Sample 2, kit-sheet ${DAY}.pdf`,
      `Bess, Ada Sample 3, kit-sheet ${DAY}.pdf`,
      `Жучка, Ada Sample, kit-sheet ${DAY}.pdf`,
      `${'x'.repeat(30)}, Ada Sample, kit-sheet ${DAY}.pdf`,
    ]);
  }, 120_000);

  test('stop when asked, leave nothing behind, and let other questions be answered meanwhile', async () => {
    const desk = await practice();
    const dogs = [];
    for (const name of ['Bess', 'Rusk', 'Tilly']) {
      const { id } = await dogOf(desk, 'Ada Sample', name);
      await seenWithPlan(desk, id, DAY);
      dogs.push(id);
    }
    const workId = randomUUID();
    const input = {
      ...all,
      workId,
      dogIds: dogs,
      kinds: ['kit-sheet' as const, 'heat-card' as const],
    };
    const running = desk.service.call('handouts/batch', input);
    let step = '';
    while (!step.startsWith('Printing sheet 2 of 6')) {
      step = (await desk.ok('work/state', { workId }))?.step ?? step;
      await new Promise((resolve) => setTimeout(resolve, 2));
    }
    expect(step).toBe('Printing sheet 2 of 6, for Bess');
    // An ordinary question, asked and answered while the sheets are being printed.
    expect((await desk.ok('dogs/file', { dogId: dogs[0]! })).dog.name).toBe('Bess');
    expect(await desk.ok('work/state', { workId })).not.toBeNull();
    expect(waiting(desk)).toHaveLength(1);
    await desk.ok('work/cancel', { workId });
    expect(await running).toMatchObject({ ok: false, error: { kind: 'cancelled' } });
    expect(waiting(desk)).toEqual([]);
    expect(await desk.ok('work/state', { workId })).toBeNull();
  }, 120_000);

  test('are those the practice chose for each dog’s last visit, where nothing else is said', async () => {
    const desk = await practice();
    const { practice: settings } = await desk.ok('app/status', {});
    await desk.ok('practice/save', {
      ...settings!,
      intakeSheets: ['kit-sheet', 'feeding-sheet'],
      followUpSheets: ['progress-report'],
    });
    const fresh = await dogOf(desk, 'Ada Sample', 'Bess');
    const seen = await dogOf(desk, 'Ben Sample', 'Rusk');
    const unseen = await dogOf(desk, 'Cleo Sample', 'Tib');
    for (const { id } of [fresh, seen]) await seenWithPlan(desk, id, DAY);
    desk.setDay('2026-03-16');
    const visit = { ...soundVisit(seen.id, '2026-03-16'), kind: 'follow-up' as const };
    await desk.ok('visits/save', { id: null, visit, plan: null, food: null });
    const dogIds = [fresh.id, seen.id, unseen.id];
    const { dogs } = await desk.ok('handouts/batch', { ...all, dogIds, kinds: null });
    expect(
      dogs.map(({ sheets }) => sheets.map(({ kind, problem }) => [kind, problem === null])),
    ).toEqual([
      [
        ['kit-sheet', true],
        ['feeding-sheet', true],
      ],
      [['progress-report', true]],
      [
        ['kit-sheet', false],
        ['feeding-sheet', false],
      ],
    ]);
  }, 120_000);

  test('need a named practice, dogs and sheets, each once and not too many', async () => {
    const desk = await openOwn();
    const { id } = await dogOf(desk, 'Ada Sample', 'Bess');
    const kinds = ['kit-sheet'];
    const refusal = async (input: object) =>
      (await desk.refused('handouts/batch', { ...all, dogIds: [id], kinds, ...input })).message;
    expect(await refusal({})).toMatch('Name the practice');
    const range = 'Dogs to print sheets for must be from 1 to 100 dogs.';
    expect(await refusal({ dogIds: [] })).toBe(range);
    expect(await refusal({ dogIds: Array.from({ length: 101 }, () => randomUUID()) })).toBe(range);
    expect(await refusal({ dogIds: [id, id] })).toBe('Each dog can be chosen once.');
    expect(await refusal({ kinds: [] })).toBe('Choose at least one sheet.');
    expect(await refusal({ kinds: [...kinds, ...kinds] })).toBe('Each sheet can be chosen once.');
  });
});
