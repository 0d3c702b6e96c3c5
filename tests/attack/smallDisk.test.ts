import { copyFileSync, cpSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test, type TestContext } from 'vitest';
import { blankClient } from '../../electron/contract/records/forms.ts';
import { CALL_NAMES } from '../../electron/contract/callNames.ts';
import { contract, type CallName } from '../../electron/contract/contract.ts';
import { removeTemplate, templateFile, wordsOf } from '../contract/support/records.ts';
import { samplesOf } from '../contract/support/samples.ts';
import { openOwn, serviceOn, testService, type TestDesk } from '../service/support/desk.ts';
import { faults, lookAt } from '../survival/support/run.ts';
import { long, someOf } from '../support/form.ts';
import { smallDisk, type SmallDisk } from './support/smallDisk.ts';
import {
  arrive,
  prepare,
  strangersBundle,
  writingInputs,
  type Arrived,
  type Facts,
} from './support/writing.ts';

// On a disk that takes nothing, every call that writes is asked with an input that a disk with room
// would take; a new call of the contract does not compile before it has one, or is among those that
// read. Then every call is asked with inputs made from its own schema and of what stands in the
// records (in the short form a third of the calls, by turns): whatever else they come to, none may be a
// fault of the program.

/** Inputs a call; most get past its schema and name records that are there. */
const SAMPLES = long ? 100 : 4;
/** Calls that print or derive keys: one input is enough. */
const COSTLY = /^(handouts|goesHome|backup|export|practice\/year)/;
/** They open another file, or end what the next sample needs. */
const APART: ReadonlySet<CallName> = new Set(['app/open', 'lock/set', 'lock/now']);
const ASKED = CALL_NAMES.filter((name) => !APART.has(name));
/** What these cannot do they tell in their answer, and it can be done again. */
const TELLING: ReadonlySet<CallName> = new Set(['erasures/finish']);

const STATES = [
  { state: 'is filled while the records are open', trouble: 'disk full', early: false },
  { state: 'is full from the start', trouble: 'disk full', early: true },
  { state: 'is read-only', trouble: 'unwritable', early: true },
] as const;

/** A closed folder of the demonstration's records and of some of their own. */
let prepared: string;
let template: string;
let facts: Facts;
let bundle: Buffer;
let words: readonly unknown[];

beforeAll(async () => {
  template = await templateFile();
  prepared = join(template, '..', 'prepared');
  mkdirSync(prepared);
  copyFileSync(template, join(prepared, 'trotwell.sqlite'));
  facts = await prepare(serviceOn(prepared, '2026-03-02'));
  bundle = await strangersBundle();
  // Looked at in a copy: SQLite leaves something beside what it reads.
  const looked = join(template, '..', 'looked-at.sqlite');
  copyFileSync(join(prepared, 'trotwell.sqlite'), looked);
  words = wordsOf(looked);
}, 60_000);
afterAll(() => removeTemplate(template));

/** A disk, or the test is skipped with the reason. */
function diskOr(context: TestContext): SmallDisk {
  return smallDisk(24) ?? context.skip('No small disk can be made here: that takes root on Linux.');
}

/** Asks each writing call for what it would do on another disk. @returns what did not name the trouble */
async function notRefused(
  desk: TestDesk,
  arrived: Arrived | null,
  fill: () => void,
  trouble: string,
): Promise<string[]> {
  const other: string[] = [];
  for (const [name, input] of Object.entries(writingInputs(facts, arrived))) {
    if (input === null || TELLING.has(name as CallName)) continue;
    const answer = await desk.service.call(name as CallName, input as never);
    const said = answer.ok ? 'it was done' : (answer.error.trouble ?? answer.error.message);
    if (said !== trouble) other.push(`${name}: ${said}`);
    fill();
  }
  return other;
}

/** Asks everything with anything. @returns how many calls named a trouble */
async function refusingIn(desk: TestDesk, fill: () => void, trouble: string): Promise<number> {
  const refusing = new Set<CallName>();
  for (const name of someOf(ASKED, 3)) {
    const samples = samplesOf(contract[name].input, words);
    const numRuns = long || !COSTLY.test(name) ? SAMPLES : 1;
    for (const input of fc.sample(samples, { seed: 5, numRuns })) {
      const answer = await desk.service.call(name, input as never);
      expect(desk.log, name).toEqual([]);
      if (answer.ok || answer.error.kind !== 'storage') continue;
      expect(answer.error, name).toMatchObject({ trouble });
      refusing.add(name);
    }
    fill();
  }
  return refusing.size;
}

/** Folds the log of an open database in, so that it takes no room. */
function shorten(file: string): void {
  try {
    const db = new BetterSqlite3(file, { fileMustExist: true });
    db.pragma('wal_checkpoint(TRUNCATE)');
    db.close();
  } catch {
    // Closed meanwhile, and no room to open it: then it has no log either.
  }
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
      const refuse = (): void => {
        if (trouble === 'unwritable') return disk.writable(false);
        // What a refused save had written of the log is room for a small one.
        if (!early) shorten(join(disk.folder, 'trotwell.sqlite'));
        disk.fill();
      };
      try {
        cpSync(prepared, disk.folder, { recursive: true });
        if (early) refuse();
        const desk = testService(disk.folder);
        const limited = early ? trouble : null;
        expect(await desk.ok('app/status', {})).toMatchObject({ open: 'own', limited });
        const arrived = early ? null : await arrive(desk, facts, bundle);
        if (!early) refuse();
        expect(await notRefused(desk, arrived, refuse, trouble)).toEqual([]);
        const refusing = await refusingIn(desk, refuse, trouble);
        expect(await printed(desk, facts.dog.id)).toBe('%PDF-');
        const { length } = Object.values(writingInputs(facts, arrived)).filter(Boolean);
        console.log(
          `A disk that ${state}: ${length} calls that write say so, 0 do not; ` +
            `of all calls asked anything ${refusing} say so, 0 go wrong`,
        );

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
