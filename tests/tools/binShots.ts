import type { Page } from 'playwright-core';
import type { Shot } from './trainingShots.ts';

const menu = async (page: Page, line: RegExp): Promise<void> => {
  await page.getByRole('button', { name: 'More' }).click();
  await page.getByRole('menuitem', { name: line }).click();
};

/** A dog stands on the desk more than once when something is due with it. */
async function openBramble(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Bramble', exact: true }).first().click();
  await page.getByRole('heading', { level: 1, name: 'Bramble' }).waitFor();
}

/** The menu of a dog, the bin with its questions, the archive, the page of erasing. */
export async function binStates(page: Page, shot: Shot): Promise<void> {
  await page.getByRole('link', { name: 'Desk' }).click();
  await openBramble(page);
  await page.locator('.point').first().waitFor();
  await page.getByRole('button', { name: 'More' }).click();
  await page.getByRole('menu').waitFor();
  await shot('dog-menu');
  await page.keyboard.press('Escape');
  const visits = page.getByRole('region', { name: 'Visits', exact: true });
  await visits
    .getByRole('link', { name: /open this/ })
    .first()
    .click();
  await page.getByRole('button', { name: 'Put visit into the bin…' }).click();
  await page.getByText('With it goes').waitFor();
  await shot('bin-visit');
  await page.getByRole('button', { name: 'Put into the bin' }).click();
  await page.getByRole('button', { name: 'Undo' }).waitFor();
  await shot('bin-notice');
  await menu(page, /^Archive/);
  await page.getByText('Archived on').waitFor();
  await shot('dog-archived');
  await page.getByRole('button', { name: 'Take back' }).click();
  await page.goto(`${page.url().split('#')[0]}#/bin`);
  await page.getByRole('button', { name: 'Restore' }).waitFor();
  await shot('bin');
  await page.getByRole('button', { name: 'Empty the bin…' }).click();
  await page.getByRole('group', { name: 'Ground' }).waitFor();
  await shot('bin-empty');
  await page.getByRole('button', { name: 'Cancel' }).click();
  await page.getByRole('button', { name: 'Restore' }).click();
  await page.getByText('The bin is empty.').waitFor();
  await shot('bin-nothing');
  await page.getByRole('link', { name: 'Desk' }).click();
  await openBramble(page);
  await menu(page, /^Erase/);
  await page.getByRole('button', { name: 'Erase for good' }).waitFor();
  await shot('erase', { whole: true });
}
