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

  it('takes "/" to the find box from any page, and types the sign when in it', async () => {
    await page.keyboard.press('/');
    await heading('Desk').waitFor();
    await page.waitForFunction(() => document.activeElement?.id === 'find-dog');
    await page.keyboard.type('v/?');
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
