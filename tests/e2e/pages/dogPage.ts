import type { Page } from 'playwright-core';

export const dogPage = (page: Page) => ({
  plan: page.getByRole('region', { name: 'Running plan', exact: true }),
  weight: page.getByRole('region', { name: 'Weight', exact: true }),
  timeline: page.getByRole('region', { name: 'Timeline', exact: true }),
  /** The visits on the timeline, each by its link. */
  visits: page
    .getByRole('region', { name: 'Timeline', exact: true })
    .getByRole('link', { name: /open this/ }),
  /** Opens a saved visit, the latest unless it is named, and its form. */
  async amendVisit(name: RegExp = /open this/): Promise<void> {
    await page.getByRole('link', { name }).first().click();
    await page.getByRole('link', { name: 'Amend', exact: true }).click();
    await page.getByRole('heading', { level: 2, name: 'Amendment' }).waitFor();
  },
  /** The day's energy that was decided on last. */
  async kcalPerDay(): Promise<number> {
    const food = page.getByRole('region', { name: 'Food', exact: true });
    const found = /(\d+)\s*kcal\/day/.exec(await food.innerText());
    if (found === null) throw new Error('No daily energy on the page.');
    return Number(found[1]);
  },
});
