import { readFileSync, writeFileSync } from 'node:fs';
import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import {
  BUNDLE_VERSION,
  type BundleManifest,
  type BundleRecords,
} from '../../../electron/contract/exchange/bundle.ts';
import { listContents } from '../../../electron/service/backup/contents.ts';
import { presentContents } from '../../../electron/service/backup/folder.ts';
import { openOwn, type TestDesk } from '../support/desk.ts';
import {
  changed,
  exported,
  handed,
  imported,
  jsonOf,
  lookedAt,
  recordsOf,
  WORK,
  zipped,
  type Entries,
} from './support/bundle.ts';
import { fullRecord } from './support/fullRecord.ts';

const STRANGER = '00000000-0000-4000-8000-00000000dead';

let out: Entries;
let desk: TestDesk;
beforeAll(async () => {
  const from = await openOwn();
  await fullRecord(from, 'Odette Fenn', 'Bramble');
  out = await exported(from);
});
beforeEach(async () => {
  desk = await openOwn();
});

/** What a look at an archive is answered with; nothing of it is ever kept. */
async function refusal(file: string): Promise<string> {
  const token = await handed(desk, file);
  const error = await desk.refused('import/bundleLook', { token, workId: WORK });
  expect(error.kind).toBe('input');
  expect(error.message).toMatch(/Nothing was imported\.$/);
  expect(recordsOf(await exported(desk)).owners).toEqual([]);
  expect(listContents(presentContents(desk.folder))).toEqual([]);
  return error.message;
}
const refusalOf = async (entries: Entries): Promise<string> => refusal(await zipped(entries));

/** An archive with bytes changed where a text stands, in its list and in front of the entry. */
async function patched(entries: Entries, from: string, to: string): Promise<string> {
  expect(to).toHaveLength(from.length);
  const file = await zipped(entries);
  const bytes = readFileSync(file);
  for (let at = bytes.indexOf(from); at !== -1; at = bytes.indexOf(from, at)) {
    bytes.write(to, at, 'latin1');
  }
  writeFileSync(file, bytes);
  return file;
}

const withManifest = (change: (manifest: BundleManifest) => void): Entries =>
  changed(out, (_records, manifest) => change(manifest));
/** The sentences of a look at changed records. */
async function problems(change: (records: BundleRecords) => void): Promise<readonly string[]> {
  const { token, look } = await lookedAt(
    desk,
    changed(out, (records) => {
      // Records of one moment leave in the order of their random numbers; a change names the first.
      records.visits.sort((one, other) => one.day.localeCompare(other.day));
      records.attachments.sort((one, other) => one.name.localeCompare(other.name));
      change(records);
    }),
  );
  if (look.problems.count > 0) {
    const input = { token, digest: look.digest, different: 'theirs', erased: 'bring back' };
    const error = await desk.refused('import/bundleRun', { ...input, workId: WORK });
    expect(error.message).toContain(look.problems.first[0]);
  }
  return look.problems.first;
}

describe('an archive that is no bundle, or a trap', () => {
  test.each([
    ['no archive', Buffer.from('a text'), /no zip archive/],
    [
      'an end without a beginning',
      Buffer.concat([Buffer.from('PK\x05\x06'), Buffer.alloc(18)]),
      /holds no manifest\.json/,
    ],
  ])('%s', async (_what, bytes, said) => {
    const file = await zipped([['a', Buffer.from('b')]]);
    writeFileSync(file, bytes);
    expect(await refusal(file)).toMatch(said);
  });

  test('a bundle cut off anywhere', async () => {
    const file = await zipped(out);
    const bytes = readFileSync(file);
    for (const share of [0.1, 0.5, 0.9, 0.999]) {
      writeFileSync(file, bytes.subarray(0, Math.floor(bytes.length * share)));
      expect(await refusal(file)).toMatch(/damaged, or is no zip archive/);
    }
  });

  test('a bundle with one bit turned, in any entry', async () => {
    const file = await zipped(out);
    const bytes = readFileSync(file);
    const central = bytes.indexOf('PK\x01\x02');
    for (let turn = 0; turn < 25; turn++) {
      const spoilt = Buffer.from(bytes);
      const at = Math.floor(((turn + 0.5) / 25) * central);
      spoilt[at]! ^= 1 << (turn % 8);
      writeFileSync(file, spoilt);
      const token = await handed(desk, file);
      const answer = await desk.service.call('import/bundleLook', { token, workId: WORK });
      // A bit in the head before an entry says nothing that is used.
      if (!answer.ok) expect(answer.error).toMatchObject({ kind: 'input' });
      else expect(answer.value.states.owners.new).toBe(1);
    }
  });

  test.each(['../../evil.sh', '/etc/evil.txt', 'C:\\evil1.txt', 'x/../y/../z.t'])(
    'a name that leads elsewhere: %s',
    async (name) => {
      const plain = 'x'.repeat(name.length);
      const file = await patched(new Map([...out, [plain, Buffer.from('x')]]), plain, name);
      const message = await refusal(file);
      expect(message).toContain('leads out of its folder');
      expect(message).toContain(name);
    },
  );

  test('an entry that is on no list, twice, or not there', async () => {
    const stray = new Map([...out, ['evil.html', Buffer.from('<script>')]]);
    expect(await refusalOf(stray)).toContain('“evil.html”, which is not on the list');
    const listed = withManifest(({ files }) => {
      files.push({ name: 'evil.html', sha256: '0'.repeat(64), bytes: 8 });
    });
    expect(await refusalOf(new Map([...listed, ['evil.html', Buffer.from('<script>')]]))).toContain(
      'lists “evil.html”, which no bundle has',
    );
    const twice = await patched(
      new Map([...out, ['SCHEMA.JSON', Buffer.from('x')]]),
      'SCHEMA.JSON',
      'schema.json',
    );
    expect(await refusal(twice)).toContain('“schema.json” twice');
    const without = new Map(out);
    without.delete('tables/dogs.csv');
    expect(await refusalOf(without)).toContain('“tables/dogs.csv” is missing');
  });

  test('what would swell', async () => {
    const zeros = new Map([...out, ['zeros.bin', Buffer.alloc(16 * 1024 * 1024)]]);
    expect(await refusalOf(zeros)).toMatch(/Unpacked, the archive would be far larger/);
    // An entry that says less than it holds: its true end comes after the said one.
    const file = await zipped(out);
    const bytes = readFileSync(file);
    const entry = bytes.lastIndexOf('records.json') - 46;
    expect(bytes.readUInt32LE(entry)).toBe(0x02014b50);
    bytes.writeUInt32LE(bytes.readUInt32LE(entry + 24) - 100, entry + 24);
    writeFileSync(file, bytes);
    expect(await refusal(file)).toMatch(/records\.json/);
  });

  test('a manifest of something else, of a newer Trotwell, or damaged', async () => {
    const manifest = jsonOf<BundleManifest>(out, 'manifest.json');
    const withText = (text: string): Entries =>
      new Map([...out, ['manifest.json', Buffer.from(text)]]);
    const said = (change: object): Promise<string> =>
      refusalOf(withText(JSON.stringify({ ...manifest, ...change })));
    expect(await said({ format: 'another form' })).toContain('is no bundle of Trotwell');
    const newer = BUNDLE_VERSION + 1;
    expect(await said({ version: newer })).toContain(`made by a newer Trotwell (form ${newer}`);
    expect(await said({ files: 'none' })).toContain('manifest.json of the bundle is damaged');
    expect(await refusalOf(withText('{'))).toContain('not valid JSON');
    for (const text of ['['.repeat(100_000), `[${'[],'.repeat(500_000)}0]`]) {
      expect(await refusalOf(withText(text))).toContain('holds more, or goes deeper, than any');
    }
    expect(await refusalOf(withText('\xff\xfe'))).toMatch(/not valid JSON|UTF-8/);
  });

  test('a content that is not what its name says', async () => {
    const name = [...out.keys()].find((each) => each.endsWith('.pdf'))!;
    const other = new Map([...out, [name, Buffer.from('%PDF-1.4 another letter')]]);
    expect(await refusalOf(other)).toMatch(/not as long as the list/);
    const same = Buffer.from(out.get(name)!);
    same[same.length - 2]! ^= 1;
    expect(await refusalOf(new Map([...out, [name, same]]))).toMatch(/changed since/);
  });
});

describe('records that no practice could have kept', () => {
  test.each<[string, (records: BundleRecords) => void, RegExp]>([
    [
      'a weight',
      ({ visits }) => void (visits[0]!.weightKg = 900),
      /visit 1 \(weightKg\): Body weight must be from 0\.1 to 150 kg/,
    ],
    [
      'a day',
      ({ dogs }) => void (dogs[0]!.birthDay = '2021-02-30'),
      /dog 1 \(birthDay\): Day of birth must be a day/,
    ],
    [
      'no name',
      ({ owners }) => void (owners[0]!.name = '\u200b'),
      /owner 1 \(name\): Name of the owner is needed/,
    ],
    [
      'an unknown field',
      ({ dogs }) => void Object.assign(dogs[0]!, { evil: 1 }),
      /dog 1: Unrecognized key/,
    ],
    [
      'a plan without weeks',
      ({ plans }) => void Object.assign(plans[0]!.ramp, { weeks: null }),
      /running plan 1 \(ramp\.weeks\)/,
    ],
    [
      'a step of a plan that is no number',
      ({ plans }) => void Object.assign(plans[0]!.ramp.weeks[0]!, { rung: 'first' }),
      /running plan 1 \(ramp\.weeks\.0\.rung\)/,
    ],
    [
      'a forecast without its rate',
      ({ foodDecisions }) => void Object.assign(foodDecisions[0]!.proposal, { forecast: {} }),
      /\(proposal\.forecast\./,
    ],
    [
      'a source nobody knows',
      ({ plans }) => void Object.assign(plans[0]!.ramp.reasons[0]!, { sources: ['evil'] }),
      /A source is not in the register/,
    ],
    [
      'an earlier state of a visit',
      ({ history }) =>
        void (history.find(({ kind }) => kind === 'visit')!.before = { lamenessWalk: null }),
      /history entry \d+ \(lamenessWalk\)/,
    ],
  ])('%s', async (_what, change, said) => {
    const token = await handed(desk, await zipped(changed(out, change)));
    const error = await desk.refused('import/bundleLook', { token, workId: WORK });
    expect(error.kind).toBe('input');
    expect(error.fields!.map(({ message }) => message).join('\n')).toMatch(said);
  });

  test.each<[string, (records: BundleRecords) => void, RegExp]>([
    [
      'a dog without its owner',
      ({ dogs }) => void (dogs[0]!.clientId = STRANGER),
      /The dog “Bramble” names an owner that is not in the bundle/,
    ],
    [
      'a visit of no dog',
      ({ visits }) => void (visits[0]!.dogId = STRANGER),
      /The visit of 2026-02-16 names a dog that is not/,
    ],
    [
      'a file of no visit',
      ({ attachments }) => void (attachments[0]!.visitId = STRANGER),
      /The attached file “gait\.png” names a visit that is not/,
    ],
    [
      'one number twice',
      ({ visits }) => void (visits[1]!.id = visits[0]!.id),
      /is in the bundle twice under one number/,
    ],
    [
      'two plans in force',
      ({ plans }) => void plans.push({ ...plans[0]!, id: STRANGER, version: 9 }),
      /in force beside another one/,
    ],
    [
      'one version twice',
      ({ plans }) => void plans.push({ ...plans[0]!, id: STRANGER, current: false }),
      /the same version number/,
    ],
    [
      'two results of one day',
      ({ sessions }) => void sessions.push({ ...sessions[0]!, id: STRANGER }),
      /told twice for one day/,
    ],
    [
      'a day to come',
      ({ visits }) => void (visits[0]!.day = '2026-03-03'),
      /still to come \(today is 2026-03-02\)/,
    ],
    [
      'a file nobody has',
      ({ attachments }) => void (attachments[0]!.hash = 'a'.repeat(64)),
      /neither in the bundle nor on its list/,
    ],
    [
      'history of a stranger',
      ({ history }) => void (history[0]!.dogId = STRANGER),
      /History entry 1 of the bundle names/,
    ],
    [
      'history of another weighing',
      ({ history }) =>
        void (history.find(({ kind }) => kind === 'weighing')!.before!['dogId'] = STRANGER),
      /tells of another weighing/,
    ],
  ])('%s', async (_what, change, said) => {
    expect((await problems(change)).join('\n')).toMatch(said);
    expect(recordsOf(await exported(desk)).owners).toEqual([]);
  });

  test('a dog, visit or file that belongs elsewhere here', async () => {
    await imported(desk, out);
    const stranger = changed(out, (records) => {
      const [owner] = records.owners;
      records.owners.push({ ...owner!, id: STRANGER, name: 'Ben Other' });
      records.dogs[0]!.clientId = STRANGER;
    });
    expect((await lookedAt(desk, stranger)).look.problems.first).toEqual([
      'The dog “Bramble” is here already, under another owner than in the bundle.',
    ]);
    const alone = changed(out, (records) => {
      records.owners[0]!.id = STRANGER;
      records.dogs[0]!.clientId = STRANGER;
      records.history = records.history.filter(({ clientId }) => clientId === null);
    });
    expect((await lookedAt(desk, alone)).look.problems.first.join('\n')).toContain(
      'The visit of 2026-02-16 of “Bramble” is here already',
    );
    expect(
      await problems(({ attachments }) => void (attachments[0]!.visitId = attachments[1]!.visitId)),
    ).toEqual([]);
    const swapped = await problems(({ attachments: [first, second] }) => {
      Object.assign(first!, {
        hash: second!.hash,
        mediaType: second!.mediaType,
        bytes: second!.bytes,
      });
    });
    expect(swapped).toEqual([
      'The attached file “gait.png” of 2026-02-16 of “Bramble” has another content here; a file stays as it was added.',
    ]);
    expect(recordsOf(await exported(desk))).toEqual(recordsOf(out));
  });
});
