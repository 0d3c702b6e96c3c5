import type { Page } from 'playwright-core';

/** Sets one of the steps of the text size, as the View menu does; '' for the normal one. */
export async function setText(page: Page, size: string): Promise<void> {
  await page.evaluate((name) => {
    if (name === '') delete document.documentElement.dataset['text'];
    else document.documentElement.dataset['text'] = name;
  }, size);
}

/**
 * Whatever carries text and cannot be read whole: it is wider than its box, which hides the rest,
 * or it stands beyond the edge of the window without anything to scroll it by.
 */
export function cutOff(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const hides = (element: Element) => getComputedStyle(element).overflowX;
    const meantToBeHidden = (element: Element) =>
      element.closest('.visually-hidden, [aria-hidden="true"], .page-text, .skip') !== null;
    const scrolls = (element: Element): boolean => {
      for (let at: Element | null = element; at !== null && at !== document.body;) {
        if (['auto', 'scroll'].includes(hides(at))) return true;
        at = at.parentElement;
      }
      return false;
    };
    const tells = (element: Element): boolean =>
      (element.textContent ?? '').trim() !== '' &&
      element.closest('svg') === null &&
      !meantToBeHidden(element);
    const edge = document.documentElement.clientWidth + 1;
    const found: string[] = [];
    for (const element of document.body.querySelectorAll<HTMLElement>('*')) {
      const box = element.getBoundingClientRect();
      if (box.width === 0 || box.height === 0) continue;
      // Hardly any element is wider than its place: what costs more is asked of those.
      const wider = element.scrollWidth > element.clientWidth + 1;
      const beyond = box.right > edge && !scrolls(element);
      const hidden = wider && hides(element) === 'hidden';
      if ((hidden || beyond) && tells(element)) found.push(element.outerHTML.slice(0, 120));
    }
    return found;
  });
}

/** Everything on the page that would move: by a transition that takes time, or by an animation. */
export function moving(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const takesTime = (text: string) => text.split(',').some((part) => parseFloat(part) > 0);
    return [...document.querySelectorAll('*')]
      .filter((element) =>
        [null, '::before', '::after'].some((part) => {
          const style = getComputedStyle(element, part);
          const animated = style.animationName !== 'none' && takesTime(style.animationDuration);
          return animated || takesTime(style.transitionDuration);
        }),
      )
      .map((element) => element.outerHTML.slice(0, 120));
  });
}
