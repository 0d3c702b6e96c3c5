import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/**
 * Every violation axe finds on the page as it stands, one line each; empty when there is none.
 * `rules` are the ids of those that are looked at, all where none is named.
 */
export async function axeViolations(
  page: Page,
  rules: readonly string[] = [],
): Promise<readonly string[]> {
  const loaded = await page.evaluate(() => 'axe' in window);
  // Evaluated, not added as a script: the page's own policy must stay as strict as it is.
  if (!loaded) await page.evaluate(await readFile(axePath, 'utf8'));
  const results = await page.evaluate(async (only) => {
    // A colour on its way to another is none that anybody has to read.
    const turning = document.getAnimations().filter((one) => one instanceof CSSTransition);
    await Promise.allSettled(turning.map(({ finished }) => finished));
    const { axe } = window as unknown as { axe: { run(options: object): Promise<AxeResults> } };
    const named = only.length === 0 ? {} : { runOnly: { type: 'rule', values: only } };
    return axe.run({ resultTypes: ['violations'], selectors: false, preload: false, ...named });
  }, rules);
  return results.violations.map(
    ({ id, help, nodes }) =>
      `${id}: ${help} (${nodes.map(({ html, failureSummary }) => `${html} ${failureSummary ?? ''}`).join(' | ')})`,
  );
}
