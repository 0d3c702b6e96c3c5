// A process of its own that works with the real service until it is killed. It says on its standard
// output, a line each, what the service has acknowledged; nothing it says is still to be written.
// `writer.ts <what> <folder> [argument]`
import { randomUUID } from 'node:crypto';
import { writeFileSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  blankClient,
  blankDog,
  blankPractice,
  blankVisit,
} from '../../../electron/contract/records/forms.ts';
import type { CallName, InputOf, ResultOf } from '../../../electron/contract/contract.ts';
import { createService } from '../../../electron/service/service.ts';
import { chance } from '../../attack/support/chance.ts';

const [what, folder, argument] = process.argv.slice(2) as [string, string, string | undefined];
const say = (line: string): void => void writeSync(1, `${line}\n`);

let today = '2026-03-02';
const service = createService({
  folder,
  fontsFolder: fileURLToPath(new URL('../../../templates/fonts', import.meta.url)),
  version: '0.0.0-test',
  clock: () => new Date(`${today}T12:00:00`),
  log: (line) => say(`log ${line}`),
});

async function ok<N extends CallName>(name: N, input: InputOf<N>): Promise<ResultOf<N>> {
  const answer = await service.call(name, input);
  if (answer.ok) return answer.value;
  say(`refused ${JSON.stringify(answer.error)}`);
  throw new Error('refused');
}

/**
 * Saves of every kind, in an order that depends on the number given, for ever. What stays is told as
 * `has <what> <mark>`, what replaces something as `is <what> <mark>`, before and after the call.
 */
async function anything(): Promise<void> {
  await ok('app/open', { which: 'own' });
  const client = await ok('clients/save', {
    id: null,
    client: { ...blankClient(), name: 'Ada Sample' },
  });
  const dog = await ok('dogs/save', {
    id: null,
    dog: { ...blankDog('female'), clientId: client.id, name: 'Bramble', birthDay: '2022-01-01' },
  });
  say('ready');
  const random = chance(Number(argument));
  const deeds = deedsOn(client.id, dog.id);
  for (let number = 1; ; number++) {
    const mark = `${argument}-${number}`;
    const [what, save] = deeds[Math.floor(random() * deeds.length)]!;
    say(`try ${what} ${mark}`);
    await save(mark, number);
    say(`ack ${what} ${mark}`);
  }
}

type Deed = readonly [what: string, save: (mark: string, number: number) => Promise<unknown>];

function deedsOn(clientId: string, dogId: string): readonly Deed[] {
  const weighedOn = (number: number): string =>
    new Date(Date.UTC(2022, 1, 1) + number * 86_400_000).toISOString().slice(0, 10);
  const visit = (mark: string, number: number) => ({
    ...blankVisit(dogId, '2026-03-01'),
    weightKg: 20 + (number % 50) / 10,
    bcs: 5,
    notes: mark,
    signs: ['cough', 'collapse'].slice(0, 1 + (number % 2)),
  });
  return [
    ['has client', (mark) => save('clients/save', { client: { ...blankClient(), name: mark } })],
    [
      'has dog',
      (mark) => {
        const birthDay = '2022-01-01';
        return save('dogs/save', {
          dog: { ...blankDog('female'), clientId, name: mark, birthDay },
        });
      },
    ],
    [
      'has visit',
      (mark, number) => save('visits/save', { visit: visit(mark, number), plan: null, food: null }),
    ],
    [
      'has weighing',
      async (mark, number) => {
        const { id } = await ok('dogs/save', {
          id: null,
          dog: { ...blankDog('female'), clientId, name: 'Weighed', birthDay: '2022-01-01' },
        });
        const weighing = { day: weighedOn(number % 1000), weightKg: 21, note: mark };
        const usual = { weighingMethod: 'same scale', scaleStepKg: 0.1 } as const;
        await ok('weighings/save', { dogId: id, weighing: { ...weighing, ...usual } });
      },
    ],
    [
      'has file',
      async (mark) => {
        const path = join(tmpdir(), `trotwell-attack-${process.pid}.pdf`);
        writeFileSync(path, `%PDF-1.7\n${mark}\n%%EOF\n`);
        const given = {
          token: await handIn(path),
          kind: 'other',
          name: mark,
          thumbnail: null,
        } as const;
        const { id } = await ok('dogs/save', {
          id: null,
          dog: { ...blankDog('female'), clientId, name: 'With a file', birthDay: '2022-01-01' },
        });
        await ok('waiting/add', { dogId: id, ...given });
      },
    ],
    ['is draft', (mark) => ok('drafts/put', { key: 'intake:new', json: JSON.stringify(mark) })],
    ['is practice', (mark) => ok('practice/save', { ...blankPractice(), name: mark })],
    ['has backup', () => ok('backup/make', { passphrase: null, workId: randomUUID() })],
  ];
}

const save = (name: CallName, input: object): Promise<unknown> =>
  ok(name, { id: null, ...input } as never);

/** One of each kind of save, backups and a restore; says "durable" after each that was acknowledged. */
async function eachOnce(): Promise<void> {
  const done = (what: string): void => say(`durable ${what}`);
  await ok('app/open', { which: 'own' });
  const client = await ok('clients/save', {
    id: null,
    client: { ...blankClient(), name: 'Ada Sample' },
  });
  done('client');
  const { id } = await ok('dogs/save', {
    id: null,
    dog: { ...blankDog('female'), clientId: client.id, name: 'Bramble', birthDay: '2022-01-01' },
  });
  done('dog');
  for (const [what, save] of deedsOn(client.id, id)) {
    await save('mark-1', 1);
    done(what);
  }
  today = '2026-03-03';
  await ok('app/status', {});
  const { kept } = await ok('backup/status', {});
  done('automatic backup');
  const input = { source: { name: kept[0]!.name }, passphrase: null, workId: randomUUID() };
  await ok('backup/restore', input);
  done('restore');
  await ok('clients/save', { id: null, client: { ...blankClient(), name: 'Ben Sample' } });
  done('client after the restore');
  await service.close();
  done('closing');
}

/** Opens the records, which brings an older file to the newest schema. */
async function migrate(): Promise<void> {
  say('ready');
  await ok('app/status', {});
  say('done');
}

async function backUp(): Promise<void> {
  await ok('app/open', { which: 'own' });
  say('ready');
  for (;;) await ok('backup/make', { passphrase: null, workId: randomUUID() });
}

/** Goes to and fro between two backups, for ever. */
async function restore(): Promise<void> {
  const names = argument!.split(',');
  say('ready');
  for (let turn = 0; ; turn++) {
    const source = { name: names[turn % names.length]! };
    await ok('backup/restore', { source, passphrase: null, workId: randomUUID() });
    say(`restored ${turn % names.length}`);
  }
}

/** Hands a file over, as a host does. @returns its token */
async function handIn(path: string): Promise<string> {
  const taken = await service.takeIn('handed over', path, 1024 ** 3);
  if (taken.ok) return taken.value.token;
  throw new Error('refused');
}

/** Imports the bundle at a path, taking what it says of records that differ. */
async function importBundle(): Promise<void> {
  await ok('app/open', { which: 'own' });
  const token = await handIn(argument!);
  const { digest } = await ok('import/bundleLook', { token, workId: randomUUID() });
  const choices = { different: 'theirs', erased: 'leave out' } as const;
  say('ready');
  await ok('import/bundleRun', { token, digest, ...choices, workId: randomUUID() });
  say('done');
}

/** Imports the table of weights at a path, all of the only dog. */
async function importWeights(): Promise<void> {
  await ok('app/open', { which: 'own' });
  const [dog] = await ok('dogs/list', { query: '' });
  const token = await handIn(argument!);
  const mapping: InputOf<'import/preview'>['mapping'] = {
    separator: ',',
    headed: true,
    dog: { by: 'choice', dogId: dog!.id },
    dayColumn: 0,
    weightColumn: 1,
    dayFormat: 'YYYY-MM-DD',
    unit: 'kg',
    decimalSign: '.',
    weighingMethod: 'same scale',
    scaleStepKg: 0.1,
  };
  const { digest } = await ok('import/preview', { token, mapping });
  say('ready');
  await ok('import/run', { token, mapping, digest, workId: randomUUID() });
  say('done');
}

/** One try of each thing that writes; says what came of it, and closes. */
async function tryAll(): Promise<void> {
  const said = async (name: CallName, input: unknown): Promise<void> => {
    const answer = await service.call(name, input as never);
    const { error } = answer.ok ? { error: null } : answer;
    say(`${name} ${JSON.stringify(error)}`);
  };
  const status = await service.call('app/status', {});
  say(`app/status ${JSON.stringify(status.ok ? status.value.trouble : status.error)}`);
  await said('clients/save', { id: null, client: { ...blankClient(), name: 'Ben Sample' } });
  await said('backup/make', { passphrase: null, workId: randomUUID() });
  await said('clients/list', { query: '' });
  await service.close();
  say('closed');
}

const TASKS: Readonly<Record<string, () => Promise<void>>> = {
  anything,
  eachOnce,
  migrate,
  backUp,
  restore,
  importBundle,
  importWeights,
  tryAll,
};
await TASKS[what]!();
