import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TOUR_STEPS } from '../../renderer/tour/steps.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { axeViolations } from './support/axe.ts';
import { openDesk, type TestDesk } from './support/desk.ts';

describe('the first steps', () => {
  let desk: TestDesk;
  let page: Page;
  const steps = () => page.getByRole('region', { name: 'First steps' });

  beforeAll(async () => {
    desk = await openDesk();
    ({ page } = await desk.open({ viewport: { width: 1024, height: 700 } }, true));
    await welcomePage(page).openDemonstration();
  }, 60_000);
  afterAll(() => desk?.close());

  it('are gone through by keyboard, each read out from its title', async () => {
    await steps().getByRole('button', { name: 'Next' }).focus();
    for (const [index, { title }] of TOUR_STEPS.entries()) {
      await steps().getByRole('heading', { name: title }).waitFor();
      expect(await axeViolations(page)).toEqual([]);
      if (index === 0) await page.keyboard.press('Enter');
      else if (index < TOUR_STEPS.length - 1) {
        expect(
          await steps()
            .getByRole('heading')
            .evaluate((h) => h === document.activeElement),
        ).toBe(true);
        await page.keyboard.press('Tab');
        await page.keyboard.press('Tab');
        await page.keyboard.press('Enter');
      }
    }
    await steps().getByRole('button', { name: 'Done' }).click();
    expect(await steps().count()).toBe(0);
  });

  it('stay away once seen, and come back when asked for', async () => {
    await page.reload();
    await page.getByRole('heading', { level: 1, name: 'Desk' }).waitFor();
    expect(await steps().count()).toBe(0);
    await page.getByRole('button', { name: 'Shortcuts' }).click();
    await page.getByRole('button', { name: 'Show the first steps on the desk' }).click();
    await steps().getByRole('button', { name: 'Skip the first steps' }).click();
    expect(await steps().count()).toBe(0);
  });
});
