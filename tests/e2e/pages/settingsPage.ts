import type { Page } from 'playwright-core';

export const settingsPage = (page: Page) => ({
  async fill(fields: Readonly<Record<string, string>>): Promise<void> {
    for (const [label, text] of Object.entries(fields)) {
      await page.getByLabel(label).fill(text);
    }
  },
  async choose(group: string, option: string): Promise<void> {
    await page.getByRole('group', { name: group }).getByLabel(option, { exact: true }).check();
  },
  async save(): Promise<void> {
    await page.getByRole('button', { name: 'Save settings' }).click();
    await page.getByRole('heading', { level: 1, name: 'Desk' }).waitFor();
  },
});
