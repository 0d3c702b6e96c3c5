import type { Page } from 'playwright-core';

export const dogPage = (page: Page) => ({
  plan: page.getByRole('region', { name: 'Running plan', exact: true }),
  weight: page.getByRole('region', { name: 'Weight', exact: true }),
  visits: page.getByRole('region', { name: 'Visits', exact: true }),
  /** The day's energy that was decided on last. */
  async kcalPerDay(): Promise<number> {
    const food = page.getByRole('region', { name: 'Food', exact: true });
    const found = /(\d+)\s*kcal\/day/.exec(await food.innerText());
    if (found === null) throw new Error('No daily energy on the page.');
    return Number(found[1]);
  },
});
