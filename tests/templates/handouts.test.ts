import { describe, expect, it } from 'vitest';
import { ungroupedIn } from '../support/ungrouped.ts';
import { renderPdf } from '../../templates/render.ts';
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
    expect(ungroupedIn(read.text)).toEqual([]);
    expect(pdf.missingCharacters).toEqual([]);
    expect(layoutProblems(read.pages, sample)).toEqual([]);
    expect(read.pages).toHaveLength(sample.pages[paper]);
    expect(pdf.pages).toBe(read.pages.length);
    expect(read.info).toMatchObject({
      Title: handout.title,
      Author: handout.author,
      Language: handout.language,
    });
  });
});
