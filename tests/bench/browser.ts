import { fileURLToPath } from 'node:url';
import { chromium, type Locator, type Page } from 'playwright-core';
import { createDoor } from '../../electron/loopback/door.ts';
import { startHost } from '../../electron/loopback/host.ts';
import { CHROMIUM_ARGS, findChromium } from '../support/chromium.ts';
import { chartsSize, firstPaintSize, watchFiles } from './firstPaint.ts';
import { percentile, type BenchLine } from './measure.ts';
import type { GeneratedPractice } from './practice.ts';
import { startService } from './service.ts';

export const RENDERER = fileURLToPath(new URL('../../out/renderer', import.meta.url));
/** One word each: a space alone asks for nothing new. */
const TYPED = ['brack', 'emile', 'lowe', 'fennimore', 'nandu', 'quill', 'castaneda'];
const ROUNDS = 2;

interface Watched {
  /** Milliseconds from each key to the frame that shows its answer. */
  paintedAfter: number[];
}

/** In the page: from the key's own time stamp to the frame that shows the list it asked for. */
function watchList(): void {
  const watched: Watched = { paintedAfter: [] };
  (window as unknown as { bench: Watched }).bench = watched;
  let typed: { at: number; query: string } | null = null;
  const box = document.querySelector<HTMLInputElement>('input[type=search]')!;
  // Before the page's own listener, whose changes must not slip by.
  const type = (event: Event): void => {
    if (box.value !== '') typed = { at: event.timeStamp, query: `“${box.value}”` };
  };
  addEventListener('input', type, { capture: true });
  new MutationObserver(() => {
    const said = [...document.querySelectorAll('main caption, main [role=status]')];
    if (typed === null || !said.some((node) => node.textContent.includes(typed!.query))) return;
    const { at } = typed;
    typed = null;
    // A task that a frame's callback leaves behind runs once that frame is drawn.
    requestAnimationFrame(() =>
      setTimeout(() => watched.paintedAfter.push(performance.now() - at)),
    );
  }).observe(document.querySelector('main')!, {
    subtree: true,
    childList: true,
    characterData: true,
  });
}

/** The list of a desk where nothing is searched; its caption ends with the kind it counts. */
const allDogs = (page: Page): Locator => page.locator('main caption', { hasText: /dogs$/ });

const painted = (page: Page): Promise<number[]> =>
  page.evaluate(() => (window as unknown as { bench: Watched }).bench.paintedAfter);

/** Types the words, each key after the list of the one before; milliseconds for each key. */
async function typeWords(page: Page, rounds: number): Promise<number[]> {
  const box = page.getByRole('searchbox');
  const before = (await painted(page)).length;
  let expected = before;
  for (const word of Array.from({ length: rounds }, () => TYPED).flat()) {
    for (const key of word) {
      await box.press(key);
      expected += 1;
      while ((await painted(page)).length < expected) await page.waitForTimeout(5);
    }
    await box.fill('');
    await allDogs(page).waitFor();
  }
  return (await painted(page)).slice(before);
}

/** The window as the practitioner sees it: what it fetches, and from a key to the painted list. */
export async function measureWindow(practice: GeneratedPractice): Promise<BenchLine[]> {
  const executablePath = findChromium();
  if (executablePath === null)
    throw new Error('No Chromium on this machine; "npm test" fetches it.');
  const service = startService(practice.folder);
  const host = await startHost({ service, rendererFolder: RENDERER, door: createDoor() });
  const browser = await chromium.launch({ executablePath, args: CHROMIUM_ARGS });
  const page = await browser.newPage();
  const files = watchFiles(page);
  await page.goto(host.newAddress());
  await allDogs(page).waitFor();
  const sizes = [firstPaintSize(files, RENDERER), chartsSize(files, RENDERER)];
  await page.evaluate(watchList);
  await typeWords(page, 1);
  const waits = await typeWords(page, ROUNDS);
  await browser.close();
  await host.close();
  await service.close();
  const typing: BenchLine = {
    name: 'Search, from the key to the painted list, 95 of 100 keys within',
    against: `Chromium and the loopback host, ${waits.length} keys`,
    value: percentile(waits, 95),
    unit: 'ms',
    target: 50,
    note: `median ${percentile(waits, 50).toFixed(0)} ms`,
  };
  return [typing, ...sizes];
}
