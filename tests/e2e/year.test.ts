import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { welcomePage } from './pages/welcomePage.ts';
import { axeViolations } from './support/axe.ts';
import { openDesk, type TestDesk } from './support/desk.ts';

describe('the practice’s year', () => {
  let desk: TestDesk;
  let page: Page;
  let complaints: readonly string[];

  beforeAll(async () => {
    desk = await openDesk();
    ({ page, complaints } = await desk.open());
    await welcomePage(page).openDemonstration();
    await page.getByRole('link', { name: 'Year', exact: true }).click();
    await page.getByRole('heading', { level: 1, name: 'The practice’s year' }).waitFor();
    await page.locator('.drawing.drawn').first().waitFor();
  });
  afterAll(() => desk?.close());

  const months = () => page.getByRole('figure', { name: 'Month by month, dogs' });
  const began = () => months().getByRole('application', { name: /^Began a programme/ });

  /** Walks to the first month in which a dog began. */
  async function walkToFirst(): Promise<string> {
    await began().focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('Home');
    for (let step = 0; step < 13; step += 1) {
      const said = (await began().getByRole('status').textContent()) ?? '';
      if (/: [1-9]\d* dogs? began/.test(said)) return said;
      await page.keyboard.press('ArrowRight');
    }
    return '';
  }

  it('says by keyboard what each bar stands for, and Enter leads to its dogs', async () => {
    const said = await walkToFirst();
    const [, names] = said.split('; ');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: /^Began a programme, / }).waitFor();
    const listed = page.getByRole('table').last().getByRole('rowheader').getByRole('link');
    expect(await listed.allTextContents()).toEqual(names!.split(', '));
    await page.getByRole('button', { name: 'Show all dogs' }).click();
    expect(await listed.count()).toBeGreaterThan(names!.split(', ').length);
  });

  it('draws the bar as high as its count, and a click on it leads to the same dogs', async () => {
    const said = await walkToFirst();
    const count = Number(/: (\d+) dogs?/.exec(said)![1]);
    const [x, y] = (await began().getAttribute('data-at'))!.split(',').map(Number);
    const box = (await began().boundingBox())!;
    await page.keyboard.press('Home');
    // An empty month stands at nothing; the bar rises above it by its count of equal steps.
    const empty = Number((await began().getAttribute('data-at'))!.split(',')[1]);
    expect((empty - y!) / count).toBeGreaterThan(15);
    await page.mouse.click(box.x + x!, box.y + (y! + empty) / 2);
    await page.getByRole('heading', { name: /^Began a programme, / }).waitFor();
    await page.getByRole('button', { name: 'Show all dogs' }).click();
  });

  it('shows the same counts as a table', async () => {
    const said = await walkToFirst();
    const [month, count] = /^(.*?): (\d+)/.exec(said)!.slice(1);
    const toggle = months().getByRole('button', { name: 'As a table' });
    await toggle.click();
    const row = months().getByRole('row', { name: new RegExp(`^${month}`) });
    expect(await row.getByRole('cell').first().textContent()).toBe(count);
    await toggle.click();
  });

  it('reads another year, and comes back', async () => {
    const span = page.getByLabel('Time', { exact: true });
    await span.selectOption({ index: 1 });
    await page
      .getByText(/^\d\d\.01\.|^01\.01\./)
      .first()
      .waitFor();
    await span.selectOption({ index: 0 });
    await page.locator('.drawing.drawn').first().waitFor();
  });

  for (const scheme of ['light', 'dark'] as const) {
    it(`has no axe violations in ${scheme}`, async () => {
      await page.emulateMedia({ colorScheme: scheme });
      expect(await axeViolations(page)).toEqual([]);
    });
  }

  it('never breaks the content security policy or throws', () => {
    expect(complaints).toEqual([]);
  });
});
