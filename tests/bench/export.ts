import { randomUUID } from 'node:crypto';
import { setTimeout } from 'node:timers/promises';
import { timed, type BenchLine } from './measure.ts';
import type { GeneratedPractice } from './practice.ts';
import { ask, startService } from './service.ts';

/** Between two calls made while an export is written, ms. */
const PAUSE_MS = 5;

/** The longest that another call waits while everything is written into one bundle. */
export async function measureExport(practice: GeneratedPractice): Promise<BenchLine> {
  const service = startService(practice.folder);
  await ask(service, 'app/open', { which: 'own' });
  let isDone = false;
  const written = timed(() =>
    ask(service, 'export/make', { clientId: null, workId: randomUUID() }),
  ).finally(() => (isDone = true));
  let longest = 0;
  let calls = 0;
  for (; !isDone; calls += 1) {
    longest = Math.max(longest, await timed(() => ask(service, 'app/status', {})));
    await setTimeout(PAUSE_MS);
  }
  const wholeMs = await written;
  await service.close();
  return {
    name: 'Longest wait of a call while all records are exported',
    against: `${calls} calls in turn, ${practice.dogs.toLocaleString('en')} dogs`,
    value: longest,
    unit: 'ms',
    target: 200,
    note: `the export took ${(wholeMs / 1000).toFixed(1)} s`,
  };
}
