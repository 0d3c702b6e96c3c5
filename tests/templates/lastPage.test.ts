import { describe, expect, it } from 'vitest';
import { en } from '../../templates/index.ts';
import { assessmentRecord, runningPlan } from './support/alone.ts';
import type { HandoutDocument } from '../../templates/index.ts';
import { renderPdf } from '../../templates/render.ts';
import { fontsFolder } from './support/folders.ts';
import { INSTANT, PAPERS } from './support/handouts.ts';
import { letterWords, record } from './support/letters.ts';
import { plan } from './support/plans.ts';
import { readPdf } from './support/readPdf.ts';

/** The pages of a handout, each as its lines from top to bottom. */
async function pagesOf(handout: HandoutDocument): Promise<readonly (readonly string[])[]> {
  const { bytes } = await renderPdf(handout, { fontsFolder, instant: INSTANT });
  const { text } = await readPdf(bytes);
  return text
    .split(/^--- page \d+\n/m)
    .slice(1)
    .map((page) => page.trimEnd().split('\n'));
}

/** Lengths that move the end of a sheet down the page, step by step, and over its edge. */
const steps = (most: number): readonly number[] => Array.from({ length: most }, (_, n) => n * 2);

describe.each(PAPERS)('on %s the end of a sheet never has a page to itself', (paper) => {
  it.each(steps(14))('the signature stays with a note above it: %i lines of notes', async (n) => {
    const notes = Array.from({ length: n + 1 }, (_, line) => `Note number ${line}.`).join('\n');
    const pages = await pagesOf(assessmentRecord({ ...record(paper), notes }, letterWords));
    const signed = pages.find((page) => page.some((line) => line.startsWith('Practitioner')))!;
    const at = signed.findIndex((line) => line.startsWith('Practitioner'));
    expect(signed[at - 1]).toBe(`Note number ${n}.`);
    const last = pages.at(-1)!;
    expect(last.filter((line) => /^\d+\. \| /.test(line)).length).toBeGreaterThanOrEqual(3);
  });

  it.each(steps(10))('the sources stay with the notes on the plan: goal of %i min', async (n) => {
    const pages = await pagesOf(
      runningPlan(plan(paper, { goal: { continuousMinutes: 12 + n } }), en),
    );
    const last = pages.at(-1)!;
    expect(last).toContain('Where this comes from');
    expect(last).toContain('About this plan');
  });
});
