import {
  chownSync,
  existsSync,
  mkdirSync,
  readdirSync,
  renameSync,
  statSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { claimFolder, type Claim } from '../../../electron/service/claim/claim.ts';
import type { StartRequest } from '../../../electron/service/claim/requests.ts';
import { temporaryFolder } from '../support/desk.ts';

const NOTHING: StartRequest = { file: null };
const held: Claim[] = [];

afterEach(() => {
  for (const claim of held.splice(0)) claim.release();
});

async function claimed(folder: string): Promise<Claim> {
  const result = await claimFolder(folder, NOTHING);
  if (result.kind !== 'ours') return expect.fail(result.kind);
  held.push(result.claim);
  return result.claim;
}

/** A claimed folder, and the requests of later starts that were taken up. */
async function first(): Promise<{ folder: string; running: string; asked: StartRequest[] }> {
  const folder = temporaryFolder();
  const asked: StartRequest[] = [];
  (await claimed(folder)).onLaterStart((request) => asked.push(request));
  return { folder, running: join(folder, 'running'), asked };
}

const leftIn = (running: string): string[] =>
  readdirSync(running).filter((name) => name !== 'claim');

describe('a folder of records', () => {
  test('is claimed once; a later start hands its request over and leaves nothing behind', async () => {
    const { folder, running, asked } = await first();
    const file = join(folder, 'kept.trotwell');
    expect(await claimFolder(folder, { file })).toEqual({ kind: 'answered' });
    expect(await claimFolder(folder, NOTHING)).toEqual({ kind: 'answered' });
    expect(asked).toEqual([{ file }, { file: null }]);
    expect(leftIn(running)).toEqual([]);
  });

  test('is free again once it is let go', async () => {
    const folder = temporaryFolder();
    (await claimed(folder)).release();
    await claimed(folder);
  });

  test('is not claimed over one that does not react, and the request is taken back', async () => {
    const folder = temporaryFolder();
    await claimed(folder);
    expect(await claimFolder(folder, NOTHING, 500)).toEqual({ kind: 'silent' });
    expect(leftIn(join(folder, 'running'))).toEqual([]);
  });

  test('goes to the start that waits when the first one closes meanwhile', async () => {
    const folder = temporaryFolder();
    const claim = await claimed(folder);
    const waiting = claimFolder(folder, NOTHING);
    claim.release();
    const result = await waiting;
    expect(result.kind).toBe('ours');
    if (result.kind === 'ours') held.push(result.claim);
    expect(leftIn(join(folder, 'running'))).toEqual([]);
  });

  test('that cannot be made or written holds no start up: opening the records says why', async () => {
    const file = join(temporaryFolder(), 'a-file');
    writeFileSync(file, '');
    expect((await claimFolder(join(file, 'records'), NOTHING)).kind).toBe('ours');
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'running', 'claim'), { recursive: true });
    expect((await claimFolder(folder, NOTHING)).kind).toBe('ours');
  });

  test.skipIf(process.platform === 'win32')('lets its user only leave requests', async () => {
    const { folder, running } = await first();
    expect(statSync(running).mode & 0o777).toBe(0o700);
    expect(readdirSync(folder)).toEqual(['running']);
  });
});

describe('what lies in the place of a request', () => {
  const put = (running: string, text: string, name = 'again-x'): void =>
    writeFileSync(join(running, `${name}.json`), text);

  test.each([
    ['no JSON', (running: string) => put(running, '{"file":')],
    ['a list', (running: string) => put(running, 'null')],
    [
      'a folder',
      (running: string) => mkdirSync(join(running, 'again-x.json', 'in'), { recursive: true }),
    ],
    [
      'a link to a request',
      (running: string) => {
        writeFileSync(join(running, 'real'), '{"file":null}');
        symlinkSync(join(running, 'real'), join(running, 'again-x.json'));
      },
    ],
    [
      'more than a request can be',
      (running: string) => {
        put(running, '{"file":null}');
        truncateSync(join(running, 'again-x.json'), 1e6);
      },
    ],
  ])('is removed and does nothing: %s', async (_what, leave) => {
    const { running, asked } = await first();
    leave(running);
    await expect.poll(() => existsSync(join(running, 'again-x.json'))).toBe(false);
    expect(asked).toEqual([]);
  });

  test.skipIf(process.getuid?.() !== 0)('is removed when another user left it', async () => {
    const { running, asked } = await first();
    put(running, '{"file":null}', 'z');
    chownSync(join(running, 'z.json'), 65_534, 65_534);
    renameSync(join(running, 'z.json'), join(running, 'again-x.json'));
    await expect.poll(() => existsSync(join(running, 'again-x.json'))).toBe(false);
    expect(asked).toEqual([]);
  });

  test.each(['{"file":7}', '{"file":"records/a.trotwell"}', '{"file":{"path":"/x"}}', '{}'])(
    'opens no file when it names none by a whole path: %s',
    async (text) => {
      const { running, asked } = await first();
      put(running, text);
      await expect.poll(() => asked).toEqual([{ file: null }]);
    },
  );

  test('opens one window, however many there are', async () => {
    const { running, asked } = await first();
    for (let i = 0; i < 50; i++) put(running, '{"file":null}', `again-${i}`);
    await expect.poll(() => leftIn(running)).toEqual([]);
    expect(asked.length).toBeLessThan(3);
  });

  test('is swept away when it was left before', async () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, 'running'));
    put(join(folder, 'running'), '{"file":null}');
    writeFileSync(join(folder, 'running', 'again-y.json.part'), '{');
    await claimed(folder);
    expect(leftIn(join(folder, 'running'))).toEqual([]);
  });
});
