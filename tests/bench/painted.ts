import type { Page } from 'playwright-core';
import { percentile, roundsOf, type BenchLine } from './measure.ts';

/** What the page shows once it has answered. */
export interface Awaited {
  readonly selector: string;
  /** The words that stand in it; left out: any others than before. */
  readonly says?: string;
}

/** In the page: from the next key or click to the frame that shows what is awaited. */
function arm({ selector, says }: Awaited): void {
  const shown = (): string =>
    [...document.querySelectorAll(selector)].map((node) => node.textContent).join('\n');
  const before = shown();
  const answered = (): boolean =>
    says === undefined ? shown() !== before && shown() !== '' : shown().includes(says);
  let at: number | null = null;
  // Before the page's own listeners, whose changes must not slip by.
  for (const kind of ['input', 'click'] as const) {
    addEventListener(kind, (event) => (at ??= event.timeStamp), { capture: true, once: true });
  }
  const { promise, resolve, reject } = Promise.withResolvers<number>();
  setTimeout(() => reject(new Error(`Not painted: ${selector} ${says ?? ''}`)), 30_000);
  const watch = new MutationObserver(() => {
    if (at === null || !answered()) return;
    watch.disconnect();
    const from = at;
    // A task that a frame's callback leaves behind runs once that frame is drawn.
    requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - from)));
  });
  watch.observe(document, { subtree: true, childList: true, characterData: true });
  // Where the page answers nothing, it is told when it is asked for.
  promise.catch(() => undefined);
  (window as unknown as { painted: Promise<number> }).painted = promise;
}

/** Milliseconds from the key or click that `act` makes to the frame that shows its answer. */
export async function painted(
  page: Page,
  awaited: Awaited,
  act: () => Promise<unknown>,
): Promise<number> {
  await page.evaluate(arm, awaited);
  await act();
  return page.evaluate(() => (window as unknown as { painted: Promise<number> }).painted);
}

/** The waits of many rounds; the first one warms up and is left out. */
export async function waitsOf(rounds: number, once: () => Promise<number[]>): Promise<number[]> {
  const waits: number[] = [];
  await once();
  for (let round = 0; round < roundsOf(rounds); round += 1) waits.push(...(await once()));
  return waits;
}

/** A key on a page that does nothing but repeat it: what the browser itself takes. */
export async function barePage(page: Page): Promise<number[]> {
  await page.setContent(
    '<input oninput="document.querySelector(`p`).textContent = this.value"><p>-</p>',
  );
  const box = page.locator('input');
  return waitsOf(50, async () => [await painted(page, { selector: 'p' }, () => box.press('a'))]);
}

/** A line of what 95 of 100 waits keep to, beside the key on a bare page. */
export function waitLine(
  name: string,
  target: number,
  waits: readonly number[],
  bare: readonly number[],
): BenchLine {
  const [most, bareMost] = [percentile(waits, 95), percentile(bare, 95)];
  return {
    name: `${name}, 95 of 100 within`,
    against: `Chromium and the loopback host, ${waits.length} times`,
    value: most,
    unit: 'ms',
    target,
    note: `median ${percentile(waits, 50).toFixed(0)} ms; ${(most / bareMost).toFixed(1)} × a key on a bare page`,
  };
}
