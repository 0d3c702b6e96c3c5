import { expect, test } from 'vitest';
import { renderPdf } from '../../templates/render.ts';
import { fontsFolder } from './support/folders.ts';
import { INSTANT, SAMPLES } from './support/handouts.ts';

// Fonts and shaped words are kept from one document to the next; no file may show it.
test('a sheet has the same bytes each time, and what was printed before leaves no trace in it', async () => {
  const print = (sample: (typeof SAMPLES)[number]) =>
    renderPdf(sample.build('A4'), { fontsFolder, instant: INSTANT });
  const first: Uint8Array[] = [];
  for (const sample of SAMPLES) first.push((await print(sample)).bytes);
  for (const [index, sample] of [...SAMPLES.entries()].reverse()) {
    const again = (await print(sample)).bytes;
    expect(Buffer.compare(again, first[index]!), sample.name).toBe(0);
  }
});
