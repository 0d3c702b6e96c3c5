// `npm run demo`: the main job without a window. A fresh demonstration practice in a folder that it
// names, one dog from intake through two follow-ups, the handouts as PDF files, and every computed
// number with its sources.
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { CallName, InputOf, ResultOf } from '../../contract/contract.ts';
import { HANDOUT_KINDS } from '../../contract/records.ts';
import { createService, type Service } from '../service.ts';
import { printout } from './printout.ts';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

async function ask<N extends CallName>(
  service: Service,
  name: N,
  input: InputOf<N>,
): Promise<ResultOf<N>> {
  const answer = await service.call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.error.message}`);
  return answer.value;
}

async function writeHandouts(service: Service, dogId: string, folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  console.log('\nHandouts');
  for (const kind of HANDOUT_KINDS) {
    const pdf = await ask(service, 'handouts/render', { kind, dogId, paper: null });
    const file = join(folder, pdf.fileName);
    writeFileSync(file, Buffer.from(pdf.base64, 'base64'));
    console.log(`  ${file} (${pdf.pages} ${pdf.pages === 1 ? 'page' : 'pages'})`);
  }
}

const folder = mkdtempSync(join(tmpdir(), 'trotwell-demo-'));
const { version } = JSON.parse(readFileSync(at('../../../package.json'), 'utf8')) as {
  version: string;
};
const service = createService({
  folder,
  fontsFolder: at('../../../templates/fonts'),
  version,
  clock: () => new Date(),
});
try {
  const { practice } = await ask(service, 'app/open', { which: 'demo' });
  console.log(`${practice?.name}: invented people and dogs.`);
  console.log(`Records in ${folder}`);
  const [line] = await ask(service, 'dogs/list', { query: 'Bramble' });
  const file = await ask(service, 'dogs/file', { dogId: line!.id });
  console.log('');
  for (const text of printout(file, practice!)) console.log(text);
  await writeHandouts(service, line!.id, join(folder, 'handouts'));
  console.log(
    '\nThis supports the judgement of a trained person; the treating vet and local law come first.',
  );
} finally {
  await service.close();
}
