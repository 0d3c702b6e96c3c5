// Pictures of every page and main state of the demonstration practice, at both window sizes, light
// and dark: `npm run screenshots [folder]`. The few that the README shows go to tests/screenshots.
import { copyFileSync, mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { deskPage } from '../e2e/pages/deskPage.ts';
import { visitPage } from '../e2e/pages/visitPage.ts';
import { welcomePage } from '../e2e/pages/welcomePage.ts';
import { openDesk } from '../e2e/support/desk.ts';
import { gaitStates, heatStates, planStates, rulesStates, type Shot } from './trainingShots.ts';

const folder = resolve(process.argv[2] ?? 'test-results/screenshots');
const readmeFolder = resolve('tests/screenshots');
/** Shown in the README, from the larger window in light. */
const README = ['desk', 'dog', 'visit-food', 'why', 'handout'];

const WINDOWS = [
  { width: 1280, height: 800 },
  { width: 1024, height: 700 },
];

async function beforeDemo(page: Page, shot: Shot): Promise<void> {
  await shot('welcome');
  await welcomePage(page).openDemonstration();
}

async function dogPages(page: Page, shot: Shot): Promise<void> {
  await page.getByRole('link', { name: 'Bramble', exact: true }).first().waitFor();
  await shot('desk');
  await page.getByRole('button', { name: 'Print sheets for several…' }).click();
  await shot('desk-print-several');
  await page.keyboard.press('Escape');
  await deskPage(page).box.fill('Nobody');
  await page.getByText('No dog or owner is called').waitFor();
  await shot('desk-nothing-found');
  await deskPage(page).box.fill('');
  await deskPage(page).open('Bramble');
  await page.locator('.point').first().waitFor();
  await shot('dog');
  await shot('dog-whole', { whole: true });
  await planStates(page, shot);
  await heatStates(page, shot);
}

async function visitStates(page: Page, shot: Shot): Promise<void> {
  await page.getByRole('link', { name: 'New follow-up' }).click();
  await page.getByRole('heading', { level: 1, name: 'Follow-up of Bramble' }).waitFor();
  await shot('visit-empty');
  const visit = visitPage(page);
  await visit.weight.fill('56 lb');
  await visit.score(7);
  await visit.soundAtBothGaits();
  for (const part of ['Weight and condition', 'Gait and lameness', 'Food', 'Running plan']) {
    await page.getByRole('button', { name: part, exact: true }).click();
    await shot(`visit-${part.split(' ')[0]!.toLowerCase()}`);
  }
  await gaitStates(page, shot);
  await page.getByRole('button', { name: 'Weight and condition' }).click();
  await visit.follows.getByRole('button', { name: /^Why/ }).first().click();
  await page.getByRole('dialog').waitFor();
  await shot('why');
  await page.keyboard.press('Escape');
  await visit.weight.fill('560 lb');
  await page.getByRole('button', { name: 'Save visit' }).click();
  await page.getByRole('alert').first().waitFor();
  await page.evaluate(() => window.scrollTo(0, 0));
  await shot('visit-refused');
  await page.getByRole('button', { name: 'Cancel' }).click();
  await page.getByRole('heading', { level: 1, name: 'Bramble' }).waitFor();
}

async function otherPages(page: Page, shot: Shot): Promise<void> {
  await page.getByRole('link', { name: 'Handouts' }).click();
  await page.locator('.page-text span').first().waitFor({ state: 'attached' });
  await shot('handout');
  for (const [name, path, heading] of [
    ['settings', '/settings', 'Settings'],
    ['science', '/science', 'About the science'],
    ['new-dog', '/dogs/new', 'New dog'],
    ['not-found', '/nowhere', 'There is no such page'],
  ] as const) {
    await page.evaluate((hash) => {
      window.location.hash = hash;
    }, `#${path}`);
    await page.getByRole('heading', { level: 1, name: heading }).waitFor();
    await shot(name, { whole: true });
  }
  for (const dog of ['Tarn', 'Juno', 'Pip']) {
    await page.getByRole('link', { name: 'Desk', exact: true }).click();
    await deskPage(page).open(dog);
    await shot(`dog-${dog.toLowerCase()}`);
  }
  await rulesStates(page, shot);
}

mkdirSync(folder, { recursive: true });
mkdirSync(readmeFolder, { recursive: true });
for (const viewport of WINDOWS) {
  for (const colorScheme of ['light', 'dark'] as const) {
    const desk = await openDesk();
    const { page } = await desk.open({ viewport, colorScheme, reducedMotion: 'reduce' });
    const suffix = `${viewport.width}-${colorScheme}.png`;
    const shot: Shot = async (name, options = {}) => {
      const path = join(folder, `${name}-${suffix}`);
      await page.evaluate(() => document.fonts.ready);
      await page.screenshot({ path, fullPage: options.whole === true, animations: 'disabled' });
      const shown = README.includes(name) && viewport.width === 1280 && colorScheme === 'light';
      if (shown) copyFileSync(path, join(readmeFolder, `${name}.png`));
    };
    await beforeDemo(page, shot);
    await dogPages(page, shot);
    await visitStates(page, shot);
    await otherPages(page, shot);
    await desk.close();
    console.log(`${folder}: ${suffix.replace('.png', '')}`);
  }
}
