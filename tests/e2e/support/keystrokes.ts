import type { Page } from 'playwright-core';

/**
 * The keystroke-level model of Card, Moran and Newell ("The keystroke-level model for user
 * performance time with interactive systems", Communications of the ACM 23 (7), 1980), from memory
 * (M): 0.28 s a key for an average typist who is no typist by trade, 1.35 s of thinking before each
 * decision. What the program itself takes is left out.
 */
const KEY_S = 0.28;
const THINKING_S = 1.35;

export interface Tally {
  /** Keys pressed, Shift and the like among them. */
  readonly keys: number;
  readonly pointers: number;
}

declare global {
  interface Window {
    tally?: { keys: number; pointers: number };
  }
}

/** Counts keys and pointer presses as the page gets them, from now on until it is loaded anew. */
export async function countInput(page: Page): Promise<() => Promise<Tally>> {
  await page.evaluate(() => {
    const tally = { keys: 0, pointers: 0 };
    window.tally = tally;
    const count = (what: keyof typeof tally) => () => {
      tally[what]++;
    };
    window.addEventListener('keydown', count('keys'), { capture: true });
    window.addEventListener('pointerdown', count('pointers'), { capture: true });
  });
  return () => page.evaluate(() => window.tally!);
}

/** How long a practised user takes, in seconds. */
export function keystrokeEstimate(keys: number, decisions: number): number {
  return keys * KEY_S + decisions * THINKING_S;
}
