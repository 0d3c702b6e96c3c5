import fc from 'fast-check';
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CALL_NAMES } from '../../electron/contract/callNames.ts';
import { contract, type CallName } from '../../electron/contract/contract.ts';
import {
  deskOn,
  removeTemplate,
  templateFile,
  wordsOf,
  type FuzzedDesk,
} from './support/records.ts';
import { samplesOf } from './support/samples.ts';
import { WORDS } from './support/words.ts';

// Every call is asked with inputs its schema accepts, ids of real records among them: an input that
// stops at the schema would show nothing about the lock.
const SAMPLES = 400;
const ASKED = 5;
/** What a locked window needs: whether it is locked, the way in, and the end of what it had begun. */
const ANSWERED = ['app/status', 'lock/open', 'lock/now', 'work/state', 'work/cancel'] as const;
const PASSPHRASE = 'eleven geese on a gate';

let template: string;
let words: readonly unknown[];
let desk: FuzzedDesk;
/** Tokens of a file that came in and of one that was made, from before it was locked. */
let tokens: { taken: string; made: string };

beforeAll(async () => {
  template = await templateFile();
  words = [...wordsOf(template), ...WORDS];
  desk = await deskOn(template);
  const made = await desk.service.call('backup/make', { passphrase: null, workId: randomUUID() });
  const taken = await desk.service.takeIn('kept.trotwell', template, 1e9);
  if (!made.ok || !taken.ok) return expect.fail('no files');
  tokens = { taken: taken.value.token, made: made.value.token };
  const set = { passphrase: PASSPHRASE, present: null, idleMinutes: 5 };
  expect((await desk.service.call('lock/set', set)).ok).toBe(true);
  expect((await desk.service.call('lock/now', {})).ok).toBe(true);
}, 60_000);

afterAll(async () => {
  await desk?.close();
  removeTemplate(template);
});

/** Inputs that the call's schema accepts. */
function accepted(name: CallName): unknown[] {
  const schema = contract[name].input;
  return fc
    .sample(samplesOf(schema, words), { seed: 1, numRuns: SAMPLES })
    .filter((input) => schema.safeParse(input).success)
    .slice(0, ASKED);
}

describe('while the records are locked', () => {
  test.each(CALL_NAMES.filter((name) => !ANSWERED.some((each) => each === name)))(
    '%s is refused, whatever it asks for',
    async (name) => {
      const inputs = accepted(name);
      expect(inputs.length).toBeGreaterThan(0);
      const before = { version: desk.version(), files: desk.files() };
      for (const input of inputs) {
        const answer = await desk.service.call(name, input as never);
        expect(answer).toEqual({
          ok: false,
          error: { kind: 'locked', message: 'The records are locked. Give the passphrase.' },
        });
      }
      expect({ version: desk.version(), files: desk.files() }).toEqual(before);
    },
  );

  test('what is answered tells nothing of the records', async () => {
    const status = await desk.service.call('app/status', {});
    if (!status.ok) return expect.fail(status.error.message);
    const { version, today, lock, ...rest } = status.value;
    expect(lock).toEqual({ locked: true, idleMinutes: 5 });
    expect([version, today]).toEqual(['0.0.0-test', '2026-03-02']);
    expect(rest).toEqual({
      ownExists: true,
      open: 'own',
      folder: '',
      practice: null,
      logo: null,
      rules: [],
      shelf: { foods: [], phrases: [] },
      trouble: null,
      limited: null,
    });
    for (const name of ['work/state', 'work/cancel'] as const) {
      expect(await desk.service.call(name, { workId: randomUUID() })).toEqual({
        ok: true,
        value: null,
      });
    }
  });

  test('files neither come in nor go out', async () => {
    const refused = { ok: false, error: { kind: 'locked' } };
    expect(await desk.service.takeIn('kept.trotwell', template, 1e9)).toMatchObject(refused);
    for (const token of [tokens.made, tokens.taken]) {
      expect(desk.service.giveOut(token)).toMatchObject(refused);
      const target = join(desk.folder, 'taken out');
      expect(await desk.service.writeOut(token, target)).toMatchObject(refused);
    }
    expect(desk.files()).not.toContain('taken out');
  });
});
