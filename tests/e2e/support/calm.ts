import type { Locator, Page } from 'playwright-core';

/** How much of a form is put before the eyes at once. */
export interface Load {
  /** What can be operated: fields, each radio of a group, buttons, links, folds. */
  readonly controls: number;
  /** px from the top of what it holds to its end. */
  readonly height: number;
  /** Words in sight; of a select the chosen one only. */
  readonly words: number;
}

/** Measures what is in sight inside an element; `but` names parts that are left out. */
export function loadOf(root: Locator, but = ''): Promise<Load> {
  return root.evaluate((element, left) => {
    const seen = (node: Element): boolean =>
      (left === '' || node.closest(left) === null) &&
      node.closest('.visually-hidden, [aria-hidden="true"]') === null &&
      node.checkVisibility({ visibilityProperty: true });
    const operated = 'input, select, textarea, button, summary, a[href]';
    const controls = [...element.querySelectorAll(operated)].filter(seen).length;
    const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
    let words = 0;
    while (walker.nextNode()) {
      const parent = walker.currentNode.parentElement;
      if (parent === null || parent.closest('select') !== null || !seen(parent)) continue;
      words += walker.currentNode.textContent?.match(/[\p{L}\p{N}]\S*/gu)?.length ?? 0;
    }
    for (const select of element.querySelectorAll('select')) {
      if (!seen(select)) continue;
      words += select.selectedOptions[0]?.textContent?.match(/[\p{L}\p{N}]\S*/gu)?.length ?? 0;
    }
    return { controls, height: element.scrollHeight, words };
  }, but);
}

/** A line of the printed table. */
export const line = (what: string, is: number | string, most: number): string =>
  `${what.padEnd(44)}${String(is).padStart(8)}   at most ${most}`;

/** The form of a visit on the page. */
export const visitForm = (page: Page): Locator => page.locator('form.visit');
