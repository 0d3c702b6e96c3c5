import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dogPage } from './pages/dogPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { openDesk, type TestDesk } from './support/desk.ts';

describe('bin, archive and erasing', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open());
    await welcomePage(page).openDemonstration();
  });
  afterAll(() => desk?.close());

  const heading = (name: string) => page.getByRole('heading', { level: 1, name }).waitFor();
  const undo = () => page.getByRole('button', { name: 'Undo' });
  const dialog = () => page.getByRole('alertdialog');
  const visits = () => dogPage(page).visits;

  async function home(): Promise<void> {
    await page.getByRole('link', { name: 'Desk' }).click();
    await heading('Desk');
    await page.getByRole('link', { name: 'Bramble', exact: true }).first().waitFor();
  }
  /** A dog stands on the desk more than once when something is due with it. */
  async function openBramble(): Promise<void> {
    await page.getByRole('link', { name: 'Bramble', exact: true }).first().click();
    await heading('Bramble');
  }
  async function openBin(): Promise<void> {
    await page.getByRole('link', { name: 'Settings' }).click();
    await page.getByRole('link', { name: 'Bin' }).click();
    await heading('Bin');
  }
  async function choose(line: RegExp): Promise<void> {
    await page.getByRole('button', { name: 'More' }).click();
    await page.getByRole('menuitem', { name: line }).click();
  }

  it('bins a visit, says what goes with it, and takes it back by the keyboard', async () => {
    await openBramble();
    const before = await visits().count();
    const plan = await dogPage(page).plan.innerText();
    await visits().first().click();
    await page.getByRole('button', { name: 'Put visit into the bin…' }).click();
    await dialog().getByText('With it goes').waitFor();
    await dialog().getByLabel('Reason').fill('Entered for the wrong dog');
    await dialog().getByRole('button', { name: 'Put into the bin' }).click();
    await heading('Bramble');
    await undo().waitFor();
    expect(await visits().count()).toBe(before - 1);

    // A page that is scrolled keeps it in sight.
    await page.evaluate(() => scrollTo(0, 600));
    await expect.poll(async () => (await undo().boundingBox())?.y ?? -1).toBeGreaterThanOrEqual(0);
    await undo().focus();
    await page.keyboard.press('Enter');
    await page.getByText('is back in the records.').waitFor();
    await expect.poll(() => visits().count()).toBe(before);
    expect(await dogPage(page).plan.innerText()).toBe(plan);
  });

  it('keeps the notice while the focus is in it, and lets it go afterwards', async () => {
    await home();
    await openBramble();
    await choose(/^Archive Bramble/);
    await undo().waitFor();
    await undo().focus();
    await page.evaluate(() => (location.hash = '#/settings'));
    await heading('Settings');
    expect(await undo().count()).toBe(1);
    await page.evaluate(() => (location.hash = '#/science'));
    await heading('About the science');
    await expect.poll(() => undo().count()).toBe(0);
  });

  it('says that a dog is archived, keeps it off the desk, and takes it back', async () => {
    await page.goBack();
    await page.goBack();
    await heading('Bramble');
    await page.getByText('Archived on').waitFor();
    await page.getByRole('link', { name: 'Desk' }).click();
    await page.getByRole('table').first().waitFor();
    expect(await page.getByRole('link', { name: 'Bramble', exact: true }).count()).toBe(0);
    await page.goBack();
    await heading('Bramble');
    await page.getByRole('button', { name: 'Take back' }).click();
    await page.getByText('Bramble is back from the archive.').waitFor();
    await home();
  });

  it('bins a dog, finds it in the bin and restores it', async () => {
    await home();
    await openBramble();
    await page.getByRole('button', { name: 'More' }).press('Enter');
    await page.getByRole('menu').waitFor();
    await page.getByRole('menuitem', { name: /^Put Bramble into the bin/ }).press('Enter');
    await dialog().getByRole('button', { name: 'Put into the bin' }).click();
    await heading('Desk');
    await page.getByRole('table').first().waitFor();
    expect(await page.getByRole('link', { name: 'Bramble', exact: true }).count()).toBe(0);
    await openBin();
    await page.getByRole('button', { name: /^Restore Dog: Bramble/ }).click();
    await page.getByText('The bin is empty.').waitFor();
    await home();
  });

  it('empties the bin only with a ground and the confirmation', async () => {
    await openBramble();
    await visits().first().click();
    await page.getByRole('button', { name: 'Put visit into the bin…' }).click();
    await dialog().getByRole('button', { name: 'Put into the bin' }).click();
    await heading('Bramble');
    await openBin();
    await page.getByRole('button', { name: 'Empty the bin…' }).click();
    const remove = dialog().getByRole('button', { name: 'Remove 1 entry for good' });
    await remove.click();
    await dialog().getByText('Ground for removing is needed.').waitFor();
    await dialog().getByLabel('I have found out').check();
    await dialog().getByLabel('It was entered by mistake').check();
    await remove.click();
    await page.getByText('The bin is empty.').waitFor();
    await page.getByRole('link', { name: 'Records and backups' }).click();
    await page.getByRole('cell', { name: 'It was entered by mistake' }).waitFor();
  });

  it('sets the retention period, and names what it takes', async () => {
    const years = page.getByRole('textbox', { name: 'Retention period' });
    await years.fill('60');
    await page.getByRole('button', { name: 'Save the period' }).click();
    await page
      .getByText(/Retention period must be a whole number from 0/)
      .first()
      .waitFor();
    await years.fill('7');
    await page.getByRole('button', { name: 'Save the period' }).click();
    await page.getByText('The retention period is saved.').waitFor();
  });

  it('erases an owner after the warning, the ground and the typed name', async () => {
    await home();
    await openBramble();
    const owner = 'Mara Sample';
    await choose(/^Erase/);
    await heading(`Erase ${owner} for good`);
    const erase = page.getByRole('button', { name: 'Erase for good' });
    await erase.click();
    await page.getByText('Ground for removing is needed.').waitFor();
    await page.getByLabel('The owner asked for it').check();
    await page.getByLabel('I have found out').check();
    await page.getByLabel('Name of the owner').fill('Mara');
    await erase.click();
    await page.getByText(/must be typed exactly/).waitFor();
    await page.getByLabel('Name of the owner').fill(owner);
    await erase.click();
    await heading('The owner is erased');
    await page.getByText('Still to be done by hand:').waitFor();
    await page.getByRole('link', { name: 'To the desk' }).click();
    await page.getByRole('table').first().waitFor();
    expect(await page.getByText('Bramble', { exact: true }).allInnerTexts()).toEqual([]);
  });

  it('left no complaint in the page', () => {
    expect(complaints).toEqual([]);
  });
});
