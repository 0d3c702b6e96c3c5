import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { dogFormPage } from '../pages/dogFormPage.ts';
import { heading, lead, type Shot } from './walk.ts';

/** The import of bundles: what is none, what differs, what came of it. */
export async function bundleStates(page: Page, shot: Shot): Promise<void> {
  await lead(page, '/settings/records', 'Records and backups');
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Export all records' }).click();
  const bundle = await readFile(await (await coming).path());

  await lead(page, '/', 'Desk');
  await page.getByRole('link', { name: 'Rusk' }).first().click();
  await heading(page, 'Rusk');
  await page.getByRole('link', { name: /^Edit/ }).first().click();
  await page.getByLabel('Breed').fill('Pointer cross');
  await page.getByLabel('Notes on the dog').fill('Pulls to the left on the way home.');
  await dogFormPage(page).save('Rusk');

  await lead(page, '/settings/records/bundle', 'Import a bundle');
  await shot('bundle');
  const part = page.getByRole('region', { name: 'Import of a bundle' });
  const choose = async (name: string, buffer: Buffer): Promise<void> => {
    const dialogue = page.waitForEvent('filechooser');
    await part.getByRole('button', { name: 'Choose a bundle' }).click();
    await (await dialogue).setFiles({ name, mimeType: 'application/zip', buffer });
  };
  await choose('letter.zip', Buffer.from('no archive'));
  await part.getByRole('alert').waitFor();
  await shot('bundle-refused');
  await choose('trotwell-bundle.zip', bundle);
  await part.locator('summary', { hasText: 'Dog Rusk' }).click();
  await part.getByLabel('Take what the bundle says').check();
  await shot('bundle-preview', { whole: true });
  await part.getByRole('button', { name: 'Import the bundle' }).click();
  await part.getByText('1 record is now as in the bundle').waitFor();
  await shot('bundle-done');
}
