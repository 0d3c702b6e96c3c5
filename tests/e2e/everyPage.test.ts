import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { deskPage } from './pages/deskPage.ts';
import { dogPage } from './pages/dogPage.ts';
import { settingsPage } from './pages/settingsPage.ts';
import { welcomePage } from './pages/welcomePage.ts';
import { ungroupedIn } from '../support/ungrouped.ts';
import { axeViolations } from './support/axe.ts';
import { openDesk, type TestDesk } from './support/desk.ts';
import { cutOff, moving, setText } from './support/looks.ts';

interface PageCase {
  readonly name: string;
  readonly path: (dog: string, visit: string, before: string) => string;
  readonly heading: string | RegExp;
  /** What has to be there before the page is judged. */
  readonly ready: string;
}

const pageCase = (
  name: string,
  path: PageCase['path'],
  heading: PageCase['heading'],
  ready = 'h1',
): PageCase => ({ name, path, heading, ready });

/** How a saved visit is headed where it is read. */
const READ = /^Follow-up of Bramble, \d/;

/** Every page of the demonstration. */
const PAGES: readonly PageCase[] = [
  pageCase('desk', () => '/', 'Desk', 'table'),
  pageCase('settings', () => '/settings', 'Settings'),
  pageCase('rules', () => '/settings/rules', 'Rules'),
  pageCase('records', () => '/settings/records', 'Records and backups'),
  pageCase('import', () => '/settings/records/import', 'Import weights'),
  pageCase('bundle', () => '/settings/records/bundle', 'Import a bundle'),
  pageCase('restore', () => '/restore', 'Restore a backup'),
  pageCase('bin', () => '/bin', 'Bin'),
  pageCase('rule', () => '/rules/capConditioned', 'Weekly rise, conditioned dog'),
  pageCase('year', () => '/year', 'The practice’s year', '.drawing.drawn'),
  pageCase('science', () => '/science', 'About the science', 'table'),
  pageCase('new dog', () => '/dogs/new', 'New dog'),
  pageCase('dog', (dog) => `/dogs/${dog}`, 'Bramble', '.drawing.drawn'),
  pageCase('edit dog', (dog) => `/dogs/${dog}/edit`, 'Edit Bramble'),
  pageCase('new visit', (dog) => `/dogs/${dog}/visits/new`, 'Follow-up of Bramble', '.follows'),
  pageCase('saved visit', (dog, visit) => `/dogs/${dog}/visits/${visit}`, READ, '.lines'),
  pageCase(
    'saved visit being amended',
    (dog, visit) => `/dogs/${dog}/visits/${visit}/amend`,
    'Follow-up of Bramble',
    '.follows',
  ),
  pageCase(
    'two visits',
    (dog, visit, before) => `/dogs/${dog}/visits/${visit}/beside/${before}`,
    'Two visits of Bramble',
    '.lines',
  ),
  pageCase(
    'unknown visit',
    (dog) => `/dogs/${dog}/visits/00000000-0000-4000-8000-000000000000`,
    'The visit cannot be shown',
  ),
  pageCase('plan', (dog) => `/dogs/${dog}/plan`, 'Running plan of Bramble', 'table'),
  pageCase('charts', (dog) => `/dogs/${dog}/charts`, 'Charts of Bramble', '.drawing.drawn'),
  pageCase('heat', (dog) => `/dogs/${dog}/heat`, 'Heat and Bramble', 'table'),
  pageCase('handouts', (dog) => `/dogs/${dog}/handouts`, 'Handouts for Bramble', '.page-text'),
  pageCase('unknown page', () => '/nowhere', 'There is no such page'),
  pageCase(
    'unknown dog',
    () => '/dogs/00000000-0000-4000-8000-000000000000',
    'The dog cannot be shown',
  ),
];

/** 200 % zoom of a 1280 px window leaves 640 px; the small window is 1024 × 700. */
const WINDOWS = [
  { name: '1280 × 800', viewport: { width: 1280, height: 800 } },
  { name: '1024 × 700', viewport: { width: 1024, height: 700 } },
  { name: '200 % zoom', viewport: { width: 640, height: 400 } },
  { name: '1024 × 700 with the largest text', viewport: { width: 1024, height: 700 }, text: true },
];

/** What a page shows, without the ranges of its fields, which are written as they are typed. */
const countedText = (page: Page): Promise<string> =>
  page.locator('main').evaluate((main: HTMLElement) => {
    const ranges = [...main.querySelectorAll<HTMLElement>('.visually-hidden')];
    for (const range of ranges) range.style.display = 'none';
    for (const part of main.querySelectorAll('details')) part.open = true;
    const text = main.innerText;
    for (const range of ranges) range.style.display = '';
    return text;
  });

describe('every page of the demonstration', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];
  let dog: string;
  let seen: readonly [string, string];

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open());
    await welcomePage(page).openDemonstration();
    await deskPage(page).open('Bramble');
    dog = /dogs\/([0-9a-f-]+)/.exec(page.url())?.[1] ?? '';
    const visitAt = async (index: number): Promise<string> => {
      const href = await dogPage(page).visits.nth(index).getAttribute('href');
      return /visits\/([0-9a-f-]+)/.exec(href ?? '')?.[1] ?? '';
    };
    seen = [await visitAt(0), await visitAt(1)];
  });
  afterAll(() => desk?.close());

  async function visit({ path, heading, ready }: PageCase): Promise<void> {
    await page.evaluate(
      (hash) => {
        window.location.hash = hash;
      },
      `#${path(dog, ...seen)}`,
    );
    await page.getByRole('heading', { level: 1, name: heading, exact: true }).waitFor();
    await page.locator(`main ${ready}`).first().waitFor({ state: 'attached' });
  }

  /** What of the page does not fit a window. */
  async function beyond({ viewport, text }: (typeof WINDOWS)[number]): Promise<unknown[]> {
    await page.setViewportSize(viewport);
    await setText(page, text === true ? 'largest' : '');
    const overflow = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    return [
      ...(overflow > 0 ? [`${overflow} px wider than the window`] : []),
      ...(await cutOff(page)),
    ];
  }

  describe.each(PAGES)('$name', (target) => {
    beforeAll(async () => {
      await page.emulateMedia({ reducedMotion: 'reduce' });
      await visit(target);
    });
    afterAll(() => setText(page, ''));

    it('has a title of its own and one main heading', async () => {
      expect(await page.title()).toMatch(/^.+ · Trotwell$/);
      expect(await page.getByRole('heading', { level: 1 }).count()).toBe(1);
    });

    it('keeps still where motion is to be reduced', async () => {
      expect(await moving(page)).toEqual([]);
    });

    it('fits every window', async () => {
      for (const window of WINDOWS) {
        // A sheet is drawn anew for the room that a window leaves it.
        await expect.poll(() => beyond(window), { message: window.name }).toEqual([]);
      }
    });
  });

  it('moves a little where it may', async () => {
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    await visit(PAGES[0]!);
    expect(await moving(page)).not.toEqual([]);
  });

  it('says that this is the demonstration, with a way out', async () => {
    await visit(PAGES[0]!);
    const banner = page.getByRole('complementary', { name: 'Demonstration practice' });
    expect(await banner.innerText()).toContain('invented people and dogs');
    await banner.getByRole('button').waitFor();
  });

  it('keeps the choice of dark over a reload', async () => {
    await page.emulateMedia({ colorScheme: 'light' });
    const paper = () =>
      page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    const before = await paper();
    const choose = async (words: string) => {
      await page.getByRole('button', { name: 'View', exact: true }).click();
      await page.getByRole('radio', { name: words, exact: true }).check();
      await page.keyboard.press('Escape');
    };
    await choose('Dark');
    await page.reload();
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(await paper()).not.toBe(before);
    await choose('As the system');
  });

  describe('with energies in kJ, which run into thousands', () => {
    const named = (name: string) => PAGES.find((target) => target.name === name)!;

    beforeAll(async () => {
      await visit(named('settings'));
      await settingsPage(page).choose('Energy', 'kJ');
      await settingsPage(page).save();
    });

    it.each(PAGES)('sets thousands apart wherever it counts: $name', async (target) => {
      await visit(target);
      expect(ungroupedIn(await countedText(page))).toEqual([]);
    });

    it('shows some', async () => {
      await visit(named('dog'));
      expect(await countedText(page)).toMatch(/\d,\d{3}\skJ/);
    });
  });

  it('never breaks the content security policy or throws', () => {
    expect(complaints).toEqual([]);
  });

  it('tells a window without the key how to come in', async () => {
    const stranger = await desk.newPage();
    await stranger.goto(new URL('/', desk.host.address).href);
    await stranger
      .getByRole('heading', { level: 1, name: 'Open Trotwell again from its start command' })
      .waitFor();
    expect(await axeViolations(stranger)).toEqual([]);
  });
});
