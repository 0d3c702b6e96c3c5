import type { Page } from 'playwright-core';
import { dogPage } from '../pages/dogPage.ts';
import { heading, lead, openBramble, type Walk } from './walk.ts';

async function choose(page: Page, line: RegExp): Promise<void> {
  await page.getByRole('button', { name: 'More', exact: true }).click();
  await page.getByRole('menuitem', { name: line }).click();
}

/** The bin with its questions, the archive, and erasing. */
export const binWalk: Walk = {
  name: 'bin',
  from: 'demonstration',
  async go(page, shot) {
    await openBramble(page);
    const { visits } = dogPage(page);
    await visits.first().click();
    await page.getByRole('button', { name: 'Put visit into the bin…' }).click();
    await page.getByText('With it goes').waitFor();
    await shot('bin-visit');
    await page.getByRole('button', { name: 'Put into the bin' }).click();
    await page.getByRole('button', { name: 'Undo' }).waitFor();
    // The dog's page opens in the visit's place; the notice may be there first.
    await heading(page, 'Bramble');
    await shot('bin-notice');
    await choose(page, /^Archive/);
    await page.getByText('Archived on').waitFor();
    await shot('dog-archived');
    await page.getByRole('button', { name: 'Take back' }).click();
    await lead(page, '/bin', 'Bin');
    await page.getByRole('button', { name: 'Restore' }).waitFor();
    await shot('bin');
    await page.getByRole('button', { name: 'Empty the bin…' }).click();
    const dialog = page.getByRole('alertdialog');
    await dialog.getByRole('button', { name: 'Remove 1 entry for good' }).click();
    await dialog.getByText('Ground for removing is needed.').waitFor();
    await shot('bin-empty-refused');
    await dialog.getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('button', { name: 'Restore' }).click();
    await page.getByText('The bin is empty.').waitFor();
    await shot('bin-nothing');

    await openBramble(page);
    await choose(page, /^Erase/);
    const erase = page.getByRole('button', { name: 'Erase for good' });
    await erase.waitFor();
    await shot('erase', { whole: true });
    await erase.click();
    await page.getByText('Ground for removing is needed.').waitFor();
    await shot('erase-refused');
    await page.getByLabel('The owner asked for it').check();
    await page.getByLabel('I have found out').check();
    await page.getByLabel('Name of the owner').fill('Mara Sample');
    await erase.click();
    await heading(page, 'The owner is erased');
    await shot('erased', { whole: true });
  },
};
