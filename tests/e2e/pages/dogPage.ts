import type { Page } from 'playwright-core';

export const dogPage = (page: Page) => ({
  plan: page.getByRole('region', { name: 'Running plan', exact: true }),
  food: page.getByRole('region', { name: 'Food', exact: true }),
  weight: page.getByRole('region', { name: 'Weight', exact: true }),
  visits: page.getByRole('region', { name: 'Visits', exact: true }),
});
