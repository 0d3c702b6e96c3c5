// A process of its own that works with the real service until it is killed. It says on its standard
// output, a line each, what the service has acknowledged; nothing it says is still to be written.
// `writer.ts <what> <folder> [argument]`
import { writeSync } from 'node:fs';
import { randomUUID } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { blankClient, blankDog, blankVisit } from '../../../electron/contract/blank.ts';
import type { CallName, InputOf, ResultOf } from '../../../electron/contract/contract.ts';
import { createService } from '../../../electron/service/service.ts';

const [what, folder, argument] = process.argv.slice(2) as [string, string, string | undefined];
const say = (line: string): void => void writeSync(1, `${line}\n`);

const service = createService({
  folder,
  fontsFolder: fileURLToPath(new URL('../../../templates/fonts', import.meta.url)),
  version: '0.0.0-test',
  clock: () => new Date('2026-03-02T12:00:00'),
  log: (line) => say(`log ${line}`),
});

async function ok<N extends CallName>(name: N, input: InputOf<N>): Promise<ResultOf<N>> {
  const answer = await service.call(name, input);
  if (answer.ok) return answer.value;
  say(`refused ${JSON.stringify(answer.error)}`);
  throw new Error('refused');
}

/** Visits with several parts each, one after the other, for ever. */
async function write(): Promise<void> {
  await ok('app/open', { which: 'own' });
  const client = await ok('clients/save', {
    id: null,
    client: { ...blankClient(), name: 'Ada Sample' },
  });
  const dog = await ok('dogs/save', {
    id: null,
    dog: { ...blankDog(), clientId: client.id, name: 'Bramble', birthDay: '2022-01-01' },
  });
  say('ready');
  for (let number = 1; number <= 100_000; number++) {
    const visit = {
      ...blankVisit(dog.id, '2026-03-01'),
      weightKg: 20 + (number % 50) / 10,
      bcs: 5,
      notes: `${argument} visit ${number}`,
      signs: ['cough', 'collapse'].slice(0, 1 + (number % 2)),
    };
    const saved = await service.call('visits/save', {
      id: null,
      visit,
      plan: null,
      food: null,
    } as never);
    if (!saved.ok) {
      say(`refused ${JSON.stringify(saved.error)}`);
      return;
    }
    say(`saved ${number}`);
  }
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
  write,
  migrate,
  backUp,
  restore,
  importBundle,
  importWeights,
  tryAll,
};
await TASKS[what]!();
