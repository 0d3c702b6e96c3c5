import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { deskPage } from './pages/deskPage.ts';
import { visitPage } from './pages/visitPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { openDesk, type TestDesk } from './support/desk.ts';
import { holdPrinting } from './support/printing.ts';

describe('the desk', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];

  const dogs = () =>
    page.getByRole('table', { name: /dogs?/ }).getByRole('rowheader').getByRole('link');

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open());
    await welcomePage(page).openDemonstration();
    await dogs().first().waitFor();
  }, 60_000);
  afterAll(() => desk?.close());

  it('orders the dogs by a head, by keyboard, and says how', async () => {
    await page.getByRole('button', { name: 'Dog', exact: true }).focus();
    await page.keyboard.press('Enter');
    const head = page
      .getByRole('columnheader')
      .filter({ has: page.getByRole('button', { name: 'Dog', exact: true }) });
    await expect.poll(() => head.getAttribute('aria-sort')).toBe('ascending');
    await expect.poll(() => dogs().allTextContents()).toEqual(['Bramble', 'Juno', 'Pip', 'Tarn']);
    await page.keyboard.press('Enter');
    await expect.poll(() => dogs().allTextContents()).toEqual(['Tarn', 'Pip', 'Juno', 'Bramble']);
    expect(await head.getAttribute('aria-sort')).toBe('descending');
  });

  it('narrows the dogs by state and by a note, and says when there is none', async () => {
    const ended = page.getByRole('button', { name: 'Plan ended' });
    await ended.click();
    await page.getByText('There is no such dog.').waitFor();
    expect(await ended.getAttribute('aria-pressed')).toBe('true');
    await ended.click();
    await dogs().first().waitFor();
    // Words of a note lead to the dog where no name has them.
    await deskPage(page).box.fill('hardly moves');
    await expect.poll(() => dogs().allTextContents()).toEqual(['Bramble']);
    await deskPage(page).box.fill('');
    await dogs().nth(3).waitFor();
  });

  it('prints and saves sheets for the dogs that were found, by keyboard, and stops when asked', async () => {
    await deskPage(page).box.fill('exemple');
    await expect.poll(async () => (await dogs().allTextContents()).sort()).toEqual(['Juno', 'Pip']);
    await page.getByRole('button', { name: 'Print sheets for several…' }).focus();
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Print sheets for several dogs' });
    await dialog.getByText('2 of 2 chosen').waitFor();
    await dialog.getByRole('button', { name: 'Choose none' }).press('Enter');
    await dialog.getByRole('button', { name: 'Print sheets', exact: true }).press('Enter');
    await dialog.getByText('Choose at least one dog.').waitFor();
    await dialog.getByRole('button', { name: 'Choose all' }).press('Enter');
    await dialog.getByRole('button', { name: 'Print sheets', exact: true }).press('Enter');
    await dialog.getByRole('button', { name: 'Cancel' }).press('Enter');
    await dialog.getByText('Stopped. Nothing was printed.').waitFor();

    await dialog.getByLabel('The same for each dog').press('Space');
    const paper = await holdPrinting(page);
    await dialog.getByRole('button', { name: /^Print \d+ sheets$/ }).press('Enter');
    const given = dialog.getByText(/sheets, \d+ pages\. Given to the print window\./);
    const pages = Number(/(\d+) pages/.exec((await given.textContent())!)![1]);
    expect(await paper()).toEqual({ pages, pictures: pages, left: 0 });

    const download = page.waitForEvent('download');
    await dialog.getByRole('button', { name: 'Save the archive' }).press('Enter');
    const bytes = await readFile(await (await download).path());
    expect(bytes.subarray(0, 2).toString()).toBe('PK');
    await dialog.getByText(/sheets, \d+ pages\. trotwell-sheets-.*zip is handed over/).waitFor();
    expect(await dialog.getByRole('rowheader').allTextContents()).toHaveLength(2);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    await deskPage(page).box.fill('');
    await dogs().nth(3).waitFor();
  });

  it('takes what is typed as a deed, and Enter does it', async () => {
    await deskPage(page).box.fill('visit bram');
    await page.getByRole('link', { name: 'New visit for Bramble' }).waitFor();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: 'Follow-up of Bramble' }).waitFor();
  });

  it('leads to the places of the program', async () => {
    await page.getByRole('link', { name: 'Desk', exact: true }).click();
    await deskPage(page).box.fill('backup');
    await page.getByRole('link', { name: 'Records and backups' }).click();
    await page.getByRole('heading', { level: 1, name: 'Records and backups' }).waitFor();
  });

  it('leads from one dog of an owner to the other', async () => {
    await page.getByRole('link', { name: 'Desk', exact: true }).click();
    await deskPage(page).open('Juno');
    await page.getByRole('link', { name: 'Pip', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'Pip' }).waitFor();
    await page.getByRole('link', { name: 'Juno', exact: true }).waitFor();
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('menuitem', { name: 'Add another dog of this owner' }).click();
    await page.getByRole('radio', { name: /Élodie Exemple/ }).waitFor();
    expect(await page.getByRole('radio', { name: /Élodie Exemple/ }).isChecked()).toBe(true);
  });

  it('shows what stands above the dogs in one step, however long a part of it takes', async () => {
    await page.getByRole('link', { name: 'Year', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'The practice’s year' }).waitFor();
    let answer = (): void => undefined;
    const asked = new Promise<void>((resolve) => (answer = resolve));
    await page.route('**/call/dogs/offCourse', async (route) => {
      await asked;
      await route.continue();
    });
    await page.getByRole('link', { name: 'Desk', exact: true }).click();
    await dogs().nth(3).waitFor();
    const due = page.getByRole('heading', { name: 'Due', exact: true });
    expect(await due.count()).toBe(0);
    answer();
    await page.getByRole('heading', { name: 'Weight off course', exact: true }).waitFor();
    expect(await due.count()).toBe(1);
    await page.unroute('**/call/dogs/offCourse');
  });

  it('shows a visit that was begun, discards it, and takes that back', async () => {
    await page.getByRole('link', { name: 'Desk', exact: true }).click();
    await deskPage(page).open('Bramble');
    await page.getByRole('link', { name: 'New follow-up' }).click();
    await page.getByRole('heading', { level: 1, name: 'Follow-up of Bramble' }).waitFor();
    const kept = page.waitForResponse((response) => response.url().endsWith('/call/drafts/put'));
    await visitPage(page).weight.fill('27.5');
    await kept;
    await page.getByRole('link', { name: 'Desk', exact: true }).click();
    const unfinished = page.getByRole('region', { name: 'Unfinished' });
    await unfinished.getByRole('link', { name: 'New visit of Bramble' }).waitFor();
    await unfinished.getByRole('button', { name: 'Discard: New visit of Bramble' }).click();
    await unfinished.getByRole('button', { name: 'Undo' }).click();
    await unfinished.getByRole('link', { name: 'New visit of Bramble' }).click();
    await page.getByText(/Unsaved input of .* is back/).waitFor();
    expect(await visitPage(page).weight.inputValue()).toBe('27.5');
  });

  it('complained about nothing', () => {
    expect(complaints).toEqual([]);
  });
});
