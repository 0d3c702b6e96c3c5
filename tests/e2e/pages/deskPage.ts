import type { Page } from 'playwright-core';

export const deskPage = (page: Page) => ({
  box: page.getByRole('searchbox', { name: 'Find or add a dog' }),
  async open(dog: string): Promise<void> {
    // A dog may stand in several lists of the desk; each leads to its page.
    await page.getByRole('link', { name: dog, exact: true }).first().click();
    await page.getByRole('heading', { level: 1, name: dog }).waitFor();
  },
  /** Types a name nobody has, and Enter begins a new dog of that name. */
  async add(name: string): Promise<void> {
    await page.getByRole('searchbox', { name: 'Find or add a dog' }).fill(name);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'New dog' }).waitFor();
  },
});
