import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CALL_NAMES } from '../../electron/contract/callNames.ts';
import { contract, type CallName } from '../../electron/contract/contract.ts';
import type { Answer, ErrorKind } from '../../electron/contract/errors.ts';
import {
  deskOn,
  removeTemplate,
  templateFile,
  wordsOf,
  type FuzzedDesk,
} from './support/records.ts';
import { samplesOf } from './support/samples.ts';
import { spoilt } from './support/spoiling.ts';
import { WORDS } from './support/words.ts';

/** Inputs a call that get past its schema, and as many of which most do not; more by option. */
const INPUTS = Number(process.env['FUZZ_INPUTS'] ?? 500);
/** Calls that derive a key, go through a whole practice, or print: a share of the inputs is enough. */
const COSTLY: Partial<Record<CallName, number>> = {
  'backup/make': 0.04,
  'app/open': 0.1,
  'erasures/finish': 0.2,
  'export/make': 0.2,
  'practice/year': 0.2,
  'handouts/render': 0.2,
  'handouts/batch': 0.2,
  'handouts/bundle': 0.2,
  'goesHome/mail': 0.2,
};
/** A slow machine may take its time for a call, in ms. */
const LONGEST_MS = 240_000;
const SEED = Number(process.env['FUZZ_SEED'] ?? 1);
const LONGEST_MESSAGE = 1_000;

/** What a caller may be told. A fault of the program (`internal`) is never the caller's doing. */
const NAMED = [
  'input',
  'not-found',
  'conflict',
  'no-practice',
  'cancelled',
  'locked',
  'storage',
] as const satisfies readonly ErrorKind[];

/** A stack, a path, a statement, or the words of a library. */
const INSIDES =
  /\bat (async )?\S+ \(|\n\s+at |node_modules|node:internal|file:\/\/|\.(ts|mjs|js|cjs|sqlite)\b|SQLITE_|SELECT |INSERT |Zod|RangeError|TypeError/;
const REFUSED_BY_A_CHECK = 'refused an impossible value';

interface Figures {
  ok: number;
  errors: number;
  reached: number;
}

let template: string;
let words: readonly unknown[];
const figures = new Map<CallName, Figures>();
const ordinaryKeys = Object.getOwnPropertyNames(Object.prototype).sort();

beforeAll(async () => {
  template = await templateFile();
  words = [...wordsOf(template), ...WORDS];
}, 60_000);

afterAll(() => {
  removeTemplate(template);
  const sum = (of: keyof Figures) => [...figures.values()].reduce((all, one) => all + one[of], 0);
  const [ok, errors, reached] = [sum('ok'), sum('errors'), sum('reached')];
  console.log(
    `Contract fuzz: ${figures.size} calls, ${ok + errors} inputs, ` +
      `${reached} past the schema, ${ok} answered, ${errors} refused by a named error, 0 other.`,
  );
});

function assertAnswer(answer: Answer<unknown>, folder: string): void {
  if (answer.ok) return;
  const { error } = answer;
  expect(NAMED).toContain(error.kind);
  const messages = [error.message, ...(error.fields ?? []).map(({ message }) => message)];
  for (const message of messages) {
    expect(message.length).toBeGreaterThan(0);
    expect(message.length).toBeLessThan(LONGEST_MESSAGE);
    expect(message).not.toMatch(INSIDES);
    expect(message).not.toContain(folder);
    expect(message).not.toContain(REFUSED_BY_A_CHECK);
  }
}

/** Calls once, and sees to it that an error leaves records and folder as they were. */
async function tryOne(desk: FuzzedDesk, name: CallName, input: unknown, reaches: boolean) {
  const files = reaches ? desk.files() : '';
  const version = desk.version();
  const answer = await desk.service.call(name, input as never);
  assertAnswer(answer, desk.folder);
  if (!answer.ok) {
    expect(desk.version()).toBe(version);
    if (reaches) expect(desk.files()).toBe(files);
  }
  return answer.ok;
}

describe('whatever is sent', () => {
  test.each(CALL_NAMES)(
    '%s answers or names an error, and keeps the records whole',
    async (name) => {
      const desk = await deskOn(template);
      const schema = contract[name].input;
      const counted: Figures = { ok: 0, errors: 0, reached: 0 };
      const samples = samplesOf(schema, words);
      const runs = Math.ceil(INPUTS * (COSTLY[name] ?? 1));

      async function one(input: unknown): Promise<void> {
        const reaches = schema.safeParse(input).success;
        const ok = await tryOne(desk, name, input, reaches);
        if (reaches) counted.reached += 1;
        counted[ok ? 'ok' : 'errors'] += 1;
      }

      const any = spoilt(samples);
      const fitting = fc
        .oneof({ weight: 3, arbitrary: samples }, { weight: 1, arbitrary: any })
        .filter((input) => schema.safeParse(input).success);
      for (const inputs of [fitting, any]) {
        await fc.assert(fc.asyncProperty(inputs, one), {
          seed: SEED,
          numRuns: runs,
          endOnFailure: true,
        });
      }
      figures.set(name, counted);
      expect(counted.ok + counted.errors).toBe(2 * runs);
      expect(counted.reached).toBeGreaterThanOrEqual(runs);
      expect(Object.getOwnPropertyNames(Object.prototype).sort()).toEqual(ordinaryKeys);
      expect(desk.log).toEqual([]);
      expect(desk.faults()).toEqual([]);
      expect(await desk.service.call('app/status', {})).toMatchObject({ ok: true });
      await desk.close();
    },
    LONGEST_MS,
  );
});
