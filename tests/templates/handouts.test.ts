import { describe, expect, it } from 'vitest';
import { renderPdf } from '../../templates/index.ts';
import { fontsFolder } from './support/folders.ts';
import { INSTANT, PAPERS, SAMPLES } from './support/handouts.ts';
import { layoutProblems } from './support/layoutProblems.ts';
import { readPdf } from './support/readPdf.ts';

const options = { fontsFolder, instant: INSTANT };

describe.each(SAMPLES)('$name', (sample) => {
  it.each(PAPERS)('reads as agreed on %s', async (paper) => {
    const handout = sample.build(paper);
    const pdf = await renderPdf(handout, options);
    const read = await readPdf(pdf.bytes);
    await expect(read.text).toMatchFileSnapshot(`golden/${sample.name}.${paper}.txt`);
    expect(pdf.missingCharacters).toEqual([]);
    expect(layoutProblems(read.pages)).toEqual([]);
    expect(read.pages).toHaveLength(sample.pages[paper]);
    expect(pdf.pages).toBe(read.pages.length);
    expect(read.info).toMatchObject({
      Title: handout.title,
      Author: handout.author,
      Language: handout.language,
    });
  });

  it('gives the same bytes for the same data', async () => {
    const first = await renderPdf(sample.build('A4'), options);
    const second = await renderPdf(sample.build('A4'), options);
    expect(Buffer.compare(first.bytes, second.bytes)).toBe(0);
  });
});
