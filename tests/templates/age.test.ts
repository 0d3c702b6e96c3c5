import { expect, it } from 'vitest';
import { assessmentRecord } from './support/alone.ts';
import { renderPdf } from '../../templates/render.ts';
import { fontsFolder } from './support/folders.ts';
import { INSTANT } from './support/handouts.ts';
import { letterWords, record } from './support/letters.ts';
import { readPdf } from './support/readPdf.ts';

it.each([
  [1, '1 month'],
  [11, '11 months'],
  [23, '23 months'],
  [24, '2 years'],
  [56, '4 years'],
])('prints an age of %i months as %s', async (ageMonths, printed) => {
  const handout = assessmentRecord({ ...record('A4'), ageMonths }, letterWords);
  const { bytes } = await renderPdf(handout, { fontsFolder, instant: INSTANT });
  expect((await readPdf(bytes)).text).toContain(`Age | ${printed} |`);
});
