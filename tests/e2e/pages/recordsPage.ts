import type { Page } from 'playwright-core';

/** The parts of "Records and backups" that backups and the lock are on. */
export const recordsPage = (page: Page) => ({
  backups: page.getByRole('region', { name: 'Backups', exact: true }),
  restore: page.getByRole('region', { name: 'Restore a backup', exact: true }),
  lock: page.getByRole('region', { name: 'Lock', exact: true }),
  /** What is in the chosen backup. */
  contents: page.getByRole('region', { name: 'What is in the backup' }),
  async open(): Promise<void> {
    await page.evaluate(() => (location.hash = '#/settings/records'));
    await page.getByRole('heading', { level: 1, name: 'Records and backups' }).waitFor();
    await page.getByRole('heading', { name: 'Restore a backup' }).waitFor();
  },
});
