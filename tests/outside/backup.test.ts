import { execFileSync, spawnSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { blankClient } from '../../electron/contract/records/forms.ts';
import { openOwn, temporaryFolder } from '../service/support/desk.ts';
import { COST, stretch } from '../../electron/service/lock/passphrase.ts';

const hex = (text: string): Buffer => Buffer.from(text.replaceAll(/\s/g, ''), 'hex');

describe('passphrases are stretched as RFC 7914 says', () => {
  // RFC 7914 (Percival, Josefsson 2016), section 12, the vectors that fit into memory here. Mark S,
  // read as quoted in the test suites of two scrypt libraries.
  test.each([
    {
      passphrase: 'password',
      salt: 'NaCl',
      cost: { log2N: 10, r: 8, p: 16 },
      key: `fdbabe1c9d3472007856e7190d01e9fe7c6ad7cbc8237830e77376634b373162
            2eaf30d92e22a3886ff109279d9830dac727afb94a83ee6d8360cbdfa2cc0640`,
    },
    {
      passphrase: 'pleaseletmein',
      salt: 'SodiumChloride',
      cost: { log2N: 14, r: 8, p: 1 },
      key: `7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2
            d5432955613f0fcf62d49705242a9af9e61e85dc0d651e40dfcf017b45575887`,
    },
  ])('$passphrase with $salt', async ({ passphrase, salt, cost, key }) => {
    expect(await stretch(passphrase, Buffer.from(salt), 64, cost)).toEqual(hex(key));
  });

  // OWASP Password Storage Cheat Sheet: "a minimum CPU/memory cost parameter of (2^17), a minimum
  // block size of 8 (1024 bytes), and a parallelization parameter of 1". Mark S, as quoted in the
  // commit of a scrypt library that adopted it.
  test('at no lower cost than OWASP recommends', () => {
    expect(COST.log2N).toBeGreaterThanOrEqual(17);
    expect(COST.r).toBeGreaterThanOrEqual(8);
    expect(COST.p).toBeGreaterThanOrEqual(1);
  });
});

// The reference implementation of the age format (age-encryption.org/v1, C2SP), as Debian packages
// it, and GNU tar: what we write is theirs to open, and what they write ours.
const AGE = spawnSync('age', ['--version'], { encoding: 'utf8' });
const NO_AGE =
  AGE.error === undefined && existsSync('/usr/bin/script')
    ? false
    : 'The programs age and script (Debian) are not on this machine.';

/** Answers a program that asks at the terminal. */
function atTerminal(command: string, answers: readonly string[], folder: string): void {
  const typed = answers.map((answer) => `sleep 1; echo '${answer}'`).join('; ');
  execFileSync('sh', ['-c', `(${typed}; sleep 4) | script -qec "${command}" /dev/null`], {
    cwd: folder,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}

describe.skipIf(NO_AGE)('a backup with a passphrase is an age file', () => {
  const PASSPHRASE = 'eleven geese on a gate';

  test('that another program opens, with an archive of the records in it; and the other way', async () => {
    const desk = await openOwn();
    await desk.ok('clients/save', { id: null, client: { ...blankClient(), name: 'Ada Sample' } });
    const workId = randomUUID();
    const { token } = await desk.ok('backup/make', { passphrase: PASSPHRASE, workId });
    const folder = temporaryFolder();
    const kept = join(folder, 'kept.trotwell');
    expect(await desk.service.writeOut(token, kept)).toEqual({ ok: true, value: null });

    atTerminal('age -d -o kept.tar kept.trotwell', [PASSPHRASE], folder);
    execFileSync('tar', ['-xf', 'kept.tar'], { cwd: folder });
    execFileSync('sha256sum', ['-c', 'manifest.json.sha256'], { cwd: folder });
    const db = new BetterSqlite3(join(folder, 'trotwell.sqlite'), { readonly: true });
    expect(db.prepare('SELECT name FROM client').pluck().all()).toEqual(['Ada Sample']);
    db.close();

    atTerminal('age -p -o again.trotwell kept.tar', [PASSPHRASE, PASSPHRASE], folder);
    const taken = await desk.service.takeIn('again.trotwell', join(folder, 'again.trotwell'), 1e9);
    const source = { token: taken.ok ? taken.value.token : expect.fail('not taken in') };
    const look = await desk.ok('backup/look', { source, passphrase: PASSPHRASE, workId });
    expect(look).toMatchObject({ protectedByPassphrase: true, summary: { owners: 1 } });
  }, 60_000);
});
