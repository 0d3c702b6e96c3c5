// One size of practice: `node --expose-gc size.ts 5000` prints a `SizeLine` as JSON.
import { statSync } from 'node:fs';
import { openBare, readWeighings } from './bareSql.ts';
import { median, timed } from './measure.ts';
import { generatePractice } from './practice.ts';
import { review } from './review.ts';
import type { SizeLine } from './scaling.ts';
import { ask, startService } from './service.ts';

const ROUNDS = 7;

async function medianOf(task: () => unknown): Promise<number> {
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) times.push(await timed(task));
  return median(times);
}

function memoryMB(): number {
  global.gc?.();
  return process.memoryUsage().rss / 1e6;
}

const practice = generatePractice(Number(process.argv[2]));
const service = startService(practice.folder);
const listMs = await medianOf(() => ask(service, 'dogs/list', { query: '' }));
const searchMs = await medianOf(() => ask(service, 'dogs/list', { query: 'brück' }));
const listMemoryMB = memoryMB();
await service.close();
const db = openBare(practice.file);
const reviewMs = await medianOf(() => review(readWeighings(db)));
const line: SizeLine = {
  dogs: practice.dogs,
  fileMB: statSync(practice.file).size / 1e6,
  listMs,
  searchMs,
  reviewMs,
  reviewUsPerDog: (1000 * reviewMs) / practice.dogs,
  listMemoryMB,
  reviewMemoryMB: memoryMB(),
};
db.close();
practice.remove();
console.log(JSON.stringify(line));
