import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** What a window that axe was put into holds. */
interface Looker {
  readonly axe: { run(context: object, options: object): Promise<AxeResults> };
  /** The looks whose contrast was judged, each by its hash. */
  looks: Set<number>;
  /** One element of each look that the last judging met first. */
  fresh: readonly Element[];
}

type Violations = AxeResults['violations'];

/** The looks whose contrast was judged in any window of this process. */
const known = new Set<number>();

const lines = (violations: Violations): readonly string[] =>
  violations.map(
    ({ id, help, nodes }) =>
      `${id}: ${help} (${nodes.map(({ html, failureSummary }) => `${html} ${failureSummary ?? ''}`).join(' | ')})`,
  );

/**
 * Every violation axe finds on the page as it stands, one line each; empty when there is none.
 * Contrast costs more than all other rules together, and a thousand cells of a table look alike: it
 * is judged once for each look.
 */
export async function axeViolations(page: Page): Promise<readonly string[]> {
  const loaded = await page.evaluate(() => 'axe' in window);
  // Evaluated, not added as a script: the page's own policy must stay as strict as it is.
  if (!loaded) await page.evaluate(await readFile(axePath, 'utf8'));
  for (const look of await page.evaluate(meetLooks, loaded ? [] : [...known])) known.add(look);
  return lines([
    ...(await page.evaluate(judgeContrast)),
    ...(await page.evaluate((): Promise<Violations> => {
      const { axe } = window as unknown as Looker;
      const rules = { 'color-contrast': { enabled: false } };
      return axe
        .run(document, { resultTypes: ['violations'], selectors: false, preload: false, rules })
        .then(({ violations }) => violations);
    })),
  ]);
}

/** The contrast, in the dark, of the looks that `axeViolations` has just met first. */
export async function violationsInDark(page: Page): Promise<readonly string[]> {
  if (await page.evaluate(() => (window as unknown as Looker).fresh.length === 0)) return [];
  await page.emulateMedia({ colorScheme: 'dark' });
  const found = lines(await page.evaluate(judgeContrast));
  await page.emulateMedia({ colorScheme: 'light' });
  return found;
}

/** Runs in the page. */
async function judgeContrast(): Promise<Violations> {
  // A colour on its way to another is none that anybody has to read.
  const turning = document.getAnimations().filter((one) => one instanceof CSSTransition);
  await Promise.allSettled(turning.map(({ finished }) => finished));
  const { axe, fresh } = window as unknown as Looker;
  if (fresh.length === 0) return [];
  const runOnly = { type: 'rule', values: ['color-contrast'] };
  const options = { resultTypes: ['violations'], selectors: false, preload: false, runOnly };
  return (await axe.run({ include: fresh }, options)).violations;
}

/**
 * Runs in the page: finds the first elements of looks not met before.
 * @returns the hashes of these looks.
 */
function meetLooks(before: readonly number[]): readonly number[] {
  const looker = window as unknown as Looker;
  looker.looks ??= new Set(before);
  const hash = (text: string, seed: number): number => {
    let sum = seed;
    for (let at = 0; at < text.length; at++) sum = Math.imul(sum ^ text.charCodeAt(at), 0x01000193);
    return sum;
  };
  /** What the style sheets know an element by, and all it stands in; even rows apart from odd ones. */
  const shells = new Map<Element, number>();
  const shellOf = (element: Element): number => {
    const met = shells.get(element);
    if (met !== undefined) return met;
    const around = element.parentElement === null ? schemeSeed : shellOf(element.parentElement);
    const turn = element.tagName === 'TR' ? (element as HTMLTableRowElement).rowIndex % 2 : '';
    const says = [...element.attributes]
      .filter(({ name }) => /^(class|style|disabled|type|role|data-.*|aria-.*)$/.test(name))
      .filter(({ name }) => !/^aria-(label|labelledby|describedby|controls|owns)$/.test(name))
      .map(({ name, value }) => `${name}=${value}`);
    const shell = hash(`${element.tagName}${turn} ${says.join(' ')}`, around);
    shells.set(element, shell);
    return shell;
  };
  const schemeSeed = matchMedia('(prefers-color-scheme: dark)').matches ? 1 : 2;
  const hasText = (element: Element): boolean =>
    'value' in element ||
    [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent!.trim() !== '');
  const fresh = new Map<number, Element>();
  for (const element of document.body.querySelectorAll('*')) {
    if (!hasText(element)) continue;
    const look = shellOf(element);
    if (!looker.looks.has(look)) fresh.set(look, fresh.get(look) ?? element);
  }
  for (const look of fresh.keys()) looker.looks.add(look);
  looker.fresh = [...fresh.values()];
  return [...fresh.keys()];
}
