import fc from 'fast-check';
import type { z } from 'zod';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CALL_NAMES } from '../../electron/contract/callNames.ts';
import { nothing } from '../../electron/contract/calls/call.ts';
import { contract, type CallName, type InputOf } from '../../electron/contract/contract.ts';
import type { Answer, ErrorKind } from '../../electron/contract/errors.ts';
import {
  deskOn,
  idsOfDogs,
  removeTemplate,
  templateFile,
  TODAY,
  wordsOf,
  type FuzzedDesk,
} from './support/records.ts';
import { samplesOf } from './support/samples.ts';
import { spoilt } from './support/spoiling.ts';
import { WORDS } from './support/words.ts';

/** Inputs a call that get past its schema, and a share of as many of which most do not; more by option. */
const INPUTS = Number(process.env['FUZZ_INPUTS'] ?? 500);
/** Calls that derive a key, print, open a practice or read much of one: a share of the inputs will do. */
const COSTLY: Partial<Record<CallName, number>> = {
  'backup/make': 0.004,
  'lock/set': 0.01,
  'app/open': 0.02,
  'handouts/batch': 0.03,
  'goesHome/mail': 0.03,
  'handouts/render': 0.05,
  'goesHome/calendar': 0.1,
  'export/make': 0.1,
  'handouts/bundle': 0.1,
  'practice/year': 0.1,
  'dogs/list': 0.1,
  'dogs/find': 0.1,
  'erasures/finish': 0.2,
  'dogs/file': 0.2,
  'runs/read': 0.2,
  'runs/table': 0.2,
};
const ANY_SHARE = 0.2;
/** Of a call that takes nothing, every input that fits is the same one. */
const OF_NOTHING = 5;
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
let dogIds: readonly string[];
const figures = new Map<CallName, Figures>();
const ordinaryKeys = Object.getOwnPropertyNames(Object.prototype).sort();

beforeAll(async () => {
  template = await templateFile();
  words = [...wordsOf(template), ...WORDS];
  dogIds = idsOfDogs(template);
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

/** What is wrong with an answer; an `expect` a message would take longer than the call. */
function wrongIn(answer: Answer<unknown>, folder: string): unknown[] {
  if (answer.ok) return [];
  const { error } = answer;
  const messages = [error.message, ...(error.fields ?? []).map(({ message }) => message)];
  return [
    ...((NAMED as readonly ErrorKind[]).includes(error.kind) ? [] : [error]),
    ...messages.filter(
      (message) =>
        message.length === 0 ||
        message.length >= LONGEST_MESSAGE ||
        INSIDES.test(message) ||
        message.includes(folder) ||
        message.includes(REFUSED_BY_A_CHECK),
    ),
  ];
}

type Series = readonly [inputs: fc.Arbitrary<unknown>, runs: number];

/** Asks a call, and sees to it that an error leaves records and folder as they were. */
async function asked(desk: FuzzedDesk, name: CallName, series: readonly Series[]) {
  const schema = contract[name].input;
  const counted: Figures = { ok: 0, errors: 0, reached: 0 };
  const state = (): string => `${desk.version()}\n${desk.files()}`;
  let before = state();

  async function one(input: unknown): Promise<void> {
    const reaches = schema.safeParse(input).success;
    const version = desk.version();
    const answer = await desk.service.call(name, input as never);
    counted[answer.ok ? 'ok' : 'errors'] += 1;
    const wrong = wrongIn(answer, desk.folder);
    if (wrong.length > 0) expect(wrong).toEqual([]);
    if (!reaches) {
      if (desk.version() !== version) expect.fail('changed by a call that was refused');
      return;
    }
    counted.reached += 1;
    const after = state();
    if (after === before) return;
    expect(answer, 'changed by a call that was refused').toMatchObject({ ok: true });
    before = after;
  }

  for (const [inputs, numRuns] of series) {
    await fc.assert(fc.asyncProperty(inputs, one), { seed: SEED, numRuns, endOnFailure: true });
  }
  return counted;
}

/** Of random visits hardly one could be: in some, what has to agree with the records does. */
function someAgreeing(visits: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> {
  const agreeing = fc.tuple(visits, fc.constantFrom(...dogIds)).map(([sample, dogId]) => {
    const { visit, ...rest } = sample as InputOf<'visits/save'>;
    const ofDog = { ...visit, dogId, day: TODAY, wellSince: null, targetWeightKg: null };
    return { ...rest, id: null, visit: ofDog, sessions: [], plan: null, review: null, food: null };
  });
  return fc.oneof({ weight: 3, arbitrary: visits }, { weight: 1, arbitrary: agreeing });
}

/** The inputs of a call: those that fit its schema, and any. */
function inputsOf(name: CallName): readonly [fitting: Series, any: Series] {
  const schema: z.ZodType = contract[name].input;
  const share = COSTLY[name] ?? 1;
  const random = samplesOf(schema, words);
  const samples = name === 'visits/save' ? someAgreeing(random) : random;
  const any = spoilt(samples);
  const fitting = fc
    .oneof({ weight: 3, arbitrary: samples }, { weight: 1, arbitrary: any })
    .filter((input) => schema.safeParse(input).success);
  const runs = Math.ceil(INPUTS * share);
  return [
    [fitting, schema === nothing ? Math.min(runs, OF_NOTHING) : runs],
    [any, Math.ceil(runs * ANY_SHARE)],
  ];
}

describe('whatever is sent', () => {
  test.each(CALL_NAMES)(
    '%s answers or names an error, and keeps the records whole',
    async (name) => {
      const desk = await deskOn(template);
      const series = inputsOf(name);
      const counted = await asked(desk, name, series);
      figures.set(name, counted);
      const [[, fitting], [, any]] = series;
      expect(counted.ok + counted.errors).toBe(fitting + any);
      expect(counted.reached).toBeGreaterThanOrEqual(fitting);
      if (name === 'visits/save') expect(counted.ok).toBeGreaterThan(fitting / 50);
      expect(Object.getOwnPropertyNames(Object.prototype).sort()).toEqual(ordinaryKeys);
      expect(desk.log).toEqual([]);
      expect(desk.faults()).toEqual([]);
      expect(await desk.service.call('app/status', {})).toMatchObject({ ok: true });
      await desk.close();
    },
    LONGEST_MS,
  );
});
