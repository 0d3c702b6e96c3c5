import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';

export const handoutsPage = (page: Page) => ({
  async choose(sheet: 'Running plan' | 'Feeding sheet'): Promise<void> {
    await page.getByRole('group', { name: 'Sheet' }).getByLabel(sheet).check();
    await page.getByRole('region', { name: `Preview: ${sheet}` }).waitFor();
  },
  /** The preview's own text layer, once it is drawn. */
  async previewText(): Promise<string> {
    const preview = page.getByRole('region', { name: /^Preview/ });
    await preview.locator('.page-text span').first().waitFor({ state: 'attached' });
    return preview.innerText();
  },
  /** Saves the sheet as a practitioner does, and gives the PDF's bytes. */
  async savePdf(): Promise<Buffer> {
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save PDF' }).click();
    return readFile(await (await download).path());
  },
});
