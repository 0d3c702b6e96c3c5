import { Readable } from 'node:stream';
import { describe, expect, test } from 'vitest';
import { blankClient, blankDog } from '../../../electron/contract/records/forms.ts';
import type { TableLook, WeightMapping } from '../../../electron/contract/exchange/weightImport.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';

const WORK = '00000000-0000-4000-8000-00000000000a';

async function addDog(desk: TestDesk, name: string, owner: string) {
  return desk.ok('dogs/saveWithOwner', {
    client: { ...blankClient(), name: owner },
    dog: { ...blankDog('female'), name, birthDay: '2022-04-01' },
  });
}
async function take(desk: TestDesk, content: string | Buffer): Promise<string> {
  const taken = await desk.service.takeIn(
    'weights.csv',
    Readable.from([Buffer.from(content)]),
    1e8,
  );
  if (!taken.ok) expect.fail(taken.error.message);
  return taken.value.token;
}
/** The mapping as guessed, for one chosen dog or by the guessed column. */
function mappingOf({ guess }: TableLook, dogId?: string): WeightMapping {
  return {
    separator: guess.separator,
    headed: guess.headed,
    dog:
      dogId === undefined
        ? { by: 'column', column: guess.dogColumn!, ownerColumn: guess.ownerColumn }
        : { by: 'choice', dogId },
    dayColumn: guess.dayColumn!,
    weightColumn: guess.weightColumn!,
    dayFormat: guess.dayFormat,
    unit: guess.unit,
    decimalSign: guess.decimalSign,
    weighingMethod: 'other scale',
    scaleStepKg: 0.1,
  };
}

const GERMAN =
  'Hund;Halter;Datum;Gewicht (kg)\r\nBéss;Zoë Müller;09.02.2026;24,3\r\nRex;Zoë Müller;16.02.2026;31,05\r\n';
const AMERICAN = 'Date,Weight (lb),Dog\n02/13/2026,53.5,Bess\n02/20/2026,53.1 lbs,bess\n';

describe('weights from a table', () => {
  test('semicolon, decimal comma, day.month.year, in three encodings', async () => {
    const utf16 = Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(GERMAN, 'utf16le')]);
    for (const [bytes, encoding] of [
      [Buffer.from('\ufeff' + GERMAN), 'UTF-8'],
      [utf16, 'UTF-16'],
      [Buffer.from(GERMAN, 'latin1'), 'Windows-1252'],
    ] as const) {
      const desk = await openOwn();
      const bess = await addDog(desk, 'Béss', 'Zoë Müller');
      await addDog(desk, 'Béss', 'Another Owner');
      await addDog(desk, 'Rex', 'Zoë Müller');
      const token = await take(desk, bytes);
      const look = await desk.ok('import/readCsv', { token });
      expect(look).toMatchObject({ encoding, rowCount: 2 });
      expect(look.guess).toMatchObject({
        separator: ';',
        decimalSign: ',',
        dayFormat: 'DD.MM.YYYY',
        unit: 'kg',
      });
      const mapping = mappingOf(look);
      const preview = await desk.ok('import/preview', { token, mapping });
      expect(preview.counts).toEqual({ new: 2, known: 0, repeated: 0, refused: 0, 'left out': 0 });
      const done = await desk.ok('import/run', {
        token,
        mapping,
        digest: preview.digest,
        workId: WORK,
      });
      expect(done).toMatchObject({ added: 2, known: 0, leftOut: 0 });
      const { weighings } = await desk.ok('dogs/file', { dogId: bess.id });
      expect(weighings).toMatchObject([{ day: '2026-02-09', weightKg: 24.3, origin: 'imported' }]);
    }
  });

  test('comma, month/day/year, pounds', async () => {
    const desk = await openOwn();
    const { id: dogId } = await addDog(desk, 'Bess', 'Zoë');
    const token = await take(desk, AMERICAN);
    const look = await desk.ok('import/readCsv', { token });
    expect(look.guess).toMatchObject({
      separator: ',',
      decimalSign: '.',
      dayFormat: 'MM/DD/YYYY',
      dayFormatSure: true,
      unit: 'lb',
    });
    const mapping = mappingOf(look);
    const { digest } = await desk.ok('import/preview', { token, mapping });
    await desk.ok('import/run', { token, mapping, digest, workId: WORK });
    const { weighings } = await desk.ok('dogs/file', { dogId });
    // 1 lb = 0.45359237 kg exactly (international pound of 1959, S): 24.2672 and 24.0858 kg.
    expect(weighings.map(({ weightKg }) => weightKg)).toEqual([24.2672, 24.0858]);
  });

  test.each([
    ['half of the days are bad', 'dog,note,date,kg\nA,x,2026-02-01,24\nA,y,soon,24\n', 2],
    [
      'three in four are, in a column that names itself',
      'kg,date\n24,2026-02-01\n24,Feb\n24,?\n24,31.02.\n24,Mar\n',
      1,
    ],
    [
      'a column further left has a day here and there',
      'A,seen 3 times,2026-02-01,24\nA,2026-01-05,2026-02-08,24\nA,well,2026-02-15,24\n',
      2,
    ],
    ['two are as good, and one is named', 'dog,born,date,kg\nA,2022-04-01,2026-02-01,24\n', 2],
  ])('guesses the column of the days where %s', async (_name, table, column) => {
    const desk = await openOwn();
    const { guess } = await desk.ok('import/readCsv', { token: await take(desk, table) });
    expect(guess.dayColumn).toBe(column);
  });

  test('guesses no column of days where there is none', async () => {
    const desk = await openOwn();
    const token = await take(desk, 'dog,note,kg\nA,well,24\nA,well,25\nA,lame,26\n');
    expect((await desk.ok('import/readCsv', { token })).guess.dayColumn).toBeNull();
  });

  test('names every row that cannot be taken, by line and column, and takes none of them', async () => {
    const desk = await openOwn();
    await addDog(desk, 'Bess', 'A');
    await addDog(desk, 'Twin', 'A');
    await addDog(desk, 'Twin', 'B');
    const table = [
      'dog,day,weight',
      'Bess,2026-02-30,24',
      '"Bess",2026-02-01,"twenty\nfour"',
      'Bess,2026-02-01,240',
      'Nobody,2026-02-01,24',
      'Twin,2026-02-01,24',
      'Bess,2027-02-01,24',
      'Bess,2022-03-31,24',
      'Bess,,',
      "'=HYPERLINK(1),2026-02-01,24",
      'Bess,2026-02-01,24',
      'Bess,2026-02-01,24.0',
    ].join('\n');
    const token = await take(desk, table);
    const mapping = mappingOf(await desk.ok('import/readCsv', { token }));
    const { counts, rows, digest } = await desk.ok('import/preview', { token, mapping });
    expect(counts).toEqual({ new: 1, known: 0, repeated: 1, refused: 9, 'left out': 0 });
    const problem = (line: number) => rows.find((row) => row.line === line)!.problems;
    expect(problem(2)).toMatchObject([
      { column: 'day', message: expect.stringContaining('calendar') },
    ]);
    expect(problem(3)[0]).toMatchObject({
      column: 'weight',
      message: expect.stringContaining('in kg'),
    });
    expect(problem(5)[0]!.message).toBe('Body weight must be from 0.1 to 150 kg.');
    expect(problem(6)[0]!.message).toContain('No dog named “Nobody”');
    expect(problem(7)[0]!.message).toContain('2 dogs are named “Twin”');
    expect(problem(8)[0]!.message).toContain('future');
    expect(problem(9)[0]!.message).toContain('day of birth');
    expect(problem(10)).toHaveLength(2);
    expect(problem(11)[0]!.message).toContain('“=HYPERLINK(1)”');
    const refused = await desk.refused('import/run', { token, mapping, digest, workId: WORK });
    expect(refused.message).toContain('9 rows are refused');
  });

  test('leaves out what is known, is refused when the record changed, and can be taken back', async () => {
    const desk = await openOwn();
    const { id: dogId } = await addDog(desk, 'Bess', 'A');
    const weighing = {
      day: '2026-02-01',
      weightKg: 24,
      weighingMethod: 'same scale',
      scaleStepKg: 0.1,
      note: '',
    } as const;
    await desk.ok('weighings/save', { dogId, weighing });
    const token = await take(desk, 'day;kg\n2026-02-01;24\n2026-02-08;23.8\n');
    const mapping = mappingOf(await desk.ok('import/readCsv', { token }), dogId);
    const { counts, digest } = await desk.ok('import/preview', { token, mapping });
    expect(counts).toMatchObject({ new: 1, known: 1 });
    await desk.ok('weighings/save', {
      dogId,
      weighing: { ...weighing, day: '2026-02-08', weightKg: 23.8 },
    });
    const changed = await desk.refused('import/run', { token, mapping, digest, workId: WORK });
    expect(changed.kind).toBe('conflict');
    const { id } = (await desk.ok('dogs/file', { dogId })).weighings[1]!;
    await desk.ok('weighings/drop', { id });
    const done = await desk.ok('import/run', { token, mapping, digest, workId: WORK });
    expect(done).toMatchObject({ added: 1, known: 1 });
    expect(await desk.ok('import/undo', { undoKey: done.undoKey })).toEqual({ removed: 1 });
    expect((await desk.ok('dogs/file', { dogId })).weighings).toMatchObject([weighing]);
    expect(await desk.refused('import/undo', { undoKey: done.undoKey })).toMatchObject({
      kind: 'not-found',
    });
    expect(await desk.refused('import/preview', { token, mapping })).toMatchObject({
      kind: 'not-found',
    });
  });

  test('rows that are left out stand in nobody’s way, and are kept by nobody', async () => {
    const desk = await openOwn();
    const { id: dogId } = await addDog(desk, 'Bess', 'A');
    const table = 'day;kg\n2026-02-30;24\n2026-02-08;23.8\n2026-02-08;23.8\n2026-02-15;23.6\n';
    const token = await take(desk, table);
    const mapping = mappingOf(await desk.ok('import/readCsv', { token }), dogId);
    const whole = await desk.ok('import/preview', { token, mapping });
    expect(whole.counts).toMatchObject({ new: 2, repeated: 1, refused: 1, 'left out': 0 });
    // The row that said the same further up is left out: the one below says something new.
    const leaveOut = [2, 3];
    const { counts, rows, digest } = await desk.ok('import/preview', { token, mapping, leaveOut });
    expect(counts).toEqual({ new: 2, known: 0, repeated: 0, refused: 0, 'left out': 2 });
    expect(rows.map(({ line, state }) => [line, state])).toEqual([
      [2, 'left out'],
      [3, 'left out'],
      [4, 'new'],
      [5, 'new'],
    ]);
    const otherwise = await desk.refused('import/run', { token, mapping, digest, workId: WORK });
    expect(otherwise.kind).toBe('conflict');
    const run = { token, mapping, leaveOut, digest, workId: WORK };
    expect(await desk.ok('import/run', run)).toMatchObject({ added: 2, known: 0, leftOut: 2 });
    const { weighings } = await desk.ok('dogs/file', { dogId });
    expect(weighings.map(({ day }) => day)).toEqual(['2026-02-08', '2026-02-15']);
  });

  test('a weight far off the dog’s others, of the record or the table, may be a slip', async () => {
    const desk = await openOwn();
    const { id: dogId } = await addDog(desk, 'Bess', 'A');
    await addDog(desk, 'Rex', 'A');
    const scale = { weighingMethod: 'same scale', scaleStepKg: 0.1, note: '' } as const;
    for (const [day, weightKg] of [
      ['2026-01-05', 24.4],
      ['2026-01-12', 24.3],
      ['2026-01-19', 24.1],
    ] as const) {
      await desk.ok('weighings/save', { dogId, weighing: { day, weightKg, ...scale } });
    }
    const table = [
      'dog;day;kg',
      'Bess;2026-01-26;24.0',
      'Bess;2026-02-02;42.0',
      'Rex;2026-02-02;42.0',
      'Bess;2026-02-09;23.8',
    ].join('\n');
    const token = await take(desk, table);
    const mapping = mappingOf(await desk.ok('import/readCsv', { token }));
    const { slips, counts, rows } = await desk.ok('import/preview', { token, mapping });
    expect(counts).toMatchObject({ new: 4, refused: 0 });
    expect(slips).toBe(1);
    expect(rows.map(({ line }) => line)).toEqual([3, 2, 4, 5]);
    expect(rows.map(({ slip }) => slip)).toEqual([
      'far from the other weighings: check for a slip',
      null,
      null,
      null,
    ]);
    const without = await desk.ok('import/preview', { token, mapping, leaveOut: [3] });
    expect(without).toMatchObject({ slips: 0, counts: { new: 3, 'left out': 1 } });
  });

  test('a cancelled import keeps nothing', async () => {
    const desk = await openOwn();
    const { id: dogId } = await addDog(desk, 'Bess', 'A');
    const rows = Array.from({ length: 3000 }, (_, i) => `2026-02-01;${(10 + i / 100).toFixed(2)}`);
    const token = await take(desk, `day;kg\n${rows.join('\n')}`);
    const mapping = mappingOf(await desk.ok('import/readCsv', { token }), dogId);
    const { digest } = await desk.ok('import/preview', { token, mapping });
    const running = desk.service.call('import/run', { token, mapping, digest, workId: WORK });
    let seen = 0;
    while (seen < 1000) {
      const state = await desk.ok('work/state', { workId: WORK });
      seen = state?.done ?? seen;
      await new Promise((resolve) => setImmediate(resolve));
    }
    await desk.ok('work/cancel', { workId: WORK });
    expect(await running).toMatchObject({ ok: false, error: { kind: 'cancelled' } });
    expect((await desk.ok('dogs/file', { dogId })).weighings).toEqual([]);
  });

  test.each([
    ['an archive', Buffer.from('504b0304140000000800', 'hex')],
    ['a cell without an end', Buffer.from(`a,b\n"${'x\n'.repeat(20_000)}`)],
    ['blank lines', Buffer.from('\n\n \n')],
  ])('%s is no table', async (_name, bytes) => {
    const desk = await openOwn();
    const token = await take(desk, bytes);
    expect(await desk.refused('import/readCsv', { token })).toMatchObject({ kind: 'input' });
  });
});
