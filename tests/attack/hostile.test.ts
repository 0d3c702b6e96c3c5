import { randomUUID } from 'node:crypto';
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { beforeAll, describe, expect, test } from 'vitest';
import { blankClient } from '../../electron/contract/records/forms.ts';
import { sealed } from '../../electron/service/backup/container.ts';
import { openOwn, temporaryFolder, type TestDesk } from '../service/support/desk.ts';
import { fullRecord } from '../service/exchange/support/fullRecord.ts';
import { faults, lookAt } from '../survival/support/run.ts';
import { chance } from './support/chance.ts';
import { long } from '../support/form.ts';

// Backups and bundles that were changed by accident or on purpose. Each is refused by a named error,
// or comes to what the sound file came to; the records and their folder stay as they were.

const FILES = long ? 400 : 30;
const PASSPHRASE = 'eleven geese on a gate';

type Kind = 'backup' | 'backup with a passphrase' | 'bundle';
const sound = new Map<Kind, Buffer>();

/** Hands a file over, as a host does. */
async function taken(desk: TestDesk, bytes: Buffer): Promise<string> {
  const path = join(temporaryFolder(), 'handed over');
  writeFileSync(path, bytes);
  const answer = await desk.service.takeIn('handed over', path, 1e9);
  return answer.ok ? answer.value.token : expect.fail(answer.error.message);
}

/** The same as with a passphrase; a try of it costs the least that is opened, not a second each. */
async function inAge(backup: Buffer): Promise<Buffer> {
  return buffer(await sealed(Readable.from([backup]), PASSPHRASE, 10));
}

beforeAll(async () => {
  const desk = await openOwn();
  await fullRecord(desk, 'Odette Fenn', 'Bramble');
  const workId = randomUUID();
  const given = async (token: string): Promise<Buffer> => {
    const file = desk.service.giveOut(token);
    return readFileSync(file.ok ? file.value.file : expect.fail(file.error.message));
  };
  const { token } = await desk.ok('backup/make', { passphrase: null, workId });
  sound.set('backup', await given(token));
  sound.set('backup with a passphrase', await inAge(sound.get('backup')!));
  sound.set(
    'bundle',
    await given((await desk.ok('export/make', { clientId: null, workId })).token),
  );
}, 60_000);

/** Changes some bytes, cuts a piece out, doubles one, or puts in what lies elsewhere in the file. */
function spoilt(bytes: Buffer, random: () => number): Buffer {
  const at = (): number => Math.floor(random() * bytes.length);
  const [from, length] = [at(), 1 + Math.floor(random() ** 4 * 4096)];
  const piece = bytes.subarray(from, from + length);
  const before = bytes.subarray(0, from);
  const after = bytes.subarray(from + length);
  const way = Math.floor(random() * 5);
  if (way === 0) return Buffer.concat([before, after]);
  if (way === 1) return Buffer.concat([before, piece, piece, after]);
  if (way === 2) return before;
  if (way === 3) {
    const other = at();
    return Buffer.concat([before, bytes.subarray(other, other + length), after]);
  }
  const changed = Buffer.from(bytes);
  for (let i = 0; i < length; i += 97) changed[from + i]! ^= 1 << Math.floor(random() * 8);
  return changed;
}

const stateOf = (folder: string): string =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => !/^transfer|-(wal|shm)$|^running/.test(name))
    .sort()
    .join();

describe.each<Kind>(['backup', 'backup with a passphrase', 'bundle'])('a %s', (kind) => {
  test(`spoilt in ${FILES} ways is refused by name, or is what it was`, async () => {
    const desk = await openOwn();
    await desk.ok('clients/save', {
      id: null,
      client: { ...blankClient(), name: 'Ada Sample' },
    });
    mkdirSync(join(desk.folder, 'files'), { recursive: true });
    const before = stateOf(desk.folder);
    const random = chance(21);
    const tally = { refused: 0, asItWas: 0 };
    const workId = randomUUID();
    const asked = async (bytes: Buffer) => {
      const token = await taken(desk, bytes);
      if (kind === 'bundle') return desk.service.call('import/bundleLook', { token, workId });
      const passphrase = kind === 'backup' ? null : PASSPHRASE;
      return desk.service.call('backup/look', { source: { token }, passphrase, workId });
    };
    const plain = (value: object): string => JSON.stringify({ ...value, name: '', present: null });
    const whole = await asked(sound.get(kind)!);
    const wanted = plain(whole.ok ? whole.value : expect.fail(whole.error.message));
    for (let file = 0; file < FILES; file++) {
      const answer = await asked(spoilt(sound.get(kind)!, random));
      if (answer.ok) {
        expect(plain(answer.value)).toBe(wanted);
        tally.asItWas += 1;
      } else {
        expect(['input', 'storage'], answer.error.message).toContain(answer.error.kind);
        expect(answer.error.message).not.toMatch(/Error|undefined|null|\/tmp/);
        tally.refused += 1;
      }
    }
    expect(desk.log).toEqual([]);
    expect(stateOf(desk.folder)).toBe(before);
    expect(lookAt(desk.folder, faults)).toEqual([]);
    console.log(`A ${kind}, spoilt: ${tally.refused} refused by name, ${tally.asItWas} as it was`);
    expect(tally.refused).toBeGreaterThan(FILES / 2);
  }, 900_000);
});
