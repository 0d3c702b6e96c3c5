import { createHash, randomBytes } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { Refusal, type AppError } from '../../../electron/contract/errors.ts';
import { contentFile } from '../../../electron/service/backup/contents.ts';
import { CHUNK_BYTES, HEADER_BYTES } from '../../../electron/service/backup/header.ts';
import { pack, type PackSource } from '../../../electron/service/backup/pack.ts';
import { asksForPassphrase, unpack } from '../../../electron/service/backup/unpack.ts';
import { temporaryFolder } from '../desk.ts';

/** Quick, for tests of what does not depend on the cost. */
const CHEAP = { log2N: 4, r: 8, p: 1 };
const PASSPHRASE = 'eleven geese on a gate';
const quiet = async (): Promise<void> => undefined;

const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

/** A source whose records and attachments are of the given sizes, in bytes. */
function sourceOf(
  folder: string,
  recordsBytes: number,
  contentBytes: readonly number[],
): PackSource {
  const records = join(folder, 'copy.sqlite');
  writeFileSync(records, randomBytes(recordsBytes));
  const store = join(folder, 'files');
  const contents = contentBytes.map((size) => {
    const bytes = randomBytes(size);
    const file = contentFile(store, sha256(bytes));
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, bytes);
    return sha256(bytes);
  });
  const summary = {
    practiceName: 'Invented practice',
    schemaVersion: 2,
    owners: 1,
    dogs: 2,
    visits: 3,
    plans: 4,
    attachments: contents.length,
    newestEntry: null,
  };
  return { records, summary, store, contents, madeAt: '2026-03-02T12:00:00.000Z', program: '0' };
}

async function refusal(action: Promise<unknown>): Promise<AppError> {
  try {
    await action;
  } catch (error) {
    if (error instanceof Refusal) return error.error;
    throw error;
  }
  return expect.fail('nothing was refused');
}

describe.each([null, PASSPHRASE])('a backup file (passphrase: %s)', (passphrase) => {
  test.each([1, 4096, CHUNK_BYTES - 1, CHUNK_BYTES, CHUNK_BYTES + 1, 3 * CHUNK_BYTES + 17])(
    'gives %i bytes of records and the attachments back as they were',
    async (size) => {
      const folder = temporaryFolder();
      const source = sourceOf(folder, size, [0, 10, CHUNK_BYTES]);
      const file = join(folder, 'kept.trotwell');
      const written = await pack(file, source, passphrase, quiet, CHEAP);
      expect(await asksForPassphrase(file)).toBe(passphrase !== null);
      const out = join(folder, 'out');
      expect(await unpack(file, passphrase, out, quiet)).toEqual(written);
      expect(readFileSync(join(out, 'trotwell.sqlite'))).toEqual(readFileSync(source.records));
      for (const hash of source.contents) {
        expect(sha256(readFileSync(contentFile(join(out, 'files'), hash)))).toBe(hash);
      }
    },
  );

  test('may end exactly at the end of a chunk', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    // The list of contents stands before the records; a first backup tells how long it is.
    const size = 2 * CHUNK_BYTES - 1000;
    const trial = await pack(file, sourceOf(folder, size, []), passphrase, quiet, CHEAP);
    const listed = 4 + Buffer.byteLength(JSON.stringify(trial));
    const source = sourceOf(folder, 2 * CHUNK_BYTES - listed, []);
    const written = await pack(file, source, passphrase, quiet, CHEAP);
    expect(statSync(file).size).toBe(HEADER_BYTES + 2 * (CHUNK_BYTES + 16));
    expect(await unpack(file, passphrase, null, quiet)).toEqual(written);
  });

  test('is found damaged wherever a byte is changed or the end is cut off', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    await pack(file, sourceOf(folder, 2 * CHUNK_BYTES, [500]), passphrase, quiet, CHEAP);
    const whole = readFileSync(file);
    const stored = CHUNK_BYTES + 16;
    const places = [
      10,
      11,
      14,
      20,
      36,
      45,
      60,
      90,
      HEADER_BYTES - 1,
      HEADER_BYTES,
      HEADER_BYTES + stored - 1,
      HEADER_BYTES + stored,
      whole.length - 17,
      whole.length - 1,
    ];
    const bad = join(folder, 'bad.trotwell');
    for (const place of places) {
      const changed = Buffer.from(whole);
      changed[place]! ^= 1;
      writeFileSync(bad, changed);
      const error = await refusal(unpack(bad, passphrase, null, quiet));
      expect(error.kind, `byte ${place}`).toBe('storage');
      expect(error.message, `byte ${place}`).toContain('damaged');
    }
    for (const length of [
      20,
      HEADER_BYTES - 1,
      HEADER_BYTES,
      HEADER_BYTES + 5,
      HEADER_BYTES + stored,
      HEADER_BYTES + 2 * stored,
      whole.length - 1,
    ]) {
      writeFileSync(bad, whole.subarray(0, length));
      const error = await refusal(unpack(bad, passphrase, null, quiet));
      expect(error.message, `cut to ${length}`).toContain('damaged');
    }
    writeFileSync(bad, Buffer.concat([whole, Buffer.from('x')]));
    expect((await refusal(unpack(bad, passphrase, null, quiet))).message).toContain('damaged');
  });

  test('is found damaged when chunks are swapped or left out', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    await pack(file, sourceOf(folder, 3 * CHUNK_BYTES, []), passphrase, quiet, CHEAP);
    const whole = readFileSync(file);
    const stored = CHUNK_BYTES + 16;
    const chunk = (n: number): Buffer =>
      whole.subarray(HEADER_BYTES + n * stored, HEADER_BYTES + (n + 1) * stored);
    const header = whole.subarray(0, HEADER_BYTES);
    const orders = [
      [1, 0, 2, 3],
      [0, 2, 3],
      [0, 1, 2],
      [0, 0, 1, 2, 3],
    ];
    for (const order of orders) {
      writeFileSync(file, Buffer.concat([header, ...order.map(chunk)]));
      const error = await refusal(unpack(file, passphrase, null, quiet));
      expect(error.message, order.join()).toContain('damaged');
    }
  });

  test('names attachments that were missing or damaged, and keeps the others', async () => {
    const folder = temporaryFolder();
    const source = sourceOf(folder, 100, [30, 40]);
    writeFileSync(contentFile(source.store, source.contents[0]!), 'something else');
    const gone = sha256(Buffer.from('never stored'));
    const asked = { ...source, contents: [...source.contents, gone] };
    const manifest = await pack(join(folder, 'a'), asked, passphrase, quiet, CHEAP);
    expect(manifest.missing.sort()).toEqual([source.contents[0], gone].sort());
    expect(manifest.contents.map(({ hash }) => hash)).toEqual([source.contents[1]]);
  });

  test('leaves nothing behind when the work is stopped', async () => {
    const folder = temporaryFolder();
    const source = sourceOf(folder, 3 * CHUNK_BYTES, []);
    const before = readdirSync(folder);
    const stop = async ({ done }: { done: number }): Promise<void> => {
      if (done > CHUNK_BYTES) throw new Error('stopped');
    };
    await expect(pack(join(folder, 'a'), source, passphrase, stop, CHEAP)).rejects.toThrow(
      'stopped',
    );
    expect(readdirSync(folder)).toEqual(before);
  });
});

describe('the passphrase', () => {
  test('that is wrong is told apart from a damaged file', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    await pack(file, sourceOf(folder, 100, []), PASSPHRASE, quiet, CHEAP);
    const error = await refusal(unpack(file, 'eleven geese on a gata', null, quiet));
    expect(error.kind).toBe('input');
    expect(error.message).toContain('not damaged');
    expect((await refusal(unpack(file, null, null, quiet))).message).toContain('passphrase');
  });

  test('opens the file however its accents were typed', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    await pack(file, sourceOf(folder, 100, []), 'caf\u00e9 at the gate', quiet, CHEAP);
    await expect(unpack(file, 'cafe\u0301 at the gate', null, quiet)).resolves.toBeDefined();
  });

  test('leaves no readable trace in the file', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    const source = sourceOf(folder, 100, []);
    writeFileSync(source.records, 'Bramble and her owner, again and again');
    await pack(file, source, PASSPHRASE, quiet, CHEAP);
    const text = readFileSync(file).toString('latin1');
    for (const word of ['Bramble', 'Invented practice', PASSPHRASE])
      expect(text).not.toContain(word);
  });
});

test('another file is not taken for a backup', async () => {
  const file = join(temporaryFolder(), 'letter.pdf');
  writeFileSync(file, '%PDF-1.7 '.repeat(100));
  expect((await refusal(unpack(file, null, null, quiet))).message).toContain('not a backup');
});
