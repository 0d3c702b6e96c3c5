// Page pictures of every sample handout, to look at: `npm run handouts:pictures [folder] [dpi] [sample]`.
import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { renderPdf } from '../../templates/render.ts';
import { fontsFolder } from '../templates/support/folders.ts';
import { INSTANT, PAPERS, SAMPLES } from '../templates/support/handouts.ts';

const folder = resolve(process.argv[2] ?? 'test-results/handouts');
const dpi = process.argv[3] ?? '60';
const only = process.argv[4];
mkdirSync(folder, { recursive: true });

for (const sample of SAMPLES.filter(({ name }) => only === undefined || name === only)) {
  for (const paper of PAPERS) {
    const { bytes, pages } = await renderPdf(sample.build(paper), {
      fontsFolder,
      instant: INSTANT,
    });
    const base = join(folder, `${sample.name}.${paper}`);
    writeFileSync(`${base}.pdf`, bytes);
    try {
      execFileSync('pdftoppm', ['-r', dpi, '-png', `${base}.pdf`, base]);
    } catch (error) {
      console.error('Pictures need pdftoppm (Debian package poppler-utils).', error);
      process.exit(1);
    }
    console.log(`${base}.pdf: ${pages} page(s)`);
  }
}
