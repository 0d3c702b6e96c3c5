import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { startHost, type Host } from '../e2e/support/host.ts';
import { LIST } from './bareSql.ts';
import { compare, type BenchLine } from './measure.ts';
import type { GeneratedPractice } from './practice.ts';

const run = promisify(execFile);
const BARE = fileURLToPath(new URL('startBare.mjs', import.meta.url));

/** The same as a process of its own each time: what Node and the modules cost is in it. */
export async function measureWholeStart(practice: GeneratedPractice): Promise<BenchLine> {
  let host: Host | undefined;
  const { ratio, oursMs, theirsMs } = await compare(
    async () => {
      host = await startHost(practice.folder);
      await firstList(host.address);
    },
    () => run(process.execPath, [BARE, practice.file, LIST]),
    { rounds: 7, warmUp: 1, after: () => host?.stop() },
  );
  return {
    name: 'The same from the start of the program as built, asked over HTTP',
    against: 'a new process with the driver and the bare SQL',
    value: ratio,
    unit: '×',
    target: 2.5,
    note: `${oursMs.toFixed(0)} ms / ${theirsMs.toFixed(0)} ms`,
  };
}

/** Hands the start code in and asks for the list, as the window does. */
async function firstList(address: string): Promise<void> {
  const { origin, hash } = new URL(address);
  const post = async (path: string, body: object, key = ''): Promise<Record<string, unknown>> => {
    const answer = await fetch(origin + path, {
      method: 'POST',
      headers: { authorization: `Bearer ${key}`, 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    return (await answer.json()) as Record<string, unknown>;
  };
  const { key } = await post('/start', { code: hash.slice('#start='.length) });
  const { ok } = await post('/call/dogs/list', { query: '' }, String(key));
  if (ok !== true) throw new Error('The program gave no list.');
}
