import { deskPage } from '../pages/deskPage.ts';
import { visitPage } from '../pages/visitPage.ts';
import { heading, lead, openBramble, type Walk } from './walk.ts';

/** The desk, what can be asked of it, and what stands in the frame of every page. */
export const deskWalk: Walk = {
  name: 'desk',
  from: 'demonstration',
  async go(page, shot) {
    const { box } = deskPage(page);
    await page.getByRole('link', { name: 'Bramble', exact: true }).first().waitFor();
    await shot('desk');
    await shot('desk-whole', { whole: true, same: true });
    await box.fill('visit bram');
    await page.getByRole('link', { name: 'New visit for Bramble' }).waitFor();
    await shot('desk-deeds');
    await box.fill('Nobody');
    await page.getByText('No dog or owner is called').waitFor();
    await shot('desk-nothing-found');
    await box.fill('');
    await page.getByRole('button', { name: 'Plan ended' }).click();
    await page.getByText('There is no such dog.').waitFor();
    await shot('desk-no-such-dog');
    await page.getByRole('button', { name: 'Plan ended' }).click();
    await page.getByRole('button', { name: 'Print sheets for several…' }).click();
    const dialog = page.getByRole('dialog', { name: 'Print sheets for several dogs' });
    await dialog.getByText(/\d of \d chosen/).waitFor();
    await shot('print-several');
    await dialog.getByRole('button', { name: 'Choose none' }).click();
    await dialog.getByRole('button', { name: 'Print sheets', exact: true }).click();
    await dialog.getByText('Choose at least one dog.').waitFor();
    await shot('print-several-refused');
    await dialog.getByRole('button', { name: 'Choose all' }).click();
    await dialog.getByLabel('The same for each dog').check();
    await shot('print-several-same');
    await dialog.getByRole('button', { name: 'Save as a zip archive' }).click();
    await dialog.getByText(/sheets, \d+ pages\./).waitFor();
    await shot('print-several-done');
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    await page.getByRole('button', { name: 'Shortcuts' }).click();
    await page.getByRole('dialog', { name: 'Shortcuts' }).waitFor();
    await shot('shortcuts');
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'View', exact: true }).click();
    await page.getByRole('radio', { name: 'Dark', exact: true }).waitFor();
    await shot('view-menu');
    await page.keyboard.press('Escape');

    await openBramble(page);
    await page.getByRole('link', { name: 'New follow-up' }).click();
    await heading(page, 'Follow-up of Bramble');
    const kept = page.waitForResponse((response) => response.url().endsWith('/call/drafts/put'));
    await visitPage(page).weight.fill('27.5');
    await kept;
    await lead(page, '/', 'Desk');
    const unfinished = page.getByRole('region', { name: 'Unfinished' });
    await unfinished.getByRole('link', { name: 'New visit of Bramble' }).waitFor();
    await shot('desk-unfinished', { whole: true });
    await unfinished.getByRole('button', { name: 'Discard: New visit of Bramble' }).click();
    await page.getByRole('button', { name: 'Undo' }).waitFor();
    await shot('desk-discarded');
  },
};
