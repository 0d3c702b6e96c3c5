import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';
import { ROOMS, type RoomName } from './rooms.ts';
import { sampleLines } from './sample.ts';
import { detected, isCounted, lineOf, table, type Mutant } from './score.ts';

// `npm run mutants`: changes the code in small ways and counts how many changes a test notices. By
// default some lines of each room, the same ones until the seed changes; files named after `--`, or
// `--all`, take the whole of them; `--tests` names the tests to try, where a few will do. Ends in 1
// when fewer than `--least` percent are noticed.

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    all: { type: 'boolean', default: false },
    seed: { type: 'string', default: '1' },
    core: { type: 'string', default: '24' },
    service: { type: 'string', default: '4' },
    workers: { type: 'string', default: '2' },
    tests: { type: 'string' },
    least: { type: 'string', default: '85' },
  },
});

// A score is the same each time.
delete process.env['LAWS_SEED'];

function wanted(room: RoomName): string[] {
  const files: readonly string[] = ROOMS[room].files;
  if (positionals.length > 0) {
    return files.filter((file) => positionals.some((part) => file.startsWith(part)));
  }
  return values.all ? [...files] : sampleLines(files, Number(values[room]), Number(values.seed));
}

async function mutate(room: RoomName): Promise<Mutant[]> {
  const mutate = wanted(room);
  if (mutate.length === 0) return [];
  process.env['MUTANTS_ROOM'] = room;
  if (values.tests !== undefined) process.env['MUTANTS_TESTS'] = values.tests;
  const folder = mkdtempSync(join(tmpdir(), 'trotwell-mutants-'));
  try {
    const mutants = await new Stryker({
      mutate,
      configFile: 'tests/mutants/stryker.json',
      vitest: { configFile: 'tests/mutants/vitest.config.ts', related: room === 'core' },
      tempDirName: folder,
      concurrency: Number(values.workers),
    }).runMutationTest();
    return mutants.map((mutant) => ({ ...mutant, fileName: relative('.', mutant.fileName) }));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

if (positionals.length === 0 && !values.all) {
  console.log(
    `Lines drawn with seed ${values.seed}: core ${values.core}, service ${values.service}`,
  );
}
const mutants = [...(await mutate('core')), ...(await mutate('service'))].filter(isCounted);
for (const mutant of mutants.filter((one) => !detected(one))) console.log(lineOf(mutant));
console.log(table(mutants));
const percent = (100 * mutants.filter(detected).length) / mutants.length;
// Lines of which nothing can be changed have no score.
if (percent < Number(values.least)) {
  console.error(`Fewer than ${values.least} % of the mutants are noticed.`);
  process.exitCode = 1;
}
