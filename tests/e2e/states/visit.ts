import type { Locator, Page } from 'playwright-core';
import { pngOf } from '../../support/pictures.ts';
import { visitPage } from '../pages/visitPage.ts';
import { followUpStates } from './followUp.ts';
import { heading, openBramble, type Shot, type Walk } from './walk.ts';

/** Measurements and tapped footfalls. */
async function gaitStates(page: Page, shot: Shot): Promise<void> {
  await page.locator('summary', { hasText: 'Measurements' }).click();
  for (const [label, value] of [
    ['Stifle flexion, left hind', '50'],
    ['Stifle flexion, right hind', '41'],
    ['Thigh girth, left hind', '36.5'],
    ['Thigh girth, right hind', '38'],
  ] as const) {
    await page.getByLabel(label, { exact: true }).fill(value);
  }
  const first = page.getByLabel('Stifle flexion, left hind', { exact: true });
  await shot('visit-measurements', { at: first });
  await page.locator('summary', { hasText: 'Footfall timing' }).click();
  const pad = page.getByRole('group', { name: /^Tap the footfalls/ });
  await pad.focus();
  for (let stride = 0; stride < 6; stride++) {
    for (const pair of [
      ['s', 'k'],
      ['l', 'd'],
    ]) {
      for (const key of pair) await page.keyboard.down(key);
      await page.waitForTimeout(120);
      for (const key of pair) await page.keyboard.up(key);
      await page.waitForTimeout(60);
    }
  }
  await shot('visit-footfalls', { at: pad });
}

/** Gives a file to the photos and letters of the page. */
async function addFile(page: Page, name: string, buffer: Buffer): Promise<Locator> {
  const files = page.getByRole('region', { name: 'Photos and letters' });
  const dialogue = page.waitForEvent('filechooser');
  await files.getByRole('button', { name: 'Add files' }).click();
  await (await dialogue).setFiles({ name, mimeType: 'image/png', buffer });
  return files;
}

async function formStates(page: Page, shot: Shot): Promise<void> {
  await shot('visit-empty');
  const files = await addFile(page, 'gait.png', pngOf(600, 400));
  await files.getByRole('button', { name: 'Leave out' }).click();
  await files.getByRole('button', { name: 'Take in again' }).waitFor();
  await shot('visit-files-waiting', { at: files });
  const visit = visitPage(page);
  await visit.weight.fill('56 lb');
  await visit.score(7);
  await visit.soundAtBothGaits();
  const parts = page.getByRole('navigation', { name: 'Parts of the visit' });
  const list = page.getByRole('button', { name: 'Parts', exact: true });
  await list.click();
  await shot('visit-parts');
  const names = await parts.getByRole('button').allInnerTexts();
  await page.keyboard.press('Escape');
  for (const name of names) {
    await list.click();
    await parts.getByRole('button', { name, exact: true }).click();
    await shot(`visit-${name.toLowerCase().replaceAll(/[^a-z]+/g, '-')}`, {
      at: page.getByRole('heading', { level: 2, name, exact: true }),
      same: name !== 'Why it comes',
    });
  }
  const name = page.getByRole('combobox', { name: 'Food', exact: true }).first();
  await name.fill('food');
  await name.press('ArrowDown');
  await page.getByRole('listbox').getByRole('option', { selected: true }).waitFor();
  await shot('visit-own-foods', { at: name });
  await name.press('Enter');
  await page.getByRole('button', { name: 'Insert a phrase' }).press('Enter');
  await page.getByRole('menuitem').first().waitFor();
  await shot('visit-phrases', { at: page.getByRole('menuitem').first() });
  await page.keyboard.press('Enter');
  await shot('visit-whole', { whole: true, same: true });
  await visit.openLines();
  await shot('visit-opened', { whole: true });
  await visit.evidence();
  await visit.follows.getByRole('button', { name: /^Why/ }).first().click();
  await page.getByRole('dialog').waitFor();
  await shot('why');
  await page.keyboard.press('Escape');
  await gaitStates(page, shot);
  await visit.weight.fill('560 lb');
  await page.getByRole('button', { name: 'Save visit' }).click();
  await page.getByRole('alert').first().waitFor();
  await shot('visit-refused', { at: page.getByRole('heading', { level: 1 }) });
  await visit.weight.fill('56 lb');
  await page.getByRole('button', { name: 'Save and print the sheets' }).click();
  await heading(page, 'The visit of Bramble is saved');
  await page.getByRole('button', { name: 'Print the sheets', disabled: false }).waitFor();
  await page.getByText('Preparing the sheets…').waitFor({ state: 'detached' });
  await shot('visit-saved-and-printed');
}

/** A saved visit: its files, its amendment, its history. */
async function savedStates(page: Page, shot: Shot): Promise<void> {
  await addFile(page, 'stride.png', pngOf(600, 400));
  const files = await addFile(page, 'letter.exe', Buffer.from('MZ'));
  await files.getByRole('alert').first().waitFor();
  await shot('visit-files', { at: files });
  await files.getByRole('button', { name: 'Open' }).first().click();
  await page.getByRole('dialog').waitFor();
  await shot('file-open');
  await page.keyboard.press('Escape');
  await visitPage(page).weight.fill('25');
  await page.getByText('1 field changed.').waitFor();
  const save = page.getByRole('button', { name: 'Save amendment' });
  await save.click();
  await page.getByRole('button', { name: /Reason for the amendment is needed/ }).waitFor();
  await shot('amendment-refused', { at: page.getByLabel('Reason for the amendment') });
  await page.getByLabel('Reason for the amendment').fill('Read off wrongly.');
  await save.click();
  await heading(page, 'Bramble');
  await page.locator('.drawing.drawn').first().waitFor();
  await shot('dog-with-photo', { whole: true });
  await page
    .getByRole('link', { name: /open this/ })
    .first()
    .click();
  const history = page.getByRole('region', { name: 'History of this visit' });
  await history.getByText('Reason: Read off wrongly.').waitFor();
  await shot('visit-history', { at: history });
}

/** Opens the form of the saved visit that is read, and adds a photo of the dog from the left. */
async function addPhotoFromTheLeft(page: Page, name: string, picture: Buffer): Promise<void> {
  await page.getByRole('link', { name: 'Amend', exact: true }).click();
  const files = page.getByRole('region', { name: 'Photos and letters' });
  await files.getByLabel('Kind').selectOption({ label: 'Photo from the left' });
  await addFile(page, name, picture);
  await files.getByText('Photo from the left, ').waitFor();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await heading(page, 'Bramble');
}

/** Two visits with a photo from the same side at each. */
async function photoStates(page: Page, shot: Shot): Promise<void> {
  const together = page.getByRole('link', { name: 'The last two visits side by side' });
  await addPhotoFromTheLeft(page, 'left-now.png', pngOf(640, 400));
  await together.click();
  await heading(page, 'Two visits of Bramble');
  await page.locator('.heads a').first().click();
  await heading(page, /^Follow-up of Bramble, /);
  await addPhotoFromTheLeft(page, 'left-before.png', pngOf(500, 400));
  await together.click();
  await page.locator('figure img').nth(1).waitFor();
  const files = page.getByRole('region', { name: 'Photos and letters' });
  await shot('visit-beside-photos', { at: files });
}

/** A visit that was saved: read, beside another, amended, with its files. */
export const savedVisitWalk: Walk = {
  name: 'saved visit',
  from: 'demonstration',
  async go(page, shot) {
    await openBramble(page);
    await page
      .getByRole('link', { name: /open this/ })
      .first()
      .click();
    await heading(page, /^Follow-up of Bramble, /);
    await page.getByText('(unchanged since)').waitFor();
    await shot('visit-read', { whole: true });
    await page.getByRole('button', { name: 'Show side by side' }).click();
    await heading(page, 'Two visits of Bramble');
    await page.getByRole('heading', { name: 'Verdict and decisions' }).waitFor();
    await shot('visit-beside', { whole: true });
    await page.getByRole('button', { name: 'Only what differs' }).click();
    await shot('visit-beside-differs');
    await page.goBack();
    await page.getByRole('link', { name: 'Amend', exact: true }).click();
    await page.getByRole('heading', { level: 2, name: 'Amendment' }).waitFor();
    await shot('visit-saved', { whole: true });
    await savedStates(page, shot);
    await photoStates(page, shot);
  },
};

/** The form of a follow-up. */
export const visitWalk: Walk = {
  name: 'visit',
  from: 'demonstration',
  async go(page, shot) {
    await openBramble(page);
    await page.getByRole('link', { name: 'New follow-up' }).click();
    await heading(page, 'Follow-up of Bramble');
    await page.getByRole('complementary', { name: 'What follows' }).waitFor();
    await formStates(page, shot);
    await followUpStates(page, shot);
  },
};
