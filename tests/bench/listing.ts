import { listBare, openBare, searchBare } from './bareSql.ts';
import type { Service } from '../../electron/service/service.ts';
import { compare, type BenchLine } from './measure.ts';
import type { GeneratedPractice } from './practice.ts';
import { ask, startService } from './service.ts';

/** What a practitioner types, letter by letter, with an accent where the record has none and back. */
export const TYPED = ['br', 'brück', 'emile', 'lowe mor', 'nandu', 'quill jan', 'zzz'];

function startBare(file: string): void {
  const db = openBare(file);
  listBare(db);
  db.close();
}

/** From the start of the service to the first list, against opening the file and asking it. */
export async function measureStart(practice: GeneratedPractice): Promise<BenchLine> {
  let service: Service | undefined;
  const { ratio, oursMs, theirsMs } = await compare(
    async () => {
      service = startService(practice.folder);
      await ask(service, 'dogs/list', { query: '' });
    },
    () => startBare(practice.file),
    // Closing looks whether a backup is due, which is no part of a start.
    { after: () => service?.close() },
  );
  return {
    name: 'Service start to the first list of dogs',
    against: 'open the same file, run the bare SQL',
    value: ratio,
    unit: '×',
    target: 1.3,
    note: `${oursMs.toFixed(1)} ms / ${theirsMs.toFixed(1)} ms`,
  };
}

/** The service's part of a search, against the bare SQL. */
export async function measureSearch(practice: GeneratedPractice): Promise<BenchLine> {
  const service = startService(practice.folder);
  const db = openBare(practice.file);
  await ask(service, 'dogs/list', { query: '' });
  const words = TYPED.filter((query) => /^[a-z]+$/.test(query));
  const { ratio, oursMs, theirsMs } = await compare(
    async () => {
      for (const query of words) await ask(service, 'dogs/list', { query });
    },
    () => words.forEach((word) => searchBare(db, word)),
  );
  db.close();
  await service.close();
  return {
    name: 'Search for a dog or owner, the service alone',
    against: 'the bare SQL, names and else notes',
    value: ratio,
    unit: '×',
    target: 3,
    note: `${oursMs.toFixed(1)} ms / ${theirsMs.toFixed(1)} ms for ${words.length} searches`,
  };
}
