import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { renderPdf } from '../../templates/render.ts';
import { someOf } from '../support/form.ts';
import { fontsFolder } from './support/folders.ts';
import { INSTANT, PAPERS, SAMPLES } from './support/handouts.ts';
import { layoutProblems } from './support/layoutProblems.ts';
import { hasTool, opened, popplerPages } from './support/tools.ts';

// Every handout, opened by readers that had no part in writing it.

const folder = mkdtempSync(join(tmpdir(), 'handouts-'));
const file = (name: string, paper: string) => join(folder, `${name}.${paper}.pdf`);

beforeAll(async () => {
  for (const sample of SAMPLES) {
    for (const paper of PAPERS) {
      const { bytes } = await renderPdf(sample.build(paper), { fontsFolder, instant: INSTANT });
      writeFileSync(file(sample.name, paper), bytes);
    }
  }
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true }));

const cases = SAMPLES.flatMap((sample) => PAPERS.map((paper) => ({ sample, paper })));
/** What these find wrong, they find in every sheet that is written the same way. */
const some = someOf(cases, 3);

describe.skipIf(!hasTool('pdftotext'))('poppler (skipped where poppler-utils is missing)', () => {
  it.each(cases)('finds every word of $sample.name inside its place on $paper', (test) => {
    const pages = popplerPages(file(test.sample.name, test.paper));
    expect(pages).toHaveLength(test.sample.pages[test.paper]);
    expect(pages.flatMap((page) => page.boxes).length).toBeGreaterThan(30);
    expect(layoutProblems(pages, test.sample)).toEqual([]);
  });

  it.each(some)('opens $sample.name on $paper with its title and language', (test) => {
    const handout = test.sample.build(test.paper);
    const info = opened.pdfinfo(file(test.sample.name, test.paper));
    expect(info).toContain(handout.title);
    expect(info).toMatch(/CreationDate: .*Dec +1 09:00:00 2025|CreationDate: .*2025/);
    expect(info).toMatch(/JavaScript: +no/);
  });
});

describe.skipIf(!hasTool('qpdf'))('qpdf (skipped where it is missing)', () => {
  it.each(some)('finds no fault in $sample.name on $paper', (test) => {
    expect(opened.qpdf(file(test.sample.name, test.paper))).toContain('No syntax or stream');
  });
});

describe.skipIf(!hasTool('mutool'))('mutool (skipped where mupdf-tools is missing)', () => {
  it.each(some)('opens $sample.name on $paper', (test) => {
    const pages = test.sample.pages[test.paper];
    expect(opened.mutool(file(test.sample.name, test.paper))).toContain(`Pages: ${pages}`);
  });
});
