import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { deskPage } from './pages/deskPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { axeViolations } from './support/axe.ts';
import { openDesk, type TestDesk } from './support/desk.ts';

describe('shortcuts', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open());
    await welcomePage(page).openDemonstration();
  });
  afterAll(() => desk?.close());

  const heading = (name: string) => page.getByRole('heading', { level: 1, name, exact: true });
  const sheet = () => page.getByRole('dialog', { name: 'Shortcuts' });
  const focused = () => page.evaluate(() => document.activeElement?.id ?? '');

  it('takes "?" to the sheet, and gives the focus back', async () => {
    await deskPage(page).open('Bramble');
    const edit = page.getByRole('link', { name: 'Edit dog and owner' });
    await edit.focus();
    await page.keyboard.press('?');
    await sheet().waitFor();
    expect(await sheet().innerText()).toContain('On this dog’s page');
    await page.keyboard.press('Escape');
    await sheet().waitFor({ state: 'detached' });
    expect(await edit.evaluate((link) => link === document.activeElement)).toBe(true);
  });

  for (const scheme of ['light', 'dark'] as const) {
    it(`shows the sheet without axe violations in ${scheme}`, async () => {
      await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
      await page.getByRole('button', { name: 'Shortcuts' }).click();
      await sheet().waitFor();
      expect(await axeViolations(page)).toEqual([]);
      await sheet().getByRole('button', { name: 'Close' }).click();
    });
  }

  it('goes about on a dog’s page by single keys', async () => {
    await heading('Bramble').waitFor();
    for (const [key, title] of [
      ['p', 'Running plan of Bramble'],
      ['h', 'Heat and Bramble'],
      ['o', 'Handouts for Bramble'],
      ['e', 'Edit Bramble'],
      ['v', 'Follow-up of Bramble'],
    ] as const) {
      await page.keyboard.press(key);
      await heading(title).waitFor();
      await page.goBack();
      await heading('Bramble').waitFor();
      await page.locator('.drawing.drawn').first().waitFor();
    }
  });

  it('closes what is open by Esc, and changes nothing else', async () => {
    await page.keyboard.press('v');
    await heading('Follow-up of Bramble').waitFor();
    const weight = page.getByLabel('Body weight');
    await weight.fill('27.5');
    const notes = page.getByLabel('Notes on the visit');
    await notes.fill('Begun');
    const food = page.getByRole('combobox', { name: 'Food', exact: true }).first();
    const entered = () =>
      page
        .locator('main')
        .evaluate((main) =>
          [...main.querySelectorAll<HTMLInputElement>('input, textarea, select')].map((field) => [
            field.value,
            field.checked,
          ]),
        );
    const before = await entered();
    const button = (name: string | RegExp) => page.getByRole('button', { name }).first();
    for (const [from, key, open] of [
      [button('Shortcuts'), 'Enter', sheet()],
      [button('View'), 'Enter', page.getByRole('dialog', { name: 'View' })],
      [button('Insert a phrase'), 'Enter', page.getByRole('menu')],
      [button(/^Why /), 'Enter', page.getByRole('dialog')],
      [food, 'ArrowDown', page.getByRole('listbox', { name: 'Food' })],
    ] as const) {
      await from.press(key);
      await open.waitFor();
      await page.keyboard.press('Escape');
      await open.waitFor({ state: 'detached' });
      await expect.poll(() => from.evaluate((it) => it === document.activeElement)).toBe(true);
    }
    // With nothing open it does nothing, in a field or out of one.
    for (const field of [weight, notes, food, button('Save visit')]) await field.press('Escape');
    await heading('Follow-up of Bramble').waitFor();
    expect(await entered()).toEqual(before);
    await page.goBack();
    await heading('Bramble').waitFor();
  });

  it('takes "/" to the find box from any page, and types the sign when in it', async () => {
    await page.keyboard.press('/');
    await heading('Desk').waitFor();
    await page.waitForFunction(() => document.activeElement?.id === 'find-dog');
    await page.keyboard.type('v/?');
    await page.keyboard.press('Escape');
    expect(await deskPage(page).box.inputValue()).toBe('v/?');
    expect(await sheet().count()).toBe(0);
  });

  it('takes Ctrl+K to the find box and marks what stands there', async () => {
    await page.getByRole('link', { name: 'Trotwell' }).focus();
    expect(await focused()).not.toBe('find-dog');
    await page.keyboard.press('Control+k');
    await page.waitForFunction(() => document.activeElement?.id === 'find-dog');
    await page.keyboard.type('Tarn');
    expect(await deskPage(page).box.inputValue()).toBe('Tarn');
  });

  it('never breaks the content security policy or throws', () => {
    expect(complaints).toEqual([]);
  });
});
