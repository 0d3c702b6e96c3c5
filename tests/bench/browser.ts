import { fileURLToPath } from 'node:url';
import type { Locator, Page } from 'playwright-core';
import { createDoor } from '../../electron/loopback/door.ts';
import { startHost } from '../../electron/loopback/host.ts';
import { openBrowser } from '../e2e/support/browser.ts';
import { chartsSize, filesUpToList, firstPaintSize, noteFirstList } from './firstPaint.ts';
import { LONG_DOG } from './longDog.ts';
import { roundsOf, type BenchLine } from './measure.ts';
import { barePage, painted, waitLine, waitsOf } from './painted.ts';
import type { GeneratedPractice } from './practice.ts';
import { ask, startService } from './service.ts';

export const RENDERER = fileURLToPath(new URL('../../out/renderer', import.meta.url));
/** One word each: a space alone asks for nothing new. */
const TYPED = ['brack', 'emile', 'lowe', 'fennimore', 'nandu', 'quill', 'castaneda'];
const OPENINGS = 200;

/** The list of a desk where nothing is searched; its caption ends with the kind it counts. */
export const allDogs = (page: Page): Locator => page.locator('main caption', { hasText: /dogs$/ });
const TIMELINE = 'ol.timeline li';

/** Types the words, each key after the list of the one before. */
async function typeWords(page: Page): Promise<number[]> {
  const box = page.getByRole('searchbox');
  const waits: number[] = [];
  for (const word of TYPED) {
    for (let length = 1; length <= word.length; length += 1) {
      const list = {
        selector: 'main caption, main [role=status]',
        says: `“${word.slice(0, length)}”`,
      };
      waits.push(await painted(page, list, () => box.press(word[length - 1]!)));
    }
    await box.fill('');
    await allDogs(page).waitFor();
  }
  return waits;
}

/** From the list to the page of the dog and back. */
async function openLongDog(page: Page): Promise<number[]> {
  const link = page.getByRole('link', { name: LONG_DOG, exact: true }).first();
  const wait = await painted(page, { selector: TIMELINE }, () => link.click());
  await page.goBack();
  await link.waitFor();
  return [wait];
}

async function openPlan(page: Page): Promise<number[]> {
  const link = page.getByRole('link', { name: 'The whole plan' });
  const weeks = { selector: '[aria-labelledby=plan-weeks] tbody tr' };
  const wait = await painted(page, weeks, () => link.click());
  await page.goBack();
  await link.waitFor();
  return [wait];
}

/** Two digits into the weight and out again, each repainting the panel beside the form. */
async function typeWeight(page: Page): Promise<number[]> {
  const weight = page.getByLabel('Body weight');
  const waits: number[] = [];
  for (const key of ['2', '6', 'Backspace', 'Backspace']) {
    waits.push(await painted(page, { selector: '.follows' }, () => weight.press(key)));
  }
  return waits;
}

/** Saves a follow-up of one dog after another. */
function saveVisits(page: Page, dogIds: readonly string[]): () => Promise<number[]> {
  let next = 0;
  return async () => {
    await page.goto(`${new URL(page.url()).origin}/#/dogs/${dogIds[next]}/visits/new`);
    next += 1;
    await page.getByLabel('Body weight').fill('20');
    const save = page.getByRole('button', { name: 'Save visit' });
    return [await painted(page, { selector: 'h1' }, () => save.click())];
  };
}

/** Bytes of the page's own objects, once what is unused is let go of. */
async function heapBytes(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  await session.detach();
  return usedSize;
}

/** What the page holds after many openings more than what it held after ten. */
async function measureMemory(page: Page): Promise<BenchLine> {
  for (let opened = 0; opened < roundsOf(10); opened += 1) await openLongDog(page);
  const before = await heapBytes(page);
  for (let opened = 0; opened < roundsOf(OPENINGS); opened += 1) await openLongDog(page);
  const after = await heapBytes(page);
  return {
    name: `Memory of the page after ${OPENINGS} openings of a dog`,
    against: 'the same after 10',
    value: after / before,
    unit: '×',
    target: 1.1,
    note: `${(after / 1e6).toFixed(1)} MB / ${(before / 1e6).toFixed(1)} MB`,
  };
}

/** The window as the practitioner sees it: what it fetches, and how long each answer is waited for. */
export async function measureWindow(practice: GeneratedPractice): Promise<BenchLine[]> {
  const service = startService(practice.folder);
  const host = await startHost({ service, rendererFolder: RENDERER, door: createDoor() });
  const browser = await openBrowser();
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const bare = await barePage(await context.newPage());
  const page = await context.newPage();
  await page.addInitScript(noteFirstList);
  await page.goto(host.newAddress());
  await allDogs(page).waitFor();
  const files = await filesUpToList(page);
  const sizes = [firstPaintSize(files, RENDERER), chartsSize(files, RENDERER)];
  const line = (name: string, target: number, waits: readonly number[]): BenchLine =>
    waitLine(name, target, waits, bare);
  const lines = [
    line('Search, from the key to the painted list', 50, await waitsOf(2, () => typeWords(page))),
  ];
  lines.push(line('Opening a dog with 40 visits', 100, await waitsOf(50, () => openLongDog(page))));
  lines.push(await measureMemory(page));
  await page.getByRole('link', { name: LONG_DOG, exact: true }).first().click();
  lines.push(line('Opening its plan of 39 weeks', 100, await waitsOf(50, () => openPlan(page))));
  await page.getByRole('link', { name: 'New follow-up' }).click();
  await page.getByLabel('Body weight').waitFor();
  lines.push(
    line('Key in the weight to the repainted panel', 32, await waitsOf(13, () => typeWeight(page))),
  );
  const seen = await ask(service, 'dogs/list', { query: 'a', offset: 1 });
  const more = await ask(service, 'dogs/list', { query: 'a', offset: 1 + seen.length });
  const ids = [...seen, ...more].map(({ id }) => id);
  lines.push(line('Saving a visit', 150, await waitsOf(50, saveVisits(page, ids))));
  await browser.close();
  await host.close();
  await service.close();
  return [...lines, ...sizes];
}
