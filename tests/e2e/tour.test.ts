import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TOUR_STEPS } from '../../renderer/tour/steps.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { axeViolations } from './support/axe.ts';
import { openBrowser } from './support/browser.ts';
import { startHost, type Host } from './support/host.ts';

describe('the first steps', () => {
  let folder: string;
  let host: Host;
  let browser: Browser;
  let page: Page;
  const steps = () => page.getByRole('region', { name: 'First steps' });

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'trotwell-e2e-'));
    host = await startHost(folder);
    browser = await openBrowser();
    page = await browser.newPage({ viewport: { width: 1024, height: 700 } });
    page.setDefaultTimeout(15_000);
    await page.goto(host.address);
    await welcomePage(page).openDemonstration();
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await host?.stop();
    await rm(folder, { recursive: true, force: true });
  });

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
