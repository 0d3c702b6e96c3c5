import type { Page } from 'playwright-core';

/** The first page of a fresh machine. */
export const welcomePage = (page: Page) => ({
  async startEmpty(): Promise<void> {
    await page.getByRole('button', { name: 'Start empty' }).click();
    await page.getByRole('heading', { level: 1, name: 'Set up your practice' }).waitFor();
  },
  async openDemonstration(): Promise<void> {
    await page.getByRole('button', { name: 'Open the demonstration practice' }).click();
    await page.getByRole('heading', { level: 1, name: 'Desk' }).waitFor();
  },
});
