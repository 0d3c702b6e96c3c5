import type { Page } from 'playwright-core';
import { openBrowser } from '../e2e/support/browser.ts';
import { startHost } from '../e2e/support/host.ts';
import { noteFirstList } from './firstPaint.ts';
import { LONG_DOG } from './longDog.ts';
import { percentile, roundsOf, type BenchLine } from './measure.ts';
import { painted } from './painted.ts';
import type { GeneratedPractice } from './practice.ts';

const ROUNDS = 50;
/** Its text is laid over the page once that is drawn. */
const FIRST_PAGE = { selector: '.preview section:first-of-type .page-text span' };

interface Opening {
  readonly desk: number;
  readonly first: number;
  readonly later: number;
}

/** Starts the program, opens its window, and has both sheets of the dog shown twice. */
async function openOnce(page: Page, folder: string): Promise<Opening> {
  const start = performance.now();
  const host = await startHost(folder);
  await page.addInitScript(noteFirstList);
  await page.goto(host.address);
  // Looked for at every frame: a locator looks ever more rarely, at last twice a second.
  await page.waitForFunction(() => 'listedAt' in window, null, { polling: 'raf' });
  await page.evaluate(() => new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn))));
  const desk = performance.now() - start;
  // The sheets are timed from a desk at rest.
  await page.waitForLoadState('networkidle');
  await page.getByRole('link', { name: LONG_DOG, exact: true }).first().click();
  const sheets = page.getByRole('link', { name: 'Handouts', exact: true });
  const first = await painted(page, FIRST_PAGE, () => sheets.click());
  await page.goBack();
  const later = await painted(page, FIRST_PAGE, () => sheets.click());
  await host.stop();
  return { desk, first, later };
}

/** From the start of the program to a desk, and to the sheets of a dog, as they are waited for. */
export async function measureOpening({ folder }: GeneratedPractice): Promise<BenchLine[]> {
  const browser = await openBrowser();
  const openings: Opening[] = [];
  for (let round = 0; round < roundsOf(ROUNDS); round += 1) {
    const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
    openings.push(await openOnce(await context.newPage(), folder));
    await context.close();
  }
  await browser.close();
  const line = (name: string, target: number, waits: readonly number[]): BenchLine => ({
    name: `${name}, 95 of 100 within`,
    against: `a new process and a new window, ${waits.length} times`,
    value: percentile(waits, 95),
    unit: 'ms',
    target,
    note: `median ${percentile(waits, 50).toFixed(0)} ms`,
  });
  return [
    line(
      'From the start of the program to a painted desk',
      1500,
      openings.map(({ desk }) => desk),
    ),
    line(
      'First preview of both sheets, to its first page',
      600,
      openings.map(({ first }) => first),
    ),
    line(
      'The same, later',
      200,
      openings.map(({ later }) => later),
    ),
  ];
}
