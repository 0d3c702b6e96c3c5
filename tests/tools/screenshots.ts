// Pictures of every page and state, at both window sizes, light and dark:
// `npm run screenshots [-- folder [walk]]`. Where no folder is named, the few that the README shows
// go to tests/screenshots.
import { copyFileSync, mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import type { Look, Shot } from '../e2e/states/walk.ts';
import { build, isBuilt } from '../../electron/launch/build.mjs';
import { goWalk, WALKS } from '../e2e/states/walks.ts';
import { sharedBrowser } from '../e2e/support/browser.ts';

const folder = resolve(process.argv[2] ?? 'test-results/screenshots');
const only = process.argv[3];
const forReadme = process.argv[2] === undefined;
const readmeFolder = resolve('tests/screenshots');
/** Shown in the README, from the larger window in light. */
const README = ['desk', 'dog', 'visit-food', 'why', 'handout'];

const SMALL = { width: 1024, height: 700 };
const LARGE = { width: 1280, height: 800 };
/** Ends with the large window in light, in which the walk goes on. */
const VIEWS = [
  { viewport: SMALL, colorScheme: 'dark' },
  { viewport: SMALL, colorScheme: 'light' },
  { viewport: LARGE, colorScheme: 'dark' },
  { viewport: LARGE, colorScheme: 'light' },
] as const;

async function take(first: Page, name: string, look: Look): Promise<void> {
  const { whole = false, at, page = first } = look;
  for (const { viewport, colorScheme } of VIEWS) {
    await page.setViewportSize(viewport);
    await page.emulateMedia({ colorScheme });
    await page.evaluate(() => document.fonts.ready);
    // Bars that stay in place would stand in the middle of a whole page.
    if (whole) await page.evaluate(() => scrollTo(0, 0));
    await at?.evaluate((element) => element.scrollIntoView({ block: 'start' }));
    // What the head of every page would hide.
    if (at !== undefined) await page.evaluate(() => scrollBy(0, -110));
    const path = join(folder, `${name}-${viewport.width}-${colorScheme}.png`);
    await page.screenshot({ path, fullPage: whole, animations: 'disabled' });
    const shown =
      forReadme && README.includes(name) && viewport === LARGE && colorScheme === 'light';
    if (shown) copyFileSync(path, join(readmeFolder, `${name}.png`));
  }
}

const root = resolve(import.meta.dirname, '../..');
if (!isBuilt(root) && !build(root)) process.exit(1);
mkdirSync(folder, { recursive: true });
mkdirSync(readmeFolder, { recursive: true });
for (const walk of WALKS.filter(({ name }) => only === undefined || name === only)) {
  let states = 0;
  const shotOf = (page: Page): Shot => {
    return async (name, look = {}) => {
      states++;
      await take(page, name, look);
    };
  };
  await goWalk(walk, { viewport: LARGE, reducedMotion: 'reduce' }, shotOf);
  console.log(`${folder}: ${walk.name}, ${states} states`);
}
// It would keep this process from ending.
await (await sharedBrowser()).close();
