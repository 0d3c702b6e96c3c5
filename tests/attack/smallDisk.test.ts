import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test, type TestContext } from 'vitest';
import { blankClient } from '../../electron/contract/blank.ts';
import { CALL_NAMES } from '../../electron/contract/callNames.ts';
import { contract, type CallName } from '../../electron/contract/contract.ts';
import { removeTemplate, templateFile, wordsOf } from '../contract/support/records.ts';
import { samplesOf } from '../contract/support/samples.ts';
import { openOwn, testService, type TestDesk } from '../service/desk.ts';
import { faults, lookAt } from '../survival/support/run.ts';
import { long } from './support/form.ts';
import { smallDisk, type SmallDisk } from './support/smallDisk.ts';

// Every call is asked, with inputs made from its own schema and with what stands in the records, on
// a disk that takes nothing. What of it writes need not be listed: a new call is found by itself.

/** Inputs a call; most get past its schema and name records that are there. */
const SAMPLES = long ? 100 : 12;
/** They open another file, or end what the next sample needs. */
const APART: ReadonlySet<CallName> = new Set(['app/open', 'lock/set', 'lock/now']);
/** These write whatever the samples are. */
const WRITING: CallName[] = ['clients/save', 'drafts/put', 'backup/make', 'export/make'];

const STATES = [
  { state: 'is filled while the records are open', trouble: 'disk full', early: false },
  { state: 'is full from the start', trouble: 'disk full', early: true },
  { state: 'is read-only', trouble: 'unwritable', early: true },
] as const;

let template: string;
let words: readonly unknown[];

beforeAll(async () => {
  template = await templateFile();
  words = wordsOf(template);
}, 60_000);
afterAll(() => removeTemplate(template));

/** A disk, or the test is skipped with the reason. */
function diskOr(context: TestContext): SmallDisk {
  return smallDisk(24) ?? context.skip('No small disk can be made here: that takes root on Linux.');
}

/** Asks everything. @returns the calls that named a trouble; nothing may be a fault of the program */
async function refusingIn(desk: TestDesk, fill: () => void, trouble: string): Promise<CallName[]> {
  const refusing = new Set<CallName>();
  for (const name of CALL_NAMES.filter((each) => !APART.has(each))) {
    const samples = samplesOf(contract[name].input, words);
    for (const input of fc.sample(samples, { seed: 5, numRuns: SAMPLES })) {
      const answer = await desk.service.call(name, input as never);
      expect(desk.log, name).toEqual([]);
      if (answer.ok || answer.error.kind !== 'storage') continue;
      expect(answer.error, name).toMatchObject({ trouble });
      refusing.add(name);
    }
    fill();
  }
  return [...refusing];
}

/** Some sheet of a dog, as a PDF. */
async function printed(desk: TestDesk, dogId: string): Promise<string> {
  const sheet = { kind: 'assessment-record', dogId, paper: null } as const;
  const { base64 } = await desk.ok('handouts/render', sheet);
  return Buffer.from(base64, 'base64').toString('latin1', 0, 5);
}

describe('a disk that takes nothing', () => {
  test.for(STATES)(
    '$state: every call names it, reading and printing go on, and so does all with room',
    { timeout: 600_000 },
    async ({ state, trouble, early }, context) => {
      const disk = diskOr(context);
      const refuse = (): void => (trouble === 'disk full' ? disk.fill() : disk.writable(false));
      try {
        copyFileSync(template, join(disk.folder, 'trotwell.sqlite'));
        if (early) refuse();
        const desk = testService(disk.folder);
        const limited = early ? trouble : null;
        expect(await desk.ok('app/status', {})).toMatchObject({ open: 'own', limited });
        const { dogs } = await desk.ok('dogs/find', { query: '' } as never);
        if (!early) refuse();
        const refusing = await refusingIn(desk, refuse, trouble);
        expect(refusing).toEqual(expect.arrayContaining(WRITING));
        expect(await printed(desk, dogs[0]!.id)).toBe('%PDF-');
        console.log(`A disk that ${state}: ${refusing.length} calls say so, 0 others go wrong`);

        disk.writable(true);
        disk.empty();
        await desk.ok('clients/save', { id: null, client: { ...blankClient(), name: 'Eve' } });
        expect((await desk.ok('app/status', {})).limited).toBeNull();
        await desk.service.close();
        expect(lookAt(disk.folder, faults)).toEqual([]);
      } finally {
        disk.remove();
      }
    },
  );

  test('still shows what a killed program had left in the log', async (context) => {
    const disk = diskOr(context);
    try {
      const open = await openOwn();
      await open.ok('clients/save', { id: null, client: { ...blankClient(), name: 'Ada' } });
      for (const name of ['trotwell.sqlite', 'trotwell.sqlite-wal']) {
        copyFileSync(join(open.folder, name), join(disk.folder, name));
      }
      for (const refuse of [() => disk.fill(), () => disk.writable(false)]) {
        refuse();
        const desk = testService(disk.folder);
        expect(await desk.ok('clients/list', { query: '' })).toMatchObject([{ name: 'Ada' }]);
        await desk.service.close();
      }
    } finally {
      disk.writable(true);
      disk.remove();
    }
  });
});
