import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { deskPage } from './pages/deskPage.ts';
import { handoutsPage } from './pages/handoutsPage.ts';
import { settingsPage } from './pages/settingsPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { openDesk, type TestDesk } from './support/desk.ts';
import { tabAndPress, tabAndType, tabTo } from './support/keyboard.ts';
import { pdfText } from './support/pdfText.ts';

/** The smallest PNG: one pixel. */
const PNG = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);

describe('settings and sheets', () => {
  let desk: TestDesk;
  let page: Page;

  beforeAll(async () => {
    desk = await openDesk();
    ({ page } = await desk.open());
    await welcomePage(page).openDemonstration();
  });
  afterAll(() => desk?.close());

  const openSettings = () => page.getByRole('link', { name: 'Settings' }).click();

  it('refuse a colour that is none, beside its field', async () => {
    await openSettings();
    await page.getByLabel('Accent colour').fill('greenish');
    await page.getByRole('button', { name: 'Save settings' }).click();
    await page.getByRole('alert').getByText('Accent colour must be written like #1f4b7a').waitFor();
    expect(await page.getByLabel('Accent colour').getAttribute('aria-invalid')).toBe('true');
    await page.getByLabel('Accent colour').fill('#7a1f4b');
  });

  it('keep a food and a phrase, by the keyboard', async () => {
    await tabAndPress(page, page.getByRole('button', { name: 'Add a food' }));
    const form = page.getByRole('form', { name: 'Food' });
    await form.waitFor();
    await page.keyboard.type('Fish cubes');
    await tabTo(page, form.getByLabel('Kind'));
    await page.keyboard.press('ArrowDown');
    await tabAndType(page, form.getByLabel('Energy of the food'), '310');
    await page.keyboard.press('Enter');
    const kept = page.getByRole('row').filter({ hasText: 'Fish cubes' });
    await kept.waitFor();
    expect((await kept.innerText()).replaceAll(/\s+/g, ' ')).toMatch(/Treat 310 kcal\/100 g/);
    await tabAndPress(page, page.getByRole('button', { name: 'Add a phrase' }));
    await page.keyboard.type('Warms up well.');
    await page.keyboard.press('Enter');
    await page.getByRole('listitem').filter({ hasText: 'Warms up well.' }).waitFor();
  });

  it('change the units of every page', async () => {
    await settingsPage(page).choose('Weight', 'Pounds');
    await settingsPage(page).choose('Energy', 'kJ');
    await settingsPage(page).save();
    const dogs = page.getByRole('table', { name: /dogs/ });
    await dogs.getByRole('columnheader', { name: 'Weight, lb' }).waitFor();
    await deskPage(page).open('Bramble');
    const food = page.getByRole('region', { name: 'Food', exact: true });
    expect(await food.innerText()).toContain('kJ/day');
  });

  it('bring the practice’s own foods and phrases into a visit by the keyboard', async () => {
    await page.getByRole('link', { name: 'New follow-up' }).click();
    const name = page.getByRole('combobox', { name: 'Food', exact: true });
    await name.fill('tinn');
    await name.press('ArrowDown');
    await name.press('Enter');
    expect(await name.inputValue()).toBe('Tinned food');
    // Enter took the food and left the field alone; the next one leads on.
    await name.press('Enter');
    const energy = page.getByRole('textbox', { name: 'Energy' }).first();
    expect(await energy.evaluate((input) => input === document.activeElement)).toBe(true);
    // 105 kcal are 439.3 kJ (1 kcal = 4.184 kJ).
    expect(await energy.inputValue()).toBe('439.3');
    // In the table itself it gives way to another, which is then decided on with the ration.
    await page.getByRole('button', { name: 'Replace by another food: Tinned food' }).press('Enter');
    const other = page.getByRole('combobox', { name: 'Name of the new food' });
    await expect.poll(() => other.evaluate((it) => it === document.activeElement)).toBe(true);
    await page.keyboard.type('dry');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    const changeover = page.getByRole('table', { name: /changeover/i });
    await changeover.getByText('Dry food, adult').first().waitFor();
    await page.keyboard.press('Control+Enter');
    await page
      .getByText(/Answer the food proposal too/)
      .first()
      .waitFor();
    const back = page.getByRole('button', { name: 'Keep feeding Tinned food' });
    await back.press('Enter');
    await changeover.waitFor({ state: 'detached' });
    const notes = page.getByLabel('Notes on the visit');
    await notes.fill('Sound today.');
    await page.getByRole('button', { name: 'Insert a phrase' }).press('Enter');
    await page.getByRole('menuitem', { name: 'Harness fitted' }).waitFor();
    await page.keyboard.press('Enter');
    await expect
      .poll(() => notes.inputValue())
      .toBe('Sound today. Harness fitted; shoulder stays free.');
    await page.keyboard.type(' So it goes on.');
    expect(await notes.inputValue()).toContain('free. So it goes on.');
    await page.getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('heading', { level: 1, name: 'Bramble' }).waitFor();
  });

  it('lead from a reason to the rule behind it, and from there to its own line', async () => {
    await page.getByRole('link', { name: 'The whole plan' }).click();
    await page.getByText('Why the plan looks like this').click();
    const why = page.locator('details').filter({ hasText: 'Run-minutes rise by at most' });
    await why.locator('summary', { hasText: /^Evidence/ }).click();
    await why
      .getByRole('link', { name: /^Weekly rise/ })
      .first()
      .click();
    await page.getByRole('region', { name: 'Where it decides' }).waitFor();
    await page.getByRole('link', { name: 'Change it' }).click();
    const line = page.getByRole('listitem', { name: /^Weekly rise/ }).and(page.locator(':focus'));
    await line.waitFor();
    await line.getByRole('button', { name: /^Change/ }).waitFor();
    await page.goBack();
    await page.getByRole('button', { name: 'Back', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'Running plan of Bramble' }).waitFor();
  });

  it('keep a logo and let it go again', async () => {
    await openSettings();
    const file = { name: 'logo.png', mimeType: 'image/png', buffer: PNG };
    await page.getByLabel('Logo').setInputFiles(file);
    await page.getByRole('img', { name: 'The present logo' }).waitFor();
    await page.getByRole('button', { name: 'Remove the logo' }).click();
    await page.getByRole('img', { name: 'The present logo' }).waitFor({ state: 'detached' });
  });

  it('say what is wrong with a file that is no picture', async () => {
    const file = { name: 'logo.png', mimeType: 'image/png', buffer: Buffer.from('no picture') };
    await page.getByLabel('Logo').setInputFiles(file);
    await page.getByRole('alert').first().waitFor();
  });

  it('print all sheets of the visit as one file', async () => {
    await page.getByRole('link', { name: 'Desk', exact: true }).click();
    await deskPage(page).open('Bramble');
    await page.getByRole('link', { name: 'Handouts' }).click();
    await page.getByRole('region', { name: 'Preview: All for this visit' }).waitFor();
    const text = pdfText(await handoutsPage(page).savePdf());
    expect(text).toContain('Running plan for Bramble');
    expect(text).toMatch(/Page 1 of \d+/);
  });

  it("print the owner's sheet in another language", async () => {
    await page.getByLabel('Language of the owner’s sheets').selectOption({ label: 'Deutsch' });
    await handoutsPage(page).choose('Running plan');
    await page.getByText(/running-plan-.*\.pdf/).waitFor();
    const text = pdfText(await handoutsPage(page).savePdf());
    expect(text).toContain('Laufplan für Bramble');
  });
});
