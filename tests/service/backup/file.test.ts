import { createHash, randomBytes } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { extract, pack as tarPack } from 'tar-stream';
import { describe, expect, test } from 'vitest';
import { Refusal, type AppError } from '../../../electron/contract/errors.ts';
import { contentFile } from '../../../electron/service/backup/contents.ts';
import { pack, type PackSource } from '../../../electron/service/backup/pack.ts';
import { asksForPassphrase, unpack } from '../../../electron/service/backup/unpack.ts';
import { temporaryFolder } from '../support/desk.ts';

/** log2 of the cost of a try: the least that is opened, for tests of what does not depend on it. */
const QUICK = 10;
const PASSPHRASE = 'eleven geese on a gate';
const MEBIBYTE = 1024 * 1024;
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
  test('gives records and attachments back as they were', async () => {
    const folder = temporaryFolder();
    const source = sourceOf(folder, 3 * MEBIBYTE + 17, [0, 10, MEBIBYTE]);
    const file = join(folder, 'kept.trotwell');
    const written = await pack(file, source, passphrase, quiet, QUICK);
    expect(await asksForPassphrase(file)).toBe(passphrase !== null);
    const out = join(folder, 'out');
    expect(await unpack(file, passphrase, out, quiet)).toEqual(written);
    expect(readFileSync(join(out, 'trotwell.sqlite'))).toEqual(readFileSync(source.records));
    for (const hash of source.contents) {
      expect(sha256(readFileSync(contentFile(join(out, 'files'), hash)))).toBe(hash);
    }
  });

  // The head of an age file is its own: a changed byte there may say "wrong passphrase" as well.
  test('is refused wherever a byte is changed or the end is cut off', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    await pack(file, sourceOf(folder, 2 * MEBIBYTE, [500]), passphrase, quiet, QUICK);
    const whole = readFileSync(file);
    const bad = join(folder, 'bad.trotwell');
    const end = whole.length - (passphrase === null ? 2048 : 0);
    // In a tar archive the first 512 bytes are a head; of an age file three lines.
    const places = [3, 25, 130, 600, 700, 5000, 65_700, MEBIBYTE + 5, end - 400];
    for (const place of places) {
      const changed = Buffer.from(whole);
      changed[place]! ^= 1;
      writeFileSync(bad, changed);
      const error = await refusal(unpack(bad, passphrase, null, quiet));
      const early = place < 200 ? /damaged|not a backup|passphrase|cost/ : /damaged/;
      expect(error.message, `byte ${place}`).toMatch(early);
    }
    for (const length of [20, 200, 512, 5000, 65_536 + 200, MEBIBYTE, end - 1024, end - 1]) {
      writeFileSync(bad, whole.subarray(0, length));
      const error = await refusal(unpack(bad, passphrase, null, quiet));
      expect(error.message, `cut to ${length}`).toMatch(/damaged|not a backup/);
    }
  });

  test('names attachments that were missing or damaged, and keeps the others', async () => {
    const folder = temporaryFolder();
    const source = sourceOf(folder, 100, [30, 40]);
    writeFileSync(contentFile(source.store, source.contents[0]!), 'something else');
    const gone = sha256(Buffer.from('never stored'));
    const asked = { ...source, contents: [...source.contents, gone] };
    const manifest = await pack(join(folder, 'a'), asked, passphrase, quiet, QUICK);
    expect(manifest.missing.sort()).toEqual([source.contents[0], gone].sort());
    expect(manifest.contents.map(({ hash }) => hash)).toEqual([source.contents[1]]);
  });

  test('leaves nothing behind when the work is stopped', async () => {
    const folder = temporaryFolder();
    const source = sourceOf(folder, 3 * MEBIBYTE, []);
    const before = readdirSync(folder);
    const stop = async ({ done }: { done: number }): Promise<void> => {
      if (done > MEBIBYTE) throw new Error('stopped');
    };
    await expect(pack(join(folder, 'a'), source, passphrase, stop, QUICK)).rejects.toThrow(
      'stopped',
    );
    expect(readdirSync(folder)).toEqual(before);
  });
});

interface PackedEntry {
  name: string;
  content: Buffer;
  type?: 'file' | 'contiguous-file';
}

/** The list with a word in it changed, and where asked the sum behind it made to agree. */
function relisted(entries: PackedEntry[], from: RegExp, to: string, summed: boolean): void {
  const list = Buffer.from(entries[0]!.content.toString('utf8').replace(from, to));
  expect(list).not.toEqual(entries[0]!.content);
  entries[0]!.content = list;
  if (summed) entries[1]!.content = Buffer.from(`${sha256(list)}  manifest.json\n`);
}

/** A plain backup with its entries changed; their sizes are made to agree. */
async function rewritten(file: string, change: (entries: PackedEntry[]) => void): Promise<string> {
  const entries: PackedEntry[] = [];
  const reading = extract();
  reading.end(readFileSync(file));
  for await (const entry of reading) {
    entries.push({ name: entry.header.name, content: await buffer(entry) });
  }
  change(entries);
  const tar = tarPack();
  for (const { name, content, type = 'file' } of entries) tar.entry({ name, type }, content);
  tar.finalize();
  const changed = `${file}.changed`;
  writeFileSync(changed, await buffer(tar));
  return changed;
}

describe('an archive from elsewhere', () => {
  test.each<[string, Parameters<typeof rewritten>[1]]>([
    ['lists other records', (entries) => void (entries[3]!.content = Buffer.from('others'))],
    ['has a changed list', (entries) => void (entries[0]!.content[40]! ^= 1)],
    ['says another practice', (entries) => relisted(entries, /Invented/, 'Imagined', false)],
    ['lists another size', (entries) => relisted(entries, /"bytes":\s*100/, '"bytes":101', true)],
    ['holds what is no plain file', (entries) => void (entries[3]!.type = 'contiguous-file')],
    ['has another file before its parts', (entries) => void (entries[2]!.name = 'NOTES.txt')],
    ['leads out of its folder', (entries) => void (entries[4]!.name = '../../elsewhere')],
    ['holds a file more', (entries) => void entries.push({ ...entries[4]!, name: 'files/x' })],
    ['holds a file twice', (entries) => void entries.push(entries[4]!)],
    ['lacks a file', (entries) => void entries.pop()],
    ['has them in another order', (entries) => void entries.reverse()],
  ])('that %s is refused, and nothing lies elsewhere', async (_what, change) => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    await pack(file, sourceOf(folder, 100, [30]), null, quiet, QUICK);
    const before = readdirSync(folder);
    const changed = await rewritten(file, change);
    const out = join(folder, 'deep', 'out');
    expect((await refusal(unpack(changed, null, out, quiet))).message).toContain('damaged');
    const left = readdirSync(folder).filter((name) => !before.includes(name));
    expect(left.sort()).toEqual(
      left.includes('deep') ? ['deep', 'kept.trotwell.changed'] : ['kept.trotwell.changed'],
    );
  });

  test('is taken whole where only its list was written anew', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    await pack(file, sourceOf(folder, 100, [30]), null, quiet, QUICK);
    const changed = await rewritten(file, (entries) =>
      relisted(entries, /Invented/, 'Imagined', true),
    );
    expect((await unpack(changed, null, null, quiet)).summary.practiceName).toMatch(/^Imagined/);
  });

  test.each([
    ['nested too deeply', '['.repeat(100_000)],
    ['of millions of parts', `[${'[],'.repeat(1_500_000)}0]`],
  ])('whose list is %s is refused before it is parsed', async (_what, list) => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    await pack(file, sourceOf(folder, 100, []), null, quiet, QUICK);
    const changed = await rewritten(file, (entries) => relisted(entries, /^.*$/s, list, true));
    const error = await refusal(unpack(changed, null, null, quiet));
    expect(error.message).toContain('holds more, or goes deeper, than any');
  });

  test('whose list is longer than any of ours is refused before it is read', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    await pack(file, sourceOf(folder, 100, []), null, quiet, QUICK);
    const long = Buffer.alloc(64 * MEBIBYTE + 1, ' ');
    const changed = await rewritten(file, (entries) => void (entries[0]!.content = long));
    expect((await refusal(unpack(changed, null, null, quiet))).message).toContain('too long');
  });

  // RFC 7914's cost, as the head of an age file says it; 2^20 takes many seconds and a gibibyte.
  test.each([1, 9, 19, 20, 30])(
    'that asks for a cost of 2^%i is refused at once',
    async (factor) => {
      const folder = temporaryFolder();
      const file = join(folder, 'kept.trotwell');
      await pack(file, sourceOf(folder, 100, []), PASSPHRASE, quiet, QUICK);
      const whole = readFileSync(file).toString('latin1');
      writeFileSync(file, whole.replace(/^(.*\n-> scrypt \S+) \d+\n/, `$1 ${factor}\n`), 'latin1');
      const error = await refusal(unpack(file, PASSPHRASE, null, quiet));
      expect(error.message).toContain(`a cost of 2^${factor} `);
    },
  );
});

describe('the passphrase', () => {
  test('that is wrong is told apart from a damaged file', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    await pack(file, sourceOf(folder, 100, []), PASSPHRASE, quiet, QUICK);
    const error = await refusal(unpack(file, 'eleven geese on a gata', null, quiet));
    expect(error.kind).toBe('input');
    expect(error.message).toContain('That alone does not mean that the file is damaged');
    expect((await refusal(unpack(file, null, null, quiet))).message).toContain('passphrase');
  });

  test('opens the file however its accents were typed', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    await pack(file, sourceOf(folder, 100, []), 'caf\u00e9 at the gate', quiet, QUICK);
    await expect(unpack(file, 'cafe\u0301 at the gate', null, quiet)).resolves.toBeDefined();
  });

  test('leaves no readable trace in the file', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'kept.trotwell');
    const source = sourceOf(folder, 100, []);
    writeFileSync(source.records, 'Bramble and her owner, again and again');
    await pack(file, source, PASSPHRASE, quiet, QUICK);
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

// Written by the last version that wrote the first format of our own; it is read for one release.
describe('a backup of the first format', () => {
  const golden = (name: string): string =>
    join(import.meta.dirname, 'golden', `format1-${name}.trotwell`);

  test.each([
    ['plain', null],
    ['passphrase', PASSPHRASE],
  ])('(%s) is still read whole', async (name, passphrase) => {
    expect(await asksForPassphrase(golden(name))).toBe(passphrase !== null);
    const out = temporaryFolder();
    const { summary, contents } = await unpack(golden(name), passphrase, out, quiet);
    expect(summary.practiceName).toBe('Invented practice');
    expect(readFileSync(join(out, 'trotwell.sqlite'), 'utf8')).toBe('invented records\n');
    const letter = contentFile(join(out, 'files'), contents[0]!.hash);
    expect(readFileSync(letter, 'utf8')).toBe('an invented letter\n');
  });

  test.each(['plain', 'passphrase'])('(%s) is refused wherever a byte is changed', async (name) => {
    const whole = readFileSync(golden(name));
    const bad = join(temporaryFolder(), 'bad.trotwell');
    const passphrase = name === 'plain' ? null : PASSPHRASE;
    for (const place of [10, 20, 60, 111, 112, whole.length - 1]) {
      const changed = Buffer.from(whole);
      changed[place]! ^= 1;
      writeFileSync(bad, changed);
      const error = await refusal(unpack(bad, passphrase, null, quiet));
      expect(error.message, `byte ${place}`).toContain('damaged');
    }
    for (const length of [20, 111, 120]) {
      writeFileSync(bad, whole.subarray(0, length));
      expect((await refusal(unpack(bad, passphrase, null, quiet))).message).toContain('damaged');
    }
  });

  /** A plain file with its head or its body changed, and every sum made to agree (format1.ts). */
  function resealed(change: { head?: (head: Buffer) => void; body?: (body: Buffer) => Buffer }) {
    const whole = readFileSync(golden('plain'));
    const head = Buffer.from(whole.subarray(0, 112));
    const was = Buffer.from(whole.subarray(112, -16));
    change.head?.(head);
    createHash('sha256').update(head.subarray(0, 80)).digest().copy(head, 80);
    const body = change.body?.(was) ?? was;
    // Its one chunk is the last: seven bytes of the head, the number 0, and 1.
    const nonce = Buffer.concat([head.subarray(34, 41), Buffer.from([0, 0, 0, 0, 1])]);
    const headSum = createHash('sha256').update(head).digest();
    const tag = createHash('sha256').update(headSum).update(nonce).update(body).digest();
    const file = join(temporaryFolder(), 'resealed.trotwell');
    writeFileSync(file, Buffer.concat([head, body, tag.subarray(0, 16)]));
    return file;
  }

  test('is read after it was sealed anew, so what follows is refused for what it is', async () => {
    await expect(unpack(resealed({}), null, null, quiet)).resolves.toBeDefined();
  });

  const at = (place: number, byte: number) => (bytes: Buffer) => {
    bytes.writeUInt8(byte, place);
    return bytes;
  };
  test.each<[string, Parameters<typeof resealed>[0], string]>([
    ['its last part is changed', { body: (body) => at(body.length - 2, 7)(body) }, 'not what it'],
    [
      'something follows its parts',
      { body: (body) => Buffer.concat([body, Buffer.from('x')]) },
      'more in it than it lists',
    ],
    ['its list is longer than any', { body: at(0, 0xff) }, 'too long'],
    ['it names a later format', { head: at(9, 2) }, 'which no release wrote'],
    ['it names another size of chunks', { head: at(17, 1) }, 'which no release wrote'],
  ])('is refused when %s', async (_what, change, why) => {
    const { message } = await refusal(unpack(resealed(change), null, null, quiet));
    expect(message).toContain('damaged');
    expect(message).toContain(why);
  });

  test.each([1, 20])('that asks for a cost of 2^%i is refused at once', async (log2N) => {
    const changed = readFileSync(golden('passphrase'));
    changed[11] = log2N;
    createHash('sha256').update(changed.subarray(0, 80)).digest().copy(changed, 80);
    const bad = join(temporaryFolder(), 'bad.trotwell');
    writeFileSync(bad, changed);
    const error = await refusal(unpack(bad, PASSPHRASE, null, quiet));
    expect(error.message).toContain(`a cost of 2^${log2N} `);
  });

  test.each([12, 13])('with another cost at byte %i of its head is refused', async (place) => {
    const changed = readFileSync(golden('passphrase'));
    changed[place]! ^= 4;
    createHash('sha256').update(changed.subarray(0, 80)).digest().copy(changed, 80);
    const bad = join(temporaryFolder(), 'bad.trotwell');
    writeFileSync(bad, changed);
    const error = await refusal(unpack(bad, PASSPHRASE, null, quiet));
    expect(error.message).toContain('asks for the impossible');
  });
});
